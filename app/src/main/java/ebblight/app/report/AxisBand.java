package ebblight.app.report;

import ebblight.app.report.AxisModel.Window;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The band of shutter times: numbers, the lane in it, its ends, a clash, and the frame of the chosen time. */
final class AxisBand {

    private static final String[] NUMBERS = {
        "1/8", "1/4", "1/2", "1", "2", "4", "8", "15", "30", "1", "2", "4", "8", "16"
    };

    private final AxisModel model;
    private final AxisPlaces at;
    private final String id;
    private final Svg svg;

    AxisBand(AxisModel model, AxisPlaces at, String id, Svg svg) {
        this.model = model;
        this.at = at;
        this.id = id;
        this.svg = svg;
    }

    void band() {
        double y = at.bandTop;
        svg.rect(at.left, y, at.right, at.band, "fill=\"var(--band)\"");
        for (Window w : model.windows()) {
            double a = at.at(w.likely().from());
            double b = at.at(w.likely().to());
            svg.rect(a, y, b, at.band, "fill=\"var(--lane)\"");
            String dots = "fill=\"url(#" + id + "-dots)\"";
            double sureFrom = w.sure().map(s -> at.at(s.from())).orElse(b);
            double sureTo = w.sure().map(s -> at.at(s.to())).orElse(b);
            svg.rect(a, y, Math.min(sureFrom, b), at.band, dots);
            svg.rect(Math.max(a, sureTo), y, b, at.band, dots);
        }
        double from = clashLeft();
        double to = clashRight();
        svg.rect(from, y, to, at.band, "fill=\"var(--sheet)\"");
        svg.rect(from, y, to, at.band, "fill=\"url(#" + id + "-hatch)\"");
        List<End> taken = endTexts();
        taken.add(new End(at.frameLeft() - at.frameMore() - 4, at.frameRight() + at.frameMore() + 4, ""));
        for (int k = AxisPlaces.FIRST_STOP; k <= AxisPlaces.LAST_STOP; k++) {
            double x = at.x(k);
            double half = k == 0 || k == 6 ? 26 : 17;
            boolean hatched = x > from && x < to;
            boolean inLane = model.inLane(at, x);
            String ink = hatched || inLane ? "var(--lane-ink)" : "var(--band-ink)";
            // keeps the dots of a likely edge away from the number
            String rim = inLane ? " stroke=\"var(--lane)\" stroke-width=\"6\" paint-order=\"stroke\"" : "";
            if (x < at.frameLeft() || x > at.frameRight()) {
                svg.line("<path d=\"M%.1f %.1fv10\" stroke=\"%s\" stroke-width=\"2\"/>", x, y, ink);
            }
            boolean halfHatched = !hatched && x + half > from && x - half < to;
            boolean covered = halfHatched || taken.stream().anyMatch(t -> x + half > t.left() && x - half < t.right());
            if (covered || (at.narrow && Math.floorMod(k, 2) == 0)) {
                continue;
            }
            if (hatched) {
                svg.rect(x - half, y + 18, x + half, 24, "fill=\"var(--sheet)\"");
            }
            svg.line(
                    "<text x=\"%.1f\" y=\"%.1f\" font-size=\"%d\" font-weight=\"700\" text-anchor=\"middle\" fill=\"%s\"%s>"
                            + "%s<tspan font-size=\"14\" font-weight=\"600\">%s</tspan></text>",
                    Math.max(x, at.left + 16),
                    y + 36,
                    at.narrow ? 17 : 20,
                    ink,
                    rim,
                    NUMBERS[k - AxisPlaces.FIRST_STOP],
                    at.narrow ? "" : k == 0 ? " s" : k == 6 ? " min" : "");
        }
    }

    /** An end of a window or of a clash, written on the band from {@code left} to {@code right}. */
    private record End(double left, double right, String text) {}

    private List<End> endTexts() {
        List<End> ends = new ArrayList<>();
        for (Window w : model.windows()) {
            addEnd(ends, w.likely().from(), -1);
            addEnd(ends, w.likely().to(), 1);
        }
        model.clash().ifPresent(c -> {
            addEnd(ends, c.shorterSeconds(), -1);
            addEnd(ends, c.longerSeconds(), 1);
        });
        return ends;
    }

    private void addEnd(List<End> ends, double seconds, int side) {
        if (at.shows(seconds)) {
            String text = Times.brief(seconds);
            double wide = text.length() * 10.5 + 14;
            double x = Math.max(at.left, side < 0 ? at.at(seconds) - wide : at.at(seconds));
            if (x + wide < at.frameLeft() - at.frameMore() - 2 || x > at.frameRight() + at.frameMore() + 2) {
                ends.add(new End(x, x + wide, text));
            }
        }
    }

    void ends() {
        for (End end : endTexts()) {
            svg.rect(end.left(), at.bandTop + 18, end.right(), at.band - 18, "fill=\"var(--band)\"");
            svg.line(
                    "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\" font-size=\"19\" font-weight=\"800\""
                            + " fill=\"var(--chip)\">%s</text>",
                    (end.left() + end.right()) / 2, at.bandTop + at.band - 9, end.text());
        }
    }

    private double clashLeft() {
        return model.clash().map(c -> at.at(c.shorterSeconds())).orElse(-1.0);
    }

    private double clashRight() {
        return model.clash().map(c -> at.at(c.longerSeconds())).orElse(-1.0);
    }

    void clashBox() {
        model.clash().ifPresent(c -> {
            svg.rect(
                    clashLeft(),
                    at.top - 4,
                    clashRight(),
                    at.bagTop - at.top,
                    "fill=\"none\" stroke=\"var(--ink)\" stroke-width=\"2.5\" stroke-dasharray=\"3 5\"");
            double wide = 214;
            double x = Math.max(at.left + 4, Math.min(at.right - wide - 4, at.frameRight() + 8));
            double y = at.bandTop + at.band + 14 + at.label;
            svg.rect(x, y, x + wide, 50, "fill=\"var(--sheet)\" stroke=\"var(--ink)\" stroke-width=\"3\"");
            svg.line(
                    "<text x=\"%.1f\" y=\"%.1f\" font-size=\"16\" font-weight=\"780\">%s and %s</text><text x=\"%.1f\""
                            + " y=\"%.1f\" font-size=\"16\" font-weight=\"600\">clash, %s stops apart</text>",
                    x + 12,
                    y + 21,
                    c.first(),
                    c.second().toLowerCase(Locale.ROOT),
                    x + 12,
                    y + 41,
                    Times.thirds(c.stops()));
        });
    }

    /** The frame on the band: as wide as the pieces pulled out. */
    void frame() {
        double a = at.frameLeft() - at.frameMore();
        double b = at.frameRight() + at.frameMore();
        boolean clash = model.clash().isPresent() || !model.holds();
        svg.rect(
                a,
                at.bandTop - 8,
                b,
                at.band + 16.0,
                "fill=\"" + (clash ? "var(--sheet)" : "var(--lane)") + "\" stroke=\"var(--ink)\" stroke-width=\"4\"");
        double x = Math.max(a + 8, Math.min(b - 8, at.at(model.chosenSeconds())));
        svg.line(
                "<path d=\"M%.1f %.1fv12M%.1f %.1fv-12\" stroke=\"var(--ink)\" stroke-width=\"5\"/>",
                x, at.bandTop - 6, x, at.bandTop + at.band + 6);
        String said = Times.brief(model.chosenSeconds());
        int wideSize = said.length() > 6 ? 27 : 32;
        svg.line(
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\" font-size=\"%d\" font-weight=\"800\" stroke=\"%s\""
                        + " stroke-width=\"6\" paint-order=\"stroke\">%s</text>",
                (a + b) / 2,
                at.bandTop + (at.narrow ? 32 : 36),
                at.narrow ? 16 : wideSize,
                clash ? "var(--sheet)" : "var(--lane)",
                said);
    }
}
