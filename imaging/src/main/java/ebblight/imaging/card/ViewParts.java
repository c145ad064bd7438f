package ebblight.imaging.card;

import ebblight.core.numeric.Quantiles;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Which cells of a view stand still and which flow, from its frames among themselves: what stands has a pattern that is
 * the same in all of them; what flows has fine detail in the rougher frames that is another one in each.
 */
final class ViewParts {

    /** Frames that are held against each other; more tell no more. */
    private static final int MOST_FRAMES = 24;
    /** Cells round a cell from which its own pattern is taken off, and over which patterns are compared. */
    private static final int ROUND = 2;

    private static final int COMPARED = 3;
    private static final double MOST_STOPS = 2;
    /** Pattern below this many stops is not told from grain. */
    private static final double LEAST_PATTERN = 0.06;
    /** Likeness from which a pattern is the same one, and below which it is another. */
    private static final double SAME = 0.6;

    private static final double OTHER = 0.45;
    /** log2 of the fine contrast from which a cell has detail: 2 %. */
    private static final double LEAST_DETAIL = -5.6;

    private final boolean[] fixed;
    private final boolean[] flowing;

    private ViewParts(boolean[] fixed, boolean[] flowing) {
        this.fixed = fixed;
        this.flowing = flowing;
    }

    /** The parts of a view by its frames; nothing is told by one frame alone. */
    static ViewParts of(List<CardFrame> frames) {
        int n = frames.get(0).cells().count();
        boolean[] fixed = new boolean[n];
        boolean[] flowing = new boolean[n];
        List<CardFrame> held = chosen(frames);
        if (held.size() < 2) {
            return new ViewParts(fixed, flowing);
        }
        Cells shape = held.get(0).cells();
        int w = shape.width();
        int h = shape.height();
        double[] sum = new double[n];
        double[] squares = new double[n];
        double[] times = new double[n];
        double[] finest = new double[n];
        Arrays.fill(finest, Double.NEGATIVE_INFINITY);
        for (CardFrame frame : held) {
            Cells cells = frame.cells();
            boolean[] known = new boolean[n];
            double[] level = new double[n];
            for (int i = 0; i < n; i++) {
                known[i] = cells.known(i);
                level[i] = known[i] ? cells.level(i) : 0;
            }
            float[] pattern = HighPass.of(level, known, w, h, ROUND, MOST_STOPS);
            for (int i = 0; i < n; i++) {
                if (known[i]) {
                    sum[i] += pattern[i];
                    squares[i] += pattern[i] * pattern[i];
                    times[i]++;
                    finest[i] = Math.max(finest[i], cells.detail(i));
                }
            }
        }
        double[] common = new double[n];
        for (int i = 0; i < n; i++) {
            // the mean product of two different frames, times as many as there are
            common[i] = times[i] > 1 ? (sum[i] * sum[i] - squares[i]) / (times[i] - 1) : 0;
        }
        double[] together = HighPass.boxSums(common, w, h, COMPARED);
        double[] apart = HighPass.boxSums(squares, w, h, COMPARED);
        double[] counted = HighPass.boxSums(times, w, h, COMPARED);
        for (int i = 0; i < n; i++) {
            double strength = counted[i] > 0 ? Math.sqrt(apart[i] / counted[i]) : 0;
            double same = apart[i] > 0 ? together[i] / apart[i] : 0;
            boolean seen = times[i] > 1 && strength > LEAST_PATTERN;
            fixed[i] = seen && same > SAME;
            flowing[i] = times[i] > 1 && same < OTHER && finest[i] > LEAST_DETAIL;
        }
        return new ViewParts(fixed, flowing);
    }

    /** Frames spread over exposure times first, then over the order, so that a burst does not rule. */
    private static List<CardFrame> chosen(List<CardFrame> frames) {
        if (frames.size() <= MOST_FRAMES) {
            return frames;
        }
        return IntStream.range(0, MOST_FRAMES)
                .mapToObj(k -> frames.get(k * frames.size() / MOST_FRAMES))
                .toList();
    }

    boolean fixed(int cell) {
        return fixed[cell];
    }

    boolean flowing(int cell) {
        return flowing[cell];
    }

    double fixedShare() {
        return share(fixed);
    }

    double flowingShare() {
        return share(flowing);
    }

    private static double share(boolean[] part) {
        int n = 0;
        for (boolean each : part) {
            n += each ? 1 : 0;
        }
        return (double) n / part.length;
    }

    /** Median over a part of what {@code value} says of a cell; not a number where it says nothing of too few. */
    static double median(int cells, IntPredicate part, IntToDoubleFunction value) {
        double[] values = new double[cells];
        int n = 0;
        for (int i = 0; i < cells; i++) {
            if (part.test(i)) {
                values[n++] = value.applyAsDouble(i);
            }
        }
        return n < 12 ? Double.NaN : Quantiles.median(values, n);
    }
}
