package ebblight.app.report;

import ebblight.app.report.AxisModel.Window;
import java.util.ArrayList;
import java.util.List;

/** The rows under the strips: what the bag reaches, and the limits. */
final class AxisFoot {

    private static final double TIMED_SECONDS = 32;
    private static final String FADES = "light fades faster";

    /** Mean width of a letter of 14 px. */
    private static final double LETTER = 7;

    private final AxisModel model;
    private final AxisPlaces at;
    private final Svg svg;

    AxisFoot(AxisModel model, AxisPlaces at, Svg svg) {
        this.model = model;
        this.at = at;
        this.svg = svg;
    }

    void bag() {
        svg.rect(at.left, at.bagTop, at.right, 38, "fill=\"var(--sheet)\"");
        for (Window w : model.windows()) {
            svg.rect(at.at(w.likely().from()), at.bagTop, at.at(w.likely().to()), 38, "fill=\"var(--lane)\"");
        }
        List<double[]> taken = new ArrayList<>();
        for (int i = 0; i < model.bag().size(); i++) {
            AxisModel.Reach one = model.bag().get(i);
            double wide = 14 + 7.6 * (one.filters().length() + one.aperture().length() + 1);
            double x = Math.max(at.left, Math.min(at.right - wide, at.at(one.seconds()) - wide / 2));
            if (!at.shows(one.seconds()) || taken.stream().anyMatch(t -> x < t[1] + 4 && x + wide > t[0] - 4)) {
                continue;
            }
            taken.add(new double[] {x, x + wide});
            boolean chosen = i == 0;
            double tip = at.at(one.seconds());
            svg.line("<path d=\"M%.1f %.1fl6 8 6 -8Z\" fill=\"var(--ink)\"/>", tip - 6, at.bagTop - 1);
            svg.rect(
                    x,
                    at.bagTop + 7,
                    x + wide,
                    26,
                    "fill=\"" + (chosen ? "var(--ink)" : "var(--sheet)") + "\" stroke=\"var(--ink)\" stroke-width=\""
                            + (chosen ? 2.2 : 1.2) + "\"");
            svg.line(
                    "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\" font-size=\"14\" font-weight=\"750\" fill=\"%s\">%s"
                            + " <tspan font-weight=\"450\">%s</tspan></text>",
                    x + wide / 2,
                    at.bagTop + 25,
                    chosen ? "var(--sheet)" : "var(--ink)",
                    one.filters(),
                    one.aperture());
        }
    }

    void limits() {
        double fades = at.at(model.fadesBeyondSeconds());
        double words = FADES.length() * LETTER;
        double before = fades + 14 + words < at.right + 8 ? 8 : 14 + words;
        limit(at.at(TIMED_SECONDS), fades - before, "past 32 s: bulb and cable", "2 5");
        if (at.shows(model.fadesBeyondSeconds())) {
            limit(fades, at.right, FADES, "10 4");
        }
    }

    private void limit(double x, double to, String text, String dash) {
        double y = at.limitsTop + 12;
        double wide = text.length() * LETTER;
        boolean inside = x + 14 + wide < to + 8;
        svg.line("<path d=\"M%.1f %.1fv16\" stroke=\"var(--ink)\" stroke-width=\"3.5\"/>", x, y - 8);
        svg.line(
                "<text x=\"%.1f\" y=\"%.1f\" font-size=\"14\" font-weight=\"600\"%s>%s</text>",
                inside ? x + 9 : x - 8, y + 5, inside ? "" : " text-anchor=\"end\"", text);
        double from = inside ? x + 16 + wide : x + 6;
        if (to > from) {
            svg.line(
                    "<path d=\"M%.1f %.1fH%.1f\" stroke=\"var(--ink)\" stroke-width=\"2.5\" stroke-dasharray=\"%s\"/>",
                    from, y, to, dash);
        }
    }
}
