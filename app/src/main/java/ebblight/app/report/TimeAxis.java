package ebblight.app.report;

import ebblight.app.report.AxisModel.Part;
import ebblight.app.report.AxisModel.Span;
import ebblight.app.report.AxisModel.Window;
import ebblight.app.report.AxisModel.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * The time axis as SVG text, in the look of the pages: a strip a part, the lane in which every wish holds, the band of
 * shutter times with the chosen one framed. Colours are the custom properties of the page's tokens.css, strips are
 * pictures of the page that are only referred to.
 */
final class TimeAxis {

    private static final String[] NUMBERS = {
        "1/8", "1/4", "1/2", "1", "2", "4", "8", "15", "30", "1", "2", "4", "8", "16"
    };
    private static final double TIMED_SECONDS = 32;

    private final AxisModel model;
    private final AxisPlaces at;
    private final String id;
    private final StringBuilder svg = new StringBuilder();

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
            rect(
                    at.at(w.likely().from()),
                    at.top - 4,
                    at.at(w.likely().to()),
                    at.bagTop - at.top,
                    "fill=\"var(--lane)\"");
        }
        band();
        for (int i = 0; i < model.parts().size(); i++) {
            strip(model.parts().get(i), i);
        }
        for (Window w : model.windows()) {
            laneEdge(w.likely().from(), 1);
            laneEdge(w.likely().to(), -1);
        }
        for (int i = 0; i < model.parts().size(); i++) {
            chosenPiece(model.parts().get(i), i);
        }
        ends();
        clashBox();
        if (!at.narrow) {
            if (!model.bag().isEmpty()) {
                bag();
                line("<text x=\"0\" y=\"%.0f\" font-size=\"16\" font-weight=\"700\">In the bag</text>", at.bagTop + 26);
            }
            limits();
            line("<text x=\"0\" y=\"%.0f\" font-size=\"16\" font-weight=\"700\">Shutter time</text>", at.bandTop + 30);
            line("<text x=\"0\" y=\"%.0f\" font-size=\"16\" font-weight=\"700\">Limits</text>", at.limitsTop + 17);
        }
        frame();
        String said = Marks.escaped(Times.say(model.chosenSeconds()));
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

    private void line(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values));
    }

    private void rect(double x, double y, double toX, double height, String more) {
        if (toX - x > 0.2) {
            line("<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" %s/>", x, y, toX - x, height, more);
        }
    }

    private void defs() {
        line(
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
        svg.append("</defs>");
    }

    /** White over what a wish does not want, soft over its likely range. */
    private void veil(Part part) {
        line(
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
        svg.append("</linearGradient>");
    }

    private void stop(double x, double opacity) {
        line(
                "<stop offset=\"%.4f\" stop-color=\"var(--veil)\" stop-opacity=\"%.1f\"/>",
                (x - at.left) / (at.right - at.left), opacity);
    }

    private boolean inLane(double x) {
        return model.windows().stream()
                .anyMatch(w ->
                        x > at.at(w.likely().from()) && x < at.at(w.likely().to()));
    }

    private double clashLeft() {
        return model.clash().map(c -> at.at(c.shorterSeconds())).orElse(-1.0);
    }

    private double clashRight() {
        return model.clash().map(c -> at.at(c.longerSeconds())).orElse(-1.0);
    }

    private void band() {
        double y = at.bandTop;
        rect(at.left, y, at.right, at.band, "fill=\"var(--band)\"");
        for (Window w : model.windows()) {
            double a = at.at(w.likely().from());
            double b = at.at(w.likely().to());
            rect(a, y, b, at.band, "fill=\"var(--lane)\"");
            String dots = "fill=\"url(#" + id + "-dots)\"";
            double sureFrom = w.sure().map(s -> at.at(s.from())).orElse(b);
            double sureTo = w.sure().map(s -> at.at(s.to())).orElse(b);
            rect(a, y, Math.min(sureFrom, b), at.band, dots);
            rect(Math.max(a, sureTo), y, b, at.band, dots);
        }
        double from = clashLeft();
        double to = clashRight();
        rect(from, y, to, at.band, "fill=\"var(--sheet)\"");
        rect(from, y, to, at.band, "fill=\"url(#" + id + "-hatch)\"");
        List<double[]> taken = new ArrayList<>(endPlaces());
        taken.add(new double[] {at.frameLeft() - at.frameMore() - 4, at.frameRight() + at.frameMore() + 4});
        for (int k = AxisPlaces.FIRST_STOP; k <= AxisPlaces.LAST_STOP; k++) {
            double x = at.x(k);
            double half = k == 0 || k == 6 ? 26 : 17;
            boolean hatched = x > from && x < to;
            String ink = hatched || inLane(x) ? "var(--lane-ink)" : "var(--band-ink)";
            if (x < at.frameLeft() || x > at.frameRight()) {
                line("<path d=\"M%.1f %.1fv10\" stroke=\"%s\" stroke-width=\"2\"/>", x, y, ink);
            }
            boolean covered = taken.stream().anyMatch(t -> x + half > t[0] && x - half < t[1]);
            if (covered || (at.narrow && Math.floorMod(k, 2) == 0)) {
                continue;
            }
            if (hatched) {
                rect(x - half, y + 18, x + half, 24, "fill=\"var(--sheet)\"");
            }
            line(
                    "<text x=\"%.1f\" y=\"%.1f\" font-size=\"%d\" font-weight=\"700\" text-anchor=\"middle\" fill=\"%s\">%s"
                            + "<tspan font-size=\"14\" font-weight=\"600\">%s</tspan></text>",
                    Math.max(x, at.left + 16),
                    y + 36,
                    at.narrow ? 17 : 20,
                    ink,
                    NUMBERS[k - AxisPlaces.FIRST_STOP],
                    at.narrow ? "" : k == 0 ? " s" : k == 6 ? " min" : "");
        }
    }

    private void strip(Part part, int i) {
        double y = at.rows[i] + at.label;
        int h = at.image;
        if (!at.narrow) {
            line("<g transform=\"translate(0 %.1f)\">%s</g>", y + 8, Marks.sealPath(part.kind()));
            line(
                    "<text x=\"38\" y=\"%.1f\" font-size=\"16\" font-weight=\"700\">%s</text><text x=\"38\" y=\"%.1f\""
                            + " font-size=\"14\" fill=\"var(--ink-2)\">%s</text>",
                    y + 16, part.name(), y + 34, part.wish().isEmpty() ? "no wish" : "wish: " + part.wish());
            if (part.raised() > 1) {
                line(
                        "<text x=\"38\" y=\"%.1f\" font-size=\"14\" fill=\"var(--ink-3)\">contrast raised ×%s</text>",
                        y + 52, Times.plain(part.raised()));
            }
        }
        rect(at.left, y + h, at.right, AxisPlaces.WORDS, "fill=\"var(--sheet)\"");
        for (Window w : model.windows()) {
            rect(at.at(w.likely().from()), y + h, at.at(w.likely().to()), AxisPlaces.WORDS, "fill=\"var(--lane)\"");
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
                rect(at.left, y - 0.5, at.right, h + 1, veil);
            }
            for (Span span : part.spans()) {
                line(
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
            rect(
                    x - AxisPlaces.CUT,
                    y - 0.5,
                    x + AxisPlaces.CUT,
                    h + 1,
                    "fill=\"" + (inLane(x) ? "var(--lane)" : "var(--ground)") + "\"");
        }
        for (int k = AxisPlaces.FIRST_STOP; k <= AxisPlaces.LAST_STOP; k++) {
            if (k != at.chosenStop) {
                notch(
                        part.air(),
                        at.x(k),
                        y,
                        h,
                        at.narrow ? 4 : 6,
                        inLane(at.x(k)) ? "var(--lane)" : part.air() ? "var(--sheet)" : "var(--ground)");
            }
        }
        for (Span span : part.wish().isEmpty() ? List.<Span>of() : part.spans()) {
            for (double end : new double[] {span.from(), span.to()}) {
                if (at.shows(end)) {
                    line("<path d=\"M%.1f %.1fv%d\" stroke=\"var(--ink)\" stroke-width=\"4\"/>", at.at(end), y, h);
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
        line(
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
        line("<path d=\"M%.1f %.1fL%.1f %.1fL%.1f %.1fZ\" fill=\"%s\"/>", x - n, base, x, tip, x + n, base, fill);
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
                line("<path d=\"M%.1f %.1fv22\" stroke=\"var(--ink)\" stroke-width=\"1.5\"/>", a, top);
            }
            double x = a + 6;
            double wide = word.word().length() * 7.4 + 12;
            if (b - a > wide + 14) {
                line(
                        "<text x=\"%.1f\" y=\"%.1f\" font-size=\"14\" font-weight=\"%d\" fill=\"%s\">%s</text>",
                        x,
                        top + 17,
                        word.word().equals(part.wish()) ? 750 : 550,
                        on ? "var(--lane-ink)" : "var(--ink-3)",
                        Marks.escaped(word.word()));
                x += wide;
            }
            if (b - x > 8) {
                line(
                        "<path d=\"%s\" fill=\"none\" stroke=\"%s\" stroke-width=\"%.1f\" stroke-linejoin=\"bevel\"/>",
                        Marks.stroke(x, b - 4, top + 12, 7.5, px -> Marks.swing(part.leftAt(at.seconds(px))), 11 + row),
                        on ? "var(--lane-ink)" : "var(--line-2)",
                        on ? 2.1 : 1.4);
            }
        }
    }

    private void laneEdge(double seconds, int side) {
        if (at.shows(seconds)) {
            double x = at.at(seconds);
            line(
                    "<path d=\"M%.1f %.1fv%.1fM%.1f %.1fh%d\" stroke=\"var(--ink)\" stroke-width=\"4\" fill=\"none\"/>",
                    x, at.top - 5, at.bagTop - at.top, x - 2 * side, at.top - 4, 14 * side);
        }
    }

    /** The piece at the chosen time, pulled out of its strip. */
    private void chosenPiece(Part part, int i) {
        double y = at.rows[i] + at.label - AxisPlaces.LIFT;
        double h = at.image + 2.0 * AxisPlaces.LIFT;
        double a = at.frameLeft();
        double b = at.frameRight();
        rect(a - 1, y, b + 1, h, "fill=\"var(--ground)\"");
        piece(part, AxisPlaces.LAST_STOP - AxisPlaces.FIRST_STOP + 1, a, y, b, h);
        boolean holds = part.holds(model.chosenSeconds());
        String lane = holds && model.holds() ? "var(--lane)" : "var(--ground)";
        notch(part.air(), Math.max(a + 8, Math.min(b - 8, at.at(model.chosenSeconds()))), y, h, 9, lane);
        rect(
                a,
                y,
                b,
                h,
                "fill=\"none\" stroke=\"var(--ink)\" stroke-width=\"4\"" + (holds ? "" : " stroke-dasharray=\"3 5\""));
        if (at.narrow) {
            line(
                    "<text x=\"2\" y=\"%.1f\" font-size=\"16\" font-weight=\"750\" stroke=\"var(--ground)\" stroke-width=\"5\""
                            + " paint-order=\"stroke\">%s <tspan font-weight=\"450\">%s</tspan></text>",
                    at.rows[i] + at.label - 8,
                    part.name(),
                    Marks.escaped(part.wish().isEmpty() ? "no wish" : part.wish()));
        }
    }

    /** Ends that are written on the band: left, right. */
    private List<double[]> endPlaces() {
        List<double[]> places = new ArrayList<>();
        for (Object[] end : endTexts()) {
            places.add(new double[] {(double) end[0], (double) end[1]});
        }
        return places;
    }

    private List<Object[]> endTexts() {
        List<Object[]> ends = new ArrayList<>();
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

    private void addEnd(List<Object[]> ends, double seconds, int side) {
        if (at.shows(seconds)) {
            String text = Times.brief(seconds);
            double wide = text.length() * 10.5 + 14;
            double x = Math.max(at.left, side < 0 ? at.at(seconds) - wide : at.at(seconds));
            if (x + wide < at.frameLeft() - at.frameMore() - 2 || x > at.frameRight() + at.frameMore() + 2) {
                ends.add(new Object[] {x, x + wide, text});
            }
        }
    }

    private void ends() {
        for (Object[] end : endTexts()) {
            double a = (double) end[0];
            double b = (double) end[1];
            rect(a, at.bandTop + 18, b, at.band - 18, "fill=\"var(--band)\"");
            line(
                    "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\" font-size=\"19\" font-weight=\"800\""
                            + " fill=\"var(--chip)\">%s</text>",
                    (a + b) / 2, at.bandTop + at.band - 9, end[2]);
        }
    }

    private void clashBox() {
        model.clash().ifPresent(c -> {
            rect(
                    clashLeft(),
                    at.top - 4,
                    clashRight(),
                    at.bagTop - at.top,
                    "fill=\"none\" stroke=\"var(--ink)\" stroke-width=\"2.5\" stroke-dasharray=\"3 5\"");
            double wide = 214;
            double x = Math.max(at.left + 4, Math.min(at.right - wide - 4, at.frameRight() + 8));
            double y = at.bandTop + at.band + 14 + at.label;
            rect(x, y, x + wide, 50, "fill=\"var(--sheet)\" stroke=\"var(--ink)\" stroke-width=\"3\"");
            line(
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

    private void bag() {
        rect(at.left, at.bagTop, at.right, 38, "fill=\"var(--sheet)\"");
        for (Window w : model.windows()) {
            rect(at.at(w.likely().from()), at.bagTop, at.at(w.likely().to()), 38, "fill=\"var(--lane)\"");
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
            line("<path d=\"M%.1f %.1fl6 8 6 -8Z\" fill=\"var(--ink)\"/>", tip - 6, at.bagTop - 1);
            rect(
                    x,
                    at.bagTop + 7,
                    x + wide,
                    26,
                    "fill=\"" + (chosen ? "var(--ink)" : "var(--sheet)") + "\" stroke=\"var(--ink)\" stroke-width=\""
                            + (chosen ? 2.2 : 1.2) + "\"");
            line(
                    "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\" font-size=\"14\" font-weight=\"750\" fill=\"%s\">%s"
                            + " <tspan font-weight=\"450\">%s</tspan></text>",
                    x + wide / 2,
                    at.bagTop + 25,
                    chosen ? "var(--sheet)" : "var(--ink)",
                    one.filters(),
                    one.aperture());
        }
    }

    private void limits() {
        limit(at.at(TIMED_SECONDS), at.at(model.fadesBeyondSeconds()) - 8, "past 32 s: bulb and cable", "2 5");
        if (at.shows(model.fadesBeyondSeconds())) {
            limit(at.at(model.fadesBeyondSeconds()), at.right, "light fades faster", "10 4");
        }
    }

    private void limit(double x, double to, String text, String dash) {
        double y = at.limitsTop + 12;
        double wide = text.length() * 7.0;
        boolean inside = x + 14 + wide < to + 8;
        line("<path d=\"M%.1f %.1fv16\" stroke=\"var(--ink)\" stroke-width=\"3.5\"/>", x, y - 8);
        line(
                "<text x=\"%.1f\" y=\"%.1f\" font-size=\"14\" font-weight=\"600\"%s>%s</text>",
                inside ? x + 9 : x - 8, y + 5, inside ? "" : " text-anchor=\"end\"", text);
        double from = inside ? x + 16 + wide : x + 6;
        if (to > from) {
            line(
                    "<path d=\"M%.1f %.1fH%.1f\" stroke=\"var(--ink)\" stroke-width=\"2.5\" stroke-dasharray=\"%s\"/>",
                    from, y, to, dash);
        }
    }

    /** The frame on the band: as wide as the pieces pulled out. */
    private void frame() {
        double a = at.frameLeft() - at.frameMore();
        double b = at.frameRight() + at.frameMore();
        boolean clash = model.clash().isPresent() || !model.holds();
        rect(
                a,
                at.bandTop - 8,
                b,
                at.band + 16.0,
                "fill=\"" + (clash ? "var(--sheet)" : "var(--lane)") + "\" stroke=\"var(--ink)\" stroke-width=\"4\"");
        double x = Math.max(a + 8, Math.min(b - 8, at.at(model.chosenSeconds())));
        line(
                "<path d=\"M%.1f %.1fv12M%.1f %.1fv-12\" stroke=\"var(--ink)\" stroke-width=\"5\"/>",
                x, at.bandTop - 6, x, at.bandTop + at.band + 6);
        String brief = Times.brief(model.chosenSeconds());
        String text = at.narrow ? brief.replace(" min", " m") : brief;
        line(
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\" font-size=\"%d\" font-weight=\"800\" stroke=\"%s\""
                        + " stroke-width=\"6\" paint-order=\"stroke\">%s</text>",
                (a + b) / 2,
                at.bandTop + (at.narrow ? 32 : 36),
                at.narrow ? 18 : 32,
                clash ? "var(--sheet)" : "var(--lane)",
                text);
    }
}
