package ebblight.app.draw;

import com.grack.nanojson.JsonObject;
import ebblight.app.draw.Drawing.Dot;
import ebblight.app.draw.Drawing.Hold;
import ebblight.app.draw.Drawing.Type;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * The hours of one day on one axis: sun, moon, tide, light in steps of a stop; the windows run through all of them.
 *
 * @param day what is drawn
 * @param left where the hours begin
 * @param width of the whole drawing
 * @param small size of the small words
 * @param tall how high the rows are drawn, 1 on a screen
 */
record DayStrip(DayPlan day, double left, double width, double small, double tall) {

    private static final double GAP = 6;
    private static final double LEAST_ROW = 34;
    private static final double FULL_TIDE = 104;
    private static final double FULL_LIGHT = 96;
    private static final int LEAST_EV = -2;
    private static final int MOST_EV = 16;

    /** A strip whose margin has room for the names of the rows when it is wide enough. */
    static DayStrip of(DayPlan day, double width, double small) {
        return new DayStrip(day, (width < 560 ? 3.7 : 7.4) * small, width, small, 1);
    }

    /** Rows of sun and moon have room for two lines of words beside them. */
    private double row() {
        return Math.max(LEAST_ROW, 2 * small + 8);
    }

    private double tideHeight() {
        return tall * FULL_TIDE;
    }

    private double lightHeight() {
        return tall * FULL_LIGHT;
    }

    double height() {
        return head()
                + row()
                + GAP
                + row()
                + GAP
                + (day.tide().isPresent() ? tideHeight() + GAP : 0)
                + lightHeight()
                + 6;
    }

    private double head() {
        return small + 12;
    }

    /** Where an instant lies. */
    double x(Instant at) {
        return left + Math.max(0, Math.min(1, day.share(at))) * (width - left - 2);
    }

    private boolean narrow() {
        return width < 560 && left < 5 * small;
    }

    void draw(Drawing to, double top) {
        hours(to, top);
        double y = top + head();
        List<double[]> rows = new ArrayList<>();
        for (double height : day.tide().isPresent()
                ? new double[] {row(), row(), tideHeight(), lightHeight()}
                : new double[] {row(), row(), lightHeight()}) {
            rows.add(new double[] {y, height});
            to.rect(left, y, width - left, height, Ink.SHEET);
            y += height + GAP;
        }
        double end = y - GAP;
        sunGround(to, rows.get(0)[0]);
        for (JsonObject window : day.windows()) {
            double a = x(DayPlan.instant(window, "start"));
            double b = Math.max(a + 3, x(DayPlan.instant(window, "end")));
            to.rect(a, top + head() - 3, b - a, end - top - head() + 6, Ink.LICHEN);
        }
        sun(to, rows.get(0)[0]);
        moon(to, rows.get(1)[0]);
        if (day.tide().isPresent()) {
            tide(to, rows.get(2)[0], day.tide().get());
        }
        light(to, rows.get(rows.size() - 1)[0]);
        for (JsonObject window : day.windows()) {
            double a = x(DayPlan.instant(window, "start"));
            double b = Math.max(a + 3, x(DayPlan.instant(window, "end")));
            for (double edge : new double[] {a, b}) {
                to.line(edge, top + head() - 4, edge, end + 3, Ink.LANE_INK, 2.5);
            }
            for (double cap : new double[] {top + head() - 4, end + 4}) {
                to.line(a - 1.2, cap, b + 1.2, cap, Ink.LANE_INK, 4);
            }
        }
    }

    private void hours(Drawing to, double top) {
        int step = narrow() ? 6 : 3;
        for (int hour = step; hour < 24; hour += step) {
            Instant at = day.zone().at(day.day(), hour);
            to.text(x(at), top + small + 2, Type.of(small, Ink.INK).strong().held(Hold.MIDDLE), Integer.toString(hour));
            to.line(x(at), top + head() - 5, x(at), top + head(), Ink.INK, 1.5);
        }
    }

    private void name(Drawing to, double y, String name, String wish) {
        to.text(0, y + small + 1, Type.of(small + 1, Ink.INK).strong(), name);
        if (!narrow() && !wish.isEmpty()) {
            to.text(0, y + 2 * small + 4, Type.of(small, Ink.INK_2), wish);
        }
    }

    private String range(String wish, String before, String unit, int decimals) {
        return day.wished(wish)
                .map(r -> before + number(r[0], decimals) + " to " + number(r[1], decimals) + unit)
                .orElse("no wish");
    }

    static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value).replace('-', '−');
    }

    private static double altitude(JsonObject row, String body) {
        return row.getObject(body).getDouble("altitude");
    }

    /** Black where the sun is down. */
    private void sunGround(Drawing to, double y) {
        spans(row -> -0.833 - altitude(row, "sun"), 0, 1e9)
                .forEach(s -> to.rect(s[0], y, s[1] - s[0], row(), Ink.DARK));
    }

    private void sun(Drawing to, double y) {
        name(to, y, "Sun", range("sunAltitude", "", "°", 0));
        frames(to, y, row(), "sunAltitude", row -> altitude(row, "sun"));
        List<double[]> taken = new ArrayList<>();
        for (String event : new String[] {"sunrise", "sunset"}) {
            Optional<Instant> at = day.event(event);
            if (at.isPresent()) {
                boolean rises = event.equals("sunrise");
                String words =
                        (narrow() ? "" : rises ? "up " : "sets ") + day.zone().hour(at.get());
                // where it is narrow the words stand on the night's side, the day is too short for two of them
                boolean right = rises != narrow();
                Type type = Type.of(small, narrow() ? Ink.BAND_INK : Ink.INK)
                        .strong()
                        .held(right ? Hold.START : Hold.END);
                double at0 = x(at.get()) + (right ? 5 : -5);
                double wide = Drawing.width(type, words);
                if (at0 - wide > left || right) {
                    to.text(at0, y + row() / 2 + 5, narrow() ? type : type.haloed(), words);
                    taken.add(new double[] {right ? at0 : at0 - wide, right ? at0 + wide : at0});
                }
            }
        }
        int step = narrow() ? 6 : 2;
        for (int hour = step / 2; hour < 24; hour += step) {
            Instant at = day.zone().at(day.day(), hour);
            double degrees = altitude(nearest(at), "sun");
            String words = number(degrees, 0) + "°";
            double half = Drawing.width(Type.of(small, Ink.INK), words) / 2 + 4;
            boolean free = taken.stream().noneMatch(t -> x(at) + half > t[0] && x(at) - half < t[1])
                    && day.windows().stream()
                            .noneMatch(w -> x(at) + half > x(DayPlan.instant(w, "start"))
                                    && x(at) - half < x(DayPlan.instant(w, "end")));
            if (free) {
                to.text(
                        x(at),
                        y + row() / 2 + 5,
                        Type.of(small, degrees < -0.8 ? Ink.BAND_INK : Ink.INK).held(Hold.MIDDLE),
                        words);
            }
        }
    }

    private JsonObject nearest(Instant at) {
        int index = (int) Math.round(day.share(at) * (day.hours().size() - 1));
        return day.hours().get(Math.max(0, Math.min(day.hours().size() - 1, index)));
    }

    private void moon(Drawing to, double y) {
        name(to, y, "Moon", range("moonAltitude", "", "°", 0));
        frames(to, y, row(), "moonAltitude", row -> altitude(row, "moon"));
        JsonObject moon = day.sky().getObject("moon");
        double fraction = moon.getDouble("fraction");
        boolean waxing = moon.getDouble("phase") < 180;
        for (int hour = 0; hour < 24; hour += narrow() ? 2 : 1) {
            Instant at = day.zone().at(day.day(), hour);
            double degrees = altitude(nearest(at), "moon");
            if (degrees > 0 && x(at) > left + 8) {
                phase(to, x(at), y + row() - 10 - Math.min(16, degrees * 0.4), 7, fraction, waxing);
            }
        }
        String lit = Math.round(100 * fraction) + " % lit";
        String whole = lit
                + day.event("moonrise").map(i -> ", up " + day.zone().hour(i)).orElse("")
                + day.event("moonset").map(i -> ", down " + day.zone().hour(i)).orElse("");
        for (String words : new String[] {whole, lit}) {
            OptionalDouble free = free(words);
            if (free.isPresent()) {
                to.text(free.getAsDouble(), y + row() / 2 + 5, Type.of(small, Ink.INK), words);
                return;
            }
        }
    }

    /** The leftmost place where words lie neither on the moons nor in a window. */
    private OptionalDouble free(String words) {
        double wide = Drawing.width(Type.of(small, Ink.INK), words) + 10;
        for (double from = left + 6; from + wide < width; from += 6) {
            double a = from;
            boolean free = day.hours().stream()
                            .noneMatch(r -> altitude(r, "moon") > 0
                                    && x(DayPlan.instant(r, "time")) > a - 14
                                    && x(DayPlan.instant(r, "time")) < a + wide)
                    && day.windows().stream()
                            .noneMatch(w ->
                                    x(DayPlan.instant(w, "end")) > a - 6 && x(DayPlan.instant(w, "start")) < a + wide);
            if (free) {
                return OptionalDouble.of(from);
            }
        }
        return OptionalDouble.empty();
    }

    /** The moon as it is lit: seen from the north with the light on the right while it waxes. */
    static void phase(Drawing to, double x, double y, double radius, double fraction, boolean waxing) {
        to.circle(x, y, radius, Ink.INK);
        List<Dot> lit = new ArrayList<>();
        double inner = radius - 1.5;
        double side = waxing ? 1 : -1;
        for (int i = 0; i <= 16; i++) {
            double angle = Math.PI * i / 16;
            lit.add(new Dot(x + side * inner * Math.sin(angle), y - inner * Math.cos(angle)));
        }
        for (int i = 16; i >= 0; i--) {
            double angle = Math.PI * i / 16;
            lit.add(new Dot(x + side * inner * (1 - 2 * fraction) * Math.sin(angle), y - inner * Math.cos(angle)));
        }
        to.area(lit, Ink.VEIL, 1);
    }

    private void tide(Drawing to, double y, JsonObject tide) {
        name(to, y, "Tide", range("tideMetres", "", " m", 1));
        if (!narrow()) {
            to.text(0, y + 3 * small + 7, Type.of(small, Ink.INK_2), "above " + tide.getString("datum"));
        }
        List<JsonObject> heights = DayPlan.rows(tide.getArray("heights")).stream()
                .filter(r -> r.isNumber("heightMetres"))
                .toList();
        if (heights.isEmpty()) {
            to.text(left + 8, y + 30, Type.of(small, Ink.INK), "the water is not known on this day");
            return;
        }
        double low = heights.stream()
                .mapToDouble(r -> r.getDouble("heightMetres"))
                .min()
                .orElse(0);
        double high = heights.stream()
                .mapToDouble(r -> r.getDouble("heightMetres"))
                .max()
                .orElse(1);
        Optional<Double> line = guardLine();
        if (line.isPresent()) {
            low = Math.min(low, line.get());
            high = Math.max(high, line.get());
        }
        double floor = low;
        double scale = (tideHeight() - 44) / Math.max(0.3, high - low);
        ToDoubleFunction<Double> level = m -> y + tideHeight() - 10 - (m - floor) * scale;
        List<Dot> curve = new ArrayList<>();
        for (JsonObject row : heights) {
            curve.add(new Dot(x(DayPlan.instant(row, "time")), level.applyAsDouble(row.getDouble("heightMetres"))));
        }
        List<Dot> water = new ArrayList<>(curve);
        water.add(new Dot(curve.get(curve.size() - 1).x(), y + tideHeight()));
        water.add(new Dot(curve.get(0).x(), y + tideHeight()));
        to.area(water, Ink.SEA_FILL, 0.75);
        waves(to, curve, y + tideHeight());
        to.line(curve, Ink.SEA, 2.5);
        frames(to, y, tideHeight(), "tideMetres", heights, row -> row.getDouble("heightMetres"));
        line.ifPresent(m -> {
            double at = level.applyAsDouble(m);
            to.line(left, at, width, at, Ink.WRACK, 2, 8, 4);
            to.text(
                    left + 6,
                    at - 5,
                    Type.of(small, Ink.WRACK).strong().haloed(),
                    (narrow() ? "way back " : "way back, less the margin for waves: ") + number(m, 1) + " m");
        });
        for (JsonObject extreme : DayPlan.rows(tide.getArray("extremes"))) {
            double metres = extreme.getDouble("heightMetres");
            double at = x(DayPlan.instant(extreme, "time"));
            double ya = level.applyAsDouble(metres);
            to.circle(at, ya, 4.5, Ink.SEA);
            String words = (narrow() ? "" : extreme.getString("kind") + " ")
                    + day.zone().hour(DayPlan.instant(extreme, "time")) + ", " + number(metres, 1) + " m";
            Type type = Type.of(small, Ink.INK).strong().held(Hold.MIDDLE).haloed();
            double half = Drawing.width(type, words) / 2;
            double middle = Math.max(left + half + 4, Math.min(width - half - 4, at));
            boolean up = extreme.getString("kind").equals("high");
            to.text(middle, up ? Math.max(y + small + 1, ya - 9) : ya - 9, type, words);
        }
        leaveBy(to, y);
    }

    /** Height of still water at which to be gone. */
    private Optional<Double> guardLine() {
        return day.windows().stream()
                .filter(w -> w.getObject("guard") != null)
                .map(w -> w.getObject("guard").getDouble("rulingMetres")
                        - w.getObject("guard").getDouble("marginMetres"))
                .findFirst();
    }

    private void leaveBy(Drawing to, double y) {
        for (JsonObject window : day.windows()) {
            JsonObject guard = window.getObject("guard");
            if (guard != null
                    && guard.isString("leaveBy")
                    && DayPlan.instant(guard, "leaveBy").isBefore(day.to())) {
                double at = x(DayPlan.instant(guard, "leaveBy"));
                String words = (narrow() ? "" : "leave by ") + day.zone().hour(DayPlan.instant(guard, "leaveBy"));
                boolean leftward =
                        at + Drawing.width(Type.of(small + 1, Ink.WRACK).strong(), words) + 12 > width;
                to.line(at, y, at, y + tideHeight(), Ink.WRACK, 3);
                to.text(
                        at + (leftward ? -7 : 7),
                        y + small + 5,
                        Type.of(small + 1, Ink.WRACK)
                                .strong()
                                .held(leftward ? Hold.END : Hold.START)
                                .haloed(),
                        words);
            }
        }
    }

    /** Small waves under the line of the water. */
    private void waves(Drawing to, List<Dot> curve, double floor) {
        for (double y = floor - 8; y > floor - tideHeight(); y -= 11) {
            List<Dot> wave = new ArrayList<>();
            for (Dot dot : curve) {
                if (dot.y() < y - 5) {
                    wave.add(new Dot(dot.x(), y + 2 * Math.sin(dot.x() / 3.2)));
                } else {
                    stroke(to, wave);
                    wave.clear();
                }
            }
            stroke(to, wave);
        }
    }

    private static void stroke(Drawing to, List<Dot> wave) {
        if (wave.size() > 2) {
            to.line(List.copyOf(wave), Ink.SEA, 0.7);
        }
    }

    private void light(Drawing to, double y) {
        name(to, y, "Light", range("ev100", "EV ", "", 0));
        double step = (lightHeight() - 8) / (MOST_EV - LEAST_EV);
        Optional<double[]> wish = day.wished("ev100");
        int now = ev(day.hours().get(0));
        double begun = left;
        for (JsonObject row : day.hours()) {
            double at = x(DayPlan.instant(row, "time"));
            int next = ev(row);
            if (next != now || row == day.hours().get(day.hours().size() - 1)) {
                if (now > LEAST_EV) {
                    boolean wished = wish.isPresent() && now >= wish.get()[0] && now <= wish.get()[1];
                    double tall = (now - LEAST_EV) * step;
                    to.rect(
                            begun,
                            y + lightHeight() - tall,
                            Math.max(0.8, at - begun - 1),
                            tall,
                            wished ? Ink.INK : Ink.STEP);
                    to.line(
                            begun,
                            y + lightHeight() - tall - step,
                            at - 1,
                            y + lightHeight() - tall - step,
                            Ink.INK_3,
                            1.3,
                            1.5,
                            3);
                }
                now = next;
                begun = at;
            }
        }
        for (int value : new int[] {0, 5, 10}) {
            double at = y + lightHeight() - (value - LEAST_EV) * step;
            to.line(left, at, left + 8, at, Ink.INK, 1.5);
            to.text(left + 12, at + small / 3, Type.of(small, Ink.INK).haloed(), narrow() ? "" + value : "EV " + value);
        }
        double brightest = day.hours().stream()
                .mapToDouble(r -> r.getDouble("exposureValue100"))
                .max()
                .orElse(0);
        String most = "up to EV " + Math.round(brightest) + ", give or take 1";
        List<double[]> bright = spans(r -> r.getDouble("exposureValue100"), brightest - 3, brightest);
        Type type = Type.of(small, Ink.INK).held(Hold.MIDDLE);
        for (double[] span : bright) {
            if (brightest > 5 && span[1] - span[0] > Drawing.width(type, most)) {
                to.text((span[0] + span[1]) / 2, y + lightHeight() - 14, type, most);
            }
        }
    }

    private static int ev(JsonObject row) {
        return (int) Math.max(LEAST_EV, Math.min(MOST_EV, Math.round(row.getDouble("exposureValue100"))));
    }

    private void frames(Drawing to, double y, double height, String wish, ToDoubleFunction<JsonObject> value) {
        frames(to, y, height, wish, day.hours(), value);
    }

    /** A frame round the hours at which one wish holds, and a veil over the others. */
    private void frames(
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

    private List<double[]> spans(ToDoubleFunction<JsonObject> value, double low, double high) {
        return spans(day.hours(), value, low, high);
    }

    /** Stretches of the axis where a value lies in a range. */
    private List<double[]> spans(List<JsonObject> rows, ToDoubleFunction<JsonObject> value, double low, double high) {
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
