package ebblight.app.report;

import java.util.ArrayList;
import java.util.List;

/** Where things lie on a time axis: 1/8 s to 1024 s, a stop as wide as the next but the chosen one, which is twice. */
final class AxisPlaces {

    static final int FIRST_STOP = -3;
    static final int LAST_STOP = 10;
    static final double CUT = 2.5;
    static final int LIFT = 5;
    private static final double WIDE = 2;
    private static final int GAP = 7;

    /** Height of the words and the stroke under a strip. */
    static final int WORDS = 22;

    final boolean narrow;
    final double left;
    final double right;
    final double unit;
    final int chosenStop;
    /** Height of the words over a strip; 0 where they stand beside it. */
    final int label;

    final int image;
    final int row;
    final int band = 48;
    final double[] rows;
    final double top = 8;
    final double bandTop;
    final double bagTop;
    final double worthTop;
    final double limitsTop;
    final double height;

    /** {@code narrow} for phones: no words beside the strips but over them. */
    AxisPlaces(AxisModel model, double width, boolean narrow) {
        this.narrow = narrow;
        left = narrow ? 0 : 176;
        right = width;
        label = narrow ? 24 : 0;
        image = narrow ? 34 : 46;
        row = label + image + WORDS;
        unit = (right - left) / (LAST_STOP - FIRST_STOP + WIDE);
        chosenStop = (int) Math.max(FIRST_STOP, Math.min(LAST_STOP, Math.rint(stop(model.chosenSeconds()))));
        List<Double> at = new ArrayList<>();
        double y = top;
        int parts = model.parts().size();
        int air = (int) model.parts().stream().filter(AxisModel.Part::air).count();
        for (int i = 0; i < air; i++, y += row + GAP) {
            at.add(y);
        }
        bandTop = y + 4;
        y = bandTop + band + 12;
        for (int i = air; i < parts; i++, y += row + GAP) {
            at.add(y);
        }
        rows = at.stream().mapToDouble(v -> v).toArray();
        bagTop = y;
        worthTop = bagTop + (narrow || model.bag().isEmpty() ? 0 : 44);
        limitsTop = worthTop + (narrow || model.worth().isEmpty() ? 0 : AxisWorth.HEIGHT + 12);
        height = limitsTop + (narrow ? 4 : 28);
    }

    static double stop(double seconds) {
        return seconds <= 0 ? -99 : Math.min(99, Math.log(seconds) / Math.log(2));
    }

    /** Pixel of a time in stops from 1 s, held inside the drawing. */
    double x(double stop) {
        double v = Math.max(FIRST_STOP - 0.5, Math.min(LAST_STOP + 0.5, stop)) - FIRST_STOP + 0.5;
        int a = chosenStop - FIRST_STOP;
        return left + unit * (v < a ? v : v > a + 1 ? v - 1 + WIDE : a + (v - a) * WIDE);
    }

    double at(double seconds) {
        return x(stop(seconds));
    }

    double seconds(double px) {
        double v = (px - left) / unit;
        int a = chosenStop - FIRST_STOP;
        double k = v < a ? v : v > a + WIDE ? v + 1 - WIDE : a + (v - a) / WIDE;
        return Math.pow(2, k + FIRST_STOP - 0.5);
    }

    boolean shows(double seconds) {
        return stop(seconds) > FIRST_STOP - 0.5 && stop(seconds) < LAST_STOP + 0.5;
    }

    double frameLeft() {
        return x(chosenStop - 0.5) + CUT;
    }

    double frameRight() {
        return x(chosenStop + 0.5) - CUT;
    }

    /** By how much the frame on the band is wider than the pieces pulled out, each side: room for its number. */
    double frameMore() {
        return Math.max(4, ((narrow ? 88 : 0) - (frameRight() - frameLeft())) / 2);
    }
}
