package ebblight.app.draw;

import ebblight.app.ask.Words;
import java.util.List;
import java.util.Locale;

/** Draws SVG: on a page with the page's own colours, in a file with those of paper. */
final class SvgDrawing implements Drawing {

    private final StringBuilder body = new StringBuilder();
    private final String name;
    private final boolean page;
    private int clips;

    /**
     * A drawing.
     *
     * @param name tells its parts from those of other drawings on the same page
     * @param page whether it will stand on a page of the app
     */
    SvgDrawing(String name, boolean page) {
        this.name = name;
        this.page = page;
    }

    /** The whole document. */
    String document(double width, double height, String title) {
        String font = page
                ? ""
                : " font-family=\"'Atkinson Hyperlegible Next','Atkinson Hyperlegible',system-ui,sans-serif\"";
        String ground = page ? "" : "<rect width=\"100%\" height=\"100%\" fill=\"#e6e8e7\"/>";
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + number(width) + " " + number(height)
                + "\" width=\"" + number(width) + "\" height=\"" + number(height) + "\" role=\"img\"" + font
                + "><title>"
                + Words.markup(title) + "</title>" + ground + body + "</svg>";
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.1f", value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    private String colour(Ink ink) {
        return page ? "var(" + ink.property() + ")" : String.format(Locale.ROOT, "#%06x", ink.rgb());
    }

    private static String path(List<Dot> dots) {
        StringBuilder d = new StringBuilder();
        for (Dot dot : dots) {
            d.append(d.length() == 0 ? 'M' : 'L')
                    .append(number(dot.x()))
                    .append(' ')
                    .append(number(dot.y()));
        }
        return d.toString();
    }

    private static String dashes(double... dash) {
        if (dash.length == 0) {
            return "";
        }
        StringBuilder text = new StringBuilder(" stroke-dasharray=\"");
        for (double each : dash) {
            text.append(number(each)).append(' ');
        }
        return text.append('"').toString();
    }

    private static String opacity(double opacity) {
        return opacity < 1 ? " opacity=\"" + opacity + "\"" : "";
    }

    @Override
    public void rect(double x, double y, double width, double height, Ink fill, double opacity) {
        body.append("<rect x=\"" + number(x) + "\" y=\"" + number(y) + "\" width=\"" + number(Math.max(0, width))
                + "\" height=\"" + number(Math.max(0, height)) + "\" fill=\"" + colour(fill) + "\"" + opacity(opacity)
                + "/>");
    }

    @Override
    public void frame(double x, double y, double width, double height, Ink stroke, double lineWidth, double... dash) {
        body.append("<rect x=\"" + number(x) + "\" y=\"" + number(y) + "\" width=\"" + number(Math.max(0, width))
                + "\" height=\"" + number(Math.max(0, height)) + "\" fill=\"none\" stroke=\"" + colour(stroke)
                + "\" stroke-width=\"" + number(lineWidth) + "\"" + dashes(dash) + "/>");
    }

    @Override
    public void line(List<Dot> dots, Ink stroke, double lineWidth, double... dash) {
        body.append("<path d=\"" + path(dots) + "\" fill=\"none\" stroke=\"" + colour(stroke) + "\" stroke-width=\""
                + number(lineWidth) + "\"" + dashes(dash) + "/>");
    }

    @Override
    public void area(List<Dot> dots, Ink fill, double opacity) {
        body.append("<path d=\"" + path(dots) + "Z\" fill=\"" + colour(fill) + "\"" + opacity(opacity) + "/>");
    }

    @Override
    public void circle(double x, double y, double radius, Ink fill) {
        body.append("<circle cx=\"" + number(x) + "\" cy=\"" + number(y) + "\" r=\"" + number(radius) + "\" fill=\""
                + colour(fill) + "\"/>");
    }

    @Override
    public void text(double x, double y, Lettering type, String words) {
        String anchor =
                switch (type.hold()) {
                    case START -> "";
                    case MIDDLE -> " text-anchor=\"middle\"";
                    case END -> " text-anchor=\"end\"";
                };
        String halo = type.halo()
                ? " stroke=\"" + colour(Ink.SHEET)
                        + "\" stroke-width=\"4\" paint-order=\"stroke\" stroke-linejoin=\"round\""
                : "";
        body.append("<text x=\"" + number(x) + "\" y=\"" + number(y) + "\" font-size=\"" + number(type.size())
                + "\" font-weight=\"" + (type.bold() ? 700 : 500) + "\" fill=\"" + colour(type.ink()) + "\"" + anchor
                + halo + ">" + Words.markup(words) + "</text>");
    }

    @Override
    public void within(double x, double y, double width, double height, Runnable inside) {
        String clip = name + "-clip-" + clips++;
        body.append("<clipPath id=\"" + clip + "\"><rect x=\"" + number(x) + "\" y=\"" + number(y) + "\" width=\""
                + number(width) + "\" height=\"" + number(height) + "\"/></clipPath><g clip-path=\"url(#" + clip
                + ")\">");
        inside.run();
        body.append("</g>");
    }
}
