package ebblight.app.draw;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.draw.Drawing.Dot;
import ebblight.app.draw.Drawing.Hold;
import ebblight.app.draw.Drawing.Lettering;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** The row of the water: its height, high and low waters, the way back, and by when to leave. */
record TideRow(HourAxis axis, double height) {

    void draw(Drawing to, double y, JsonObject tide) {
        axis.name(to, y, "Tide", axis.range("tideMetres", "", " m", 1));
        if (!axis.narrow()) {
            to.text(
                    0,
                    y + 3 * axis.small() + 7,
                    Lettering.of(axis.small(), Ink.INK_2),
                    "above " + tide.getString("datum"));
        }
        List<JsonObject> heights = Asked.rows(tide.getArray("heights")).stream()
                .filter(r -> r.isNumber("heightMetres"))
                .toList();
        if (heights.isEmpty()) {
            to.text(axis.left() + 8, y + 30, Lettering.of(axis.small(), Ink.INK), "the water is not known on this day");
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
        double scale = (height - 44) / Math.max(0.3, high - low);
        ToDoubleFunction<Double> level = m -> y + height - 10 - (m - floor) * scale;
        List<Dot> curve = new ArrayList<>();
        for (JsonObject row : heights) {
            curve.add(
                    new Dot(axis.x(DayPlan.instant(row, "time")), level.applyAsDouble(row.getDouble("heightMetres"))));
        }
        List<Dot> water = new ArrayList<>(curve);
        water.add(new Dot(curve.get(curve.size() - 1).x(), y + height));
        water.add(new Dot(curve.get(0).x(), y + height));
        to.area(water, Ink.SEA_FILL, 0.75);
        waves(to, curve, y + height);
        to.line(curve, Ink.SEA, 2.5);
        axis.frames(to, y, height, "tideMetres", heights, row -> row.getDouble("heightMetres"));
        line.ifPresent(m -> {
            double at = level.applyAsDouble(m);
            to.line(axis.left(), at, axis.width(), at, Ink.WRACK, 2, 8, 4);
            to.text(
                    axis.left() + 6,
                    at - 5,
                    Lettering.of(axis.small(), Ink.WRACK).strong().haloed(),
                    (axis.narrow() ? "way back " : "way back, less the margin for waves: ") + HourAxis.number(m, 1)
                            + " m");
        });
        for (JsonObject extreme : Asked.rows(tide.getArray("extremes"))) {
            double metres = extreme.getDouble("heightMetres");
            double at = axis.x(DayPlan.instant(extreme, "time"));
            double ya = level.applyAsDouble(metres);
            to.circle(at, ya, 4.5, Ink.SEA);
            String words = (axis.narrow() ? "" : extreme.getString("kind") + " ")
                    + axis.day().zone().hour(DayPlan.instant(extreme, "time")) + ", " + HourAxis.number(metres, 1)
                    + " m";
            Lettering type = Lettering.of(axis.small(), Ink.INK)
                    .strong()
                    .held(Hold.MIDDLE)
                    .haloed();
            double half = Drawing.width(type, words) / 2;
            double middle = Math.max(axis.left() + half + 4, Math.min(axis.width() - half - 4, at));
            boolean up = extreme.getString("kind").equals("high");
            to.text(middle, up ? Math.max(y + axis.small() + 1, ya - 9) : ya - 9, type, words);
        }
        leaveBy(to, y);
    }

    /** Height of still water at which to be gone. */
    private Optional<Double> guardLine() {
        return axis.day().windows().stream()
                .filter(w -> w.getObject("guard") != null)
                .map(w -> w.getObject("guard").getDouble("rulingMetres")
                        - w.getObject("guard").getDouble("marginMetres"))
                .findFirst();
    }

    private void leaveBy(Drawing to, double y) {
        for (JsonObject window : axis.day().windows()) {
            JsonObject guard = window.getObject("guard");
            if (guard != null
                    && guard.isString("leaveBy")
                    && DayPlan.instant(guard, "leaveBy").isBefore(axis.day().to())) {
                double at = axis.x(DayPlan.instant(guard, "leaveBy"));
                String words =
                        (axis.narrow() ? "" : "leave by ") + axis.day().zone().hour(DayPlan.instant(guard, "leaveBy"));
                boolean leftward = at
                                + Drawing.width(
                                        Lettering.of(axis.small() + 1, Ink.WRACK)
                                                .strong(),
                                        words)
                                + 12
                        > axis.width();
                to.line(at, y, at, y + height, Ink.WRACK, 3);
                to.text(
                        at + (leftward ? -7 : 7),
                        y + axis.small() + 5,
                        Lettering.of(axis.small() + 1, Ink.WRACK)
                                .strong()
                                .held(leftward ? Hold.END : Hold.START)
                                .haloed(),
                        words);
            }
        }
    }

    /** Small waves under the line of the water. */
    private void waves(Drawing to, List<Dot> curve, double floor) {
        for (double y = floor - 8; y > floor - height; y -= 11) {
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
}
