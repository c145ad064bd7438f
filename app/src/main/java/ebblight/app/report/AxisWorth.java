package ebblight.app.report;

import ebblight.app.report.AxisModel.Worth;

/**
 * What each time is worth, a cell a stop: the block is the share of the picture that changes, the post stands off the
 * stroke beside it, which lies down as the subject comes free of what moves round it.
 */
final class AxisWorth {

    static final int HEIGHT = 34;

    /** What is left round the subject that draws the stroke at its full swing. */
    private static final double ROUGH = 0.5;

    private static final double BLOCK = 0.34;

    private final AxisModel model;
    private final AxisPlaces at;
    private final Svg svg;

    AxisWorth(AxisModel model, AxisPlaces at, Svg svg) {
        this.model = model;
        this.at = at;
        this.svg = svg;
    }

    void row() {
        svg.line(
                "<text x=\"0\" y=\"%.0f\" font-size=\"16\" font-weight=\"700\">Worth</text><text x=\"0\" y=\"%.0f\""
                        + " font-size=\"14\" fill=\"var(--ink-2)\">changes, stands off</text>",
                at.worthTop + 16, at.worthTop + 34);
        for (int k = AxisPlaces.FIRST_STOP; k <= AxisPlaces.LAST_STOP; k++) {
            boolean chosen = k == at.chosenStop;
            cell(k, model.worthAt(chosen ? model.chosenSeconds() : Math.pow(2, k)), chosen);
        }
    }

    private void cell(int stop, Worth worth, boolean chosen) {
        double x = at.x(stop - 0.5) + AxisPlaces.CUT;
        double to = at.x(stop + 0.5) - AxisPlaces.CUT;
        double y = at.worthTop + 2;
        String edge =
                chosen ? "stroke=\"var(--ink)\" stroke-width=\"3\"" : "stroke=\"var(--line-2)\" stroke-width=\"1\"";
        svg.rect(x, y, to, HEIGHT, "fill=\"var(--sheet)\" " + edge);
        double wide = BLOCK * (to - x);
        double tall = Math.max(2, worth.changed() * HEIGHT);
        svg.rect(x + 4, y + HEIGHT - tall, x + 4 + wide, tall, "fill=\"var(--ink)\"");
        double post = x + wide + 9;
        double room = to - 5 - post;
        svg.rect(post, y + 6, post + 0.3 * room, HEIGHT - 9.0, "fill=\"var(--ink-2)\"");
        double rough = Math.min(1, (1 - worth.standsOff()) / ROUGH);
        String stroke =
                Marks.stroke(post + 0.36 * room, post + room, y + 0.62 * HEIGHT, 0.36 * HEIGHT, px -> rough, 9 + stop);
        svg.line(
                "<path d=\"%s\" fill=\"none\" stroke=\"var(--ink)\" stroke-width=\"2\" stroke-linejoin=\"bevel\"/>",
                stroke);
    }
}
