package ebblight.app.report;

import ebblight.app.ask.Words;
import ebblight.app.report.AxisModel.Part;
import ebblight.app.report.AxisModel.Span;
import ebblight.app.report.AxisModel.Window;
import ebblight.app.report.AxisModel.Word;
import ebblight.core.exposure.Numbers;
import java.util.List;

/** One strip of a time axis: a patch of a part at fourteen times, veiled where the wish does not hold, over its stroke. */
final class AxisStrip {

    private final AxisModel model;
    private final AxisPlaces at;
    private final String id;
    private final Svg svg;

    AxisStrip(AxisModel model, AxisPlaces at, String id, Svg svg) {
        this.model = model;
        this.at = at;
        this.id = id;
        this.svg = svg;
    }

    void strip(Part part, int i) {
        double y = at.rows[i] + at.label;
        int h = at.image;
        if (!at.narrow) {
            svg.line("<g transform=\"translate(0 %.1f)\">%s</g>", y + 8, Marks.sealPath(part.kind()));
            svg.line(
                    "<text x=\"38\" y=\"%.1f\" font-size=\"16\" font-weight=\"700\">%s</text><text x=\"38\" y=\"%.1f\""
                            + " font-size=\"14\" fill=\"var(--ink-2)\">%s</text>",
                    y + 16, part.name(), y + 34, part.wish().isEmpty() ? "no wish" : "wish: " + part.wish());
            if (part.raised() > 1) {
                svg.line(
                        "<text x=\"38\" y=\"%.1f\" font-size=\"14\" fill=\"var(--ink-3)\">contrast raised ×%s</text>",
                        y + 52, Numbers.shortest(part.raised(), 2));
            }
        }
        svg.rect(at.left, y + h, at.right, AxisPlaces.WORDS, "fill=\"var(--sheet)\"");
        for (Window w : model.windows()) {
            svg.rect(at.at(w.likely().from()), y + h, at.at(w.likely().to()), AxisPlaces.WORDS, "fill=\"var(--lane)\"");
        }
        for (int k = AxisPlaces.FIRST_STOP; k <= AxisPlaces.LAST_STOP; k++) {
            if (k != at.chosenStop) {
                piece(
                        part,
                        k - AxisPlaces.FIRST_STOP,
                        at.x(k - 0.5) + AxisPlaces.CUT,
                        y,
                        at.x(k + 0.5) - AxisPlaces.CUT,
                        h);
            }
        }
        if (!part.wish().isEmpty()) {
            String veil = part.spans().isEmpty()
                    ? "fill=\"var(--veil)\" opacity=\".8\""
                    : "fill=\"url(#" + id + "-" + part.kind() + ")\"";
            if (part.spans().isEmpty() || bounded(part)) {
                svg.rect(at.left, y - 0.5, at.right, h + 1, veil);
            }
            for (Span span : part.spans()) {
                svg.line(
                        "<path d=\"M%.1f %.1fH%.1fM%.1f %.1fH%.1f\" stroke=\"var(--ink)\" stroke-width=\"3\"/>",
                        at.at(span.from()),
                        y + 1.5,
                        at.at(span.to()),
                        at.at(span.from()),
                        y + h - 1.5,
                        at.at(span.to()));
            }
        }
        for (int k = AxisPlaces.FIRST_STOP; k < AxisPlaces.LAST_STOP; k++) {
            double x = at.x(k + 0.5);
            svg.rect(
                    x - AxisPlaces.CUT,
                    y - 0.5,
                    x + AxisPlaces.CUT,
                    h + 1,
                    "fill=\"" + (model.inLane(at, x) ? "var(--lane)" : "var(--ground)") + "\"");
        }
        for (int k = AxisPlaces.FIRST_STOP; k <= AxisPlaces.LAST_STOP; k++) {
            if (k != at.chosenStop) {
                notch(
                        part.air(),
                        at.x(k),
                        y,
                        h,
                        at.narrow ? 4 : 6,
                        model.inLane(at, at.x(k)) ? "var(--lane)" : part.air() ? "var(--sheet)" : "var(--ground)");
            }
        }
        for (Span span : part.wish().isEmpty() ? List.<Span>of() : part.spans()) {
            for (double end : new double[] {span.from(), span.to()}) {
                if (at.shows(end)) {
                    svg.line("<path d=\"M%.1f %.1fv%d\" stroke=\"var(--ink)\" stroke-width=\"4\"/>", at.at(end), y, h);
                }
            }
        }
        words(part, y + h, i);
    }

    private static boolean bounded(Part part) {
        return part.spans().stream().anyMatch(s -> s.from() > 0 || s.to() < 1e9);
    }

    private void piece(Part part, int piece, double x, double y, double toX, double h) {
        double cut = Math.min(StripSprite.PIECE_WIDTH, StripSprite.PIECE_HEIGHT * (toX - x) / h);
        double tall = cut * h / (toX - x);
        svg.line(
                "<svg x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" viewBox=\"%.1f %.1f %.1f %.1f\""
                        + " preserveAspectRatio=\"none\"><use href=\"#%s\"/></svg>",
                x,
                y,
                toX - x,
                h,
                piece * StripSprite.PIECE_WIDTH + (StripSprite.PIECE_WIDTH - cut) / 2,
                (StripSprite.PIECE_HEIGHT - tall) / 2,
                cut,
                tall,
                part.strip());
    }

    private void notch(boolean air, double x, double y, double h, double n, String fill) {
        double base = air ? y + h + 0.5 : y - 0.5;
        double tip = air ? y + h - n * 1.2 : y + n * 1.2;
        svg.line("<path d=\"M%.1f %.1fL%.1f %.1fL%.1f %.1fZ\" fill=\"%s\"/>", x - n, base, x, tip, x + n, base, fill);
    }

    /** The stroke under a strip, cut where the word for it changes. */
    private void words(Part part, double top, int row) {
        for (Word word : part.words()) {
            double a = at.at(word.span().from());
            double b = at.at(word.span().to());
            if (b - a < 3) {
                continue;
            }
            boolean on = part.holds(at.seconds((a + b) / 2));
            if (at.shows(word.span().from())) {
                svg.line("<path d=\"M%.1f %.1fv22\" stroke=\"var(--ink)\" stroke-width=\"1.5\"/>", a, top);
            }
            double x = a + 6;
            double wide = word.word().length() * 7.4 + 12;
            if (b - a > wide + 14) {
                svg.line(
                        "<text x=\"%.1f\" y=\"%.1f\" font-size=\"14\" font-weight=\"%d\" fill=\"%s\">%s</text>",
                        x,
                        top + 17,
                        word.word().equals(part.wish()) ? 750 : 550,
                        on ? "var(--lane-ink)" : "var(--ink-3)",
                        Words.markup(word.word()));
                x += wide;
            }
            if (b - x > 8) {
                svg.line(
                        "<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%.1f\" stroke-linejoin=\"bevel\"/>",
                        Marks.stroke(x, b - 4, top + 12, 7.5, px -> Marks.swing(part.leftAt(at.seconds(px))), 11 + row),
                        on ? "var(--lane-ink)" : "var(--line-2)",
                        on ? 2.1 : 1.4);
            }
        }
    }

    /** The piece at the chosen time, pulled out of its strip. */
    void chosenPiece(Part part, int i) {
        double y = at.rows[i] + at.label - AxisPlaces.LIFT;
        double h = at.image + 2.0 * AxisPlaces.LIFT;
        double a = at.frameLeft();
        double b = at.frameRight();
        svg.rect(a - 1, y, b + 1, h, "fill=\"var(--ground)\"");
        piece(part, AxisPlaces.LAST_STOP - AxisPlaces.FIRST_STOP + 1, a, y, b, h);
        boolean holds = part.holds(model.chosenSeconds());
        String lane = holds && model.holds() ? "var(--lane)" : "var(--ground)";
        notch(part.air(), Math.max(a + 8, Math.min(b - 8, at.at(model.chosenSeconds()))), y, h, 9, lane);
        svg.rect(
                a,
                y,
                b,
                h,
                "fill=\"none\" stroke=\"var(--ink)\" stroke-width=\"4\"" + (holds ? "" : " stroke-dasharray=\"3 5\""));
        if (at.narrow) {
            svg.line(
                    "<text x=\"2\" y=\"%.1f\" font-size=\"16\" font-weight=\"750\" stroke=\"var(--ground)\" stroke-width=\"5\""
                            + " paint-order=\"stroke\">%s <tspan font-weight=\"450\">%s</tspan></text>",
                    at.rows[i] + at.label - 8,
                    part.name(),
                    Words.markup(part.wish().isEmpty() ? "no wish" : part.wish()));
        }
    }
}
