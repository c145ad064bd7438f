package ebblight.app.report;

import java.util.Locale;

/** SVG text that grows. */
final class Svg {

    private final StringBuilder text = new StringBuilder();

    /** Adds a format and its values; numbers are written with a point. */
    void line(String format, Object... values) {
        text.append(String.format(Locale.ROOT, format, values));
    }

    /** Adds a rectangle from x to {@code toX}; nothing when it has no width. */
    void rect(double x, double y, double toX, double height, String more) {
        if (toX - x > 0.2) {
            line("<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" %s/>", x, y, toX - x, height, more);
        }
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
