package ebblight.app.draw;

import java.util.List;

/** A drawing seen from another origin. */
record Shifted(Drawing to, double dx, double dy) implements Drawing {

    private List<Dot> moved(List<Dot> dots) {
        return dots.stream().map(d -> new Dot(d.x() + dx, d.y() + dy)).toList();
    }

    @Override
    public void rect(double x, double y, double width, double height, Ink fill, double opacity) {
        to.rect(x + dx, y + dy, width, height, fill, opacity);
    }

    @Override
    public void frame(double x, double y, double width, double height, Ink stroke, double lineWidth, double... dash) {
        to.frame(x + dx, y + dy, width, height, stroke, lineWidth, dash);
    }

    @Override
    public void line(List<Dot> dots, Ink stroke, double lineWidth, double... dash) {
        to.line(moved(dots), stroke, lineWidth, dash);
    }

    @Override
    public void area(List<Dot> dots, Ink fill, double opacity) {
        to.area(moved(dots), fill, opacity);
    }

    @Override
    public void circle(double x, double y, double radius, Ink fill) {
        to.circle(x + dx, y + dy, radius, fill);
    }

    @Override
    public void text(double x, double y, Lettering type, String words) {
        to.text(x + dx, y + dy, type, words);
    }

    @Override
    public double width(Lettering type, String words) {
        return to.width(type, words);
    }

    @Override
    public void within(double x, double y, double width, double height, Runnable inside) {
        to.within(x + dx, y + dy, width, height, inside);
    }
}
