package ebblight.app.draw;

import com.grack.nanojson.JsonObject;
import ebblight.app.draw.Drawing.Lettering;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/**
 * The axis of a day's hours, which all rows share.
 *
 * @param day what is drawn
 * @param left where the hours begin
 * @param width of the whole drawing
 * @param small size of the small words
 */
record HourAxis(DayPlan day, double left, double width, double small) {

    /** A drawing under this width has no room for words beside the rows. */
    static final double NARROWER_THAN = 560;

    /** Where an instant lies. */
    double x(Instant at) {
        return left + Math.max(0, Math.min(1, day.share(at))) * (width - left - 2);
    }

    boolean narrow() {
        return width < NARROWER_THAN && left < 5 * small;
    }

    void name(Drawing to, double y, String name, String wish) {
        to.text(0, y + small + 1, Lettering.of(small + 1, Ink.INK).strong(), name);
        if (!narrow() && !wish.isEmpty()) {
            to.text(0, y + 2 * small + 4, Lettering.of(small, Ink.INK_2), wish);
        }
    }

    String range(String wish, String before, String unit, int decimals) {
        return day.wished(wish)
                .map(r -> before + number(r[0], decimals) + " to " + number(r[1], decimals) + unit)
                .orElse("no wish");
    }

    static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value).replace('-', '−');
    }

    static double altitude(JsonObject row, String body) {
        return row.getObject(body).getDouble("altitude");
    }

    /** The row of the sky nearest to an instant. */
    JsonObject nearest(Instant at) {
        int index = (int) Math.round(day.share(at) * (day.hours().size() - 1));
        return day.hours().get(Math.max(0, Math.min(day.hours().size() - 1, index)));
    }

    /** Whether a stretch of the axis lies in no window. */
    boolean besideWindows(double from, double to) {
        return day.windows().stream()
                .noneMatch(w -> to > x(DayPlan.instant(w, "start")) && from < x(DayPlan.instant(w, "end")));
    }

    void frames(Drawing to, double y, double height, String wish, ToDoubleFunction<JsonObject> value) {
        frames(to, y, height, wish, day.hours(), value);
    }

    /** A frame round the hours at which one wish holds, and a veil over the others. */
    void frames(
            Drawing to,
            double y,
            double height,
            String wish,
            List<JsonObject> rows,
            ToDoubleFunction<JsonObject> value) {
        day.wished(wish).ifPresent(range -> {
            double from = left;
            for (double[] span : spans(rows, value, range[0], range[1])) {
                to.rect(from, y, span[0] - from, height, Ink.SHEET, 0.5);
                to.frame(span[0] + 1, y + 1, span[1] - span[0] - 2, height - 2, Ink.INK, 2);
                from = span[1];
            }
            to.rect(from, y, width - from, height, Ink.SHEET, 0.5);
        });
    }

    List<double[]> spans(ToDoubleFunction<JsonObject> value, double low, double high) {
        return spans(day.hours(), value, low, high);
    }

    /** Stretches of the axis where a value lies in a range. */
    List<double[]> spans(List<JsonObject> rows, ToDoubleFunction<JsonObject> value, double low, double high) {
        List<double[]> spans = new ArrayList<>();
        double open = Double.NaN;
        double last = left;
        for (JsonObject row : rows) {
            double v = value.applyAsDouble(row);
            double at = x(DayPlan.instant(row, "time"));
            boolean in = v >= low && v <= high;
            if (in && Double.isNaN(open)) {
                open = at;
            } else if (!in && !Double.isNaN(open)) {
                spans.add(new double[] {open, (last + at) / 2});
                open = Double.NaN;
            }
            last = at;
        }
        if (!Double.isNaN(open)) {
            spans.add(new double[] {open, last});
        }
        return spans;
    }
}
