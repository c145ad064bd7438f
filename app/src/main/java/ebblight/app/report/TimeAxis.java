package ebblight.app.report;

import ebblight.app.ask.Words;
import ebblight.app.report.AxisModel.Part;
import ebblight.app.report.AxisModel.Span;
import ebblight.app.report.AxisModel.Window;
import java.util.Locale;

/**
 * The time axis as SVG text, in the look of the pages: a strip a part, the lane in which every wish holds, the band of
 * shutter times with the chosen one framed. Colours are the custom properties of the page's tokens.css, strips are
 * pictures of the page that are only referred to.
 */
final class TimeAxis {

    private final AxisModel model;
    private final AxisPlaces at;
    private final String id;
    private final Svg svg = new Svg();

    private TimeAxis(AxisModel model, AxisPlaces at, String id) {
        this.model = model;
        this.at = at;
        this.id = id;
    }

    /** An SVG element; {@code id} keeps its patterns apart from those of other axes of the page. */
    static String svg(AxisModel model, double width, boolean narrow, String id) {
        return new TimeAxis(model, new AxisPlaces(model, width, narrow), id).draw();
    }

    private String draw() {
        defs();
        for (Window w : model.windows()) {
            svg.rect(
                    at.at(w.likely().from()),
                    at.top - 4,
                    at.at(w.likely().to()),
                    at.bagTop - at.top,
                    "fill=\"var(--lane)\"");
        }
        AxisBand band = new AxisBand(model, at, id, svg);
        AxisStrip strips = new AxisStrip(model, at, id, svg);
        band.band();
        for (int i = 0; i < model.parts().size(); i++) {
            strips.strip(model.parts().get(i), i);
        }
        for (Window w : model.windows()) {
            laneEdge(w.likely().from(), 1);
            laneEdge(w.likely().to(), -1);
        }
        for (int i = 0; i < model.parts().size(); i++) {
            strips.chosenPiece(model.parts().get(i), i);
        }
        band.ends();
        band.clashBox();
        if (!at.narrow) {
            AxisFoot foot = new AxisFoot(model, at, svg);
            if (!model.bag().isEmpty()) {
                foot.bag();
                svg.line(
                        "<text x=\"0\" y=\"%.0f\" font-size=\"16\" font-weight=\"700\">In the bag</text>",
                        at.bagTop + 26);
            }
            if (!model.worth().isEmpty()) {
                new AxisWorth(model, at, svg).row();
            }
            foot.limits();
            svg.line(
                    "<text x=\"0\" y=\"%.0f\" font-size=\"16\" font-weight=\"700\">Shutter time</text>",
                    at.bandTop + 30);
            svg.line("<text x=\"0\" y=\"%.0f\" font-size=\"16\" font-weight=\"700\">Limits</text>", at.limitsTop + 17);
        }
        band.frame();
        String said = Words.markup(Words.say(model.chosenSeconds()));
        return String.format(
                Locale.ROOT,
                "<svg class=\"axis %s\" xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-label=\"Time axis, %s"
                        + " chosen\" width=\"%.0f\" height=\"%.0f\" viewBox=\"0 0 %.0f %.0f\">%s</svg>",
                at.narrow ? "narrow" : "wide",
                said,
                at.right,
                at.height,
                at.right,
                at.height,
                svg);
    }

    private void defs() {
        svg.line(
                "<defs><pattern id=\"%s-hatch\" width=\"7\" height=\"7\" patternUnits=\"userSpaceOnUse\"><path d=\"M0 7L7"
                        + " 0M-1 1L1 -1M6 8L8 6M0 0L7 7\" stroke=\"var(--ink)\" stroke-width=\"1.6\"/></pattern>"
                        + "<pattern id=\"%s-dots\" width=\"6\" height=\"4\" patternUnits=\"userSpaceOnUse\"><rect width=\"2\""
                        + " height=\"2\" fill=\"var(--lane-dots)\"/><rect x=\"3\" y=\"2\" width=\"2\" height=\"2\""
                        + " fill=\"var(--lane-dots)\"/></pattern>",
                id, id);
        for (Part part : model.parts()) {
            if (!part.wish().isEmpty() && !part.spans().isEmpty()) {
                veil(part);
            }
        }
        svg.line("</defs>");
    }

    /** White over what a wish does not want, soft over its likely range. */
    private void veil(Part part) {
        svg.line(
                "<linearGradient id=\"%s-%s\" gradientUnits=\"userSpaceOnUse\" x1=\"%.1f\" x2=\"%.1f\" y1=\"0\" y2=\"0\">",
                id, part.kind(), at.left, at.right);
        for (int i = 0; i < part.spans().size(); i++) {
            Span likely = part.spans().get(i);
            Span sure = i < part.sure().size() ? part.sure().get(i) : likely;
            if (likely.from() > 0) {
                stop(at.at(likely.from()), 0.8);
                stop(at.at(Math.max(likely.from() * 1.03, sure.from())), 0);
            }
            if (likely.to() < 1e9) {
                stop(at.at(Math.min(likely.to() / 1.03, sure.to())), 0);
                stop(at.at(likely.to()), 0.8);
            }
        }
        svg.line("</linearGradient>");
    }

    private void stop(double x, double opacity) {
        svg.line(
                "<stop offset=\"%.4f\" stop-color=\"var(--veil)\" stop-opacity=\"%.1f\"/>",
                (x - at.left) / (at.right - at.left), opacity);
    }

    private void laneEdge(double seconds, int side) {
        if (at.shows(seconds)) {
            double x = at.at(seconds);
            svg.line(
                    "<path d=\"M%.1f %.1fv%.1fM%.1f %.1fh%d\" stroke=\"var(--ink)\" stroke-width=\"4\" fill=\"none\"/>",
                    x, at.top - 5, at.bagTop - at.top, x - 2 * side, at.top - 4, 14 * side);
        }
    }
}
