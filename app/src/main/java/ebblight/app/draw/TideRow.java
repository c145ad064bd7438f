package ebblight.app.draw;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.draw.Drawing.Dot;
import ebblight.app.draw.Drawing.Hold;
import ebblight.app.draw.Drawing.Lettering;
import ebblight.app.draw.Labels.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/** The row of the water: its height, high and low waters, the way back, and by when to leave. */
record TideRow(HourAxis axis, double height) {

    void draw(Drawing to, double y, JsonObject tide) {
        axis.name(to, y, "Tide", wish());
        if (!axis.narrow()) {
            to.text(
                    0,
                    y + 3 * axis.small() + 7,
                    Lettering.of(axis.small(), Ink.INK_2),
                    tide.getObject("station") == null ? "above its datum" : "above " + tide.getString("datum"));
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
        });
        Labels labels = new Labels(to);
        leaveBy(to, y, labels);
        for (JsonObject extreme : Asked.rows(tide.getArray("extremes"))) {
            double metres = extreme.getDouble("heightMetres");
            double at = axis.x(DayPlan.instant(extreme, "time"));
            double ya = level.applyAsDouble(metres);
            to.circle(at, ya, 4.5, Ink.SEA);
            String words = (axis.narrow() ? "" : extreme.getString("kind") + " ")
                    + axis.day().zone().hour(DayPlan.instant(extreme, "time")) + ", " + HourAxis.number(metres, 1)
                    + " m";
            Lettering type = Lettering.of(axis.small(), Ink.INK).strong().haloed();
            double half = to.width(type, words) / 2;
            double middle = Math.max(axis.left() + half + 4, Math.min(axis.width() - half - 4, at));
            boolean up = extreme.getString("kind").equals("high");
            double above = up ? Math.max(y + axis.small() + 1, ya - 9) : ya - 9;
            List<Place> places = new ArrayList<>(List.of(new Place(middle, above, Hold.MIDDLE)));
            double below = ya + axis.small() + 6;
            if (below < y + height) {
                places.add(new Place(middle, below, Hold.MIDDLE));
            }
            labels.setIfFree(type, words, places);
        }
        line.ifPresent(m -> wayBack(to, labels, m, level.applyAsDouble(m)));
    }

    private String wish() {
        String height = axis.range("tideMetres", "", " m", 1);
        String direction = axis.day().wishes().getString("tideDirection", "any");
        return direction.equals("any") || axis.day().wished("tideMetres").isPresent() ? height : direction;
    }

    /** The name of the line of the way back, as long as fits beside the windows and what else is written there. */
    private void wayBack(Drawing to, Labels labels, double metres, double at) {
        Lettering type = Lettering.of(axis.small(), Ink.WRACK).strong().haloed();
        String height = HourAxis.number(metres, 1) + " m";
        for (String words : List.of(
                "way back, less the margin for waves: " + height, "way back, less margin: " + height, "way back")) {
            double wide = to.width(type, words);
            List<Place> places = new ArrayList<>();
            for (double foot : new double[] {at - 5, at + axis.small() + 3}) {
                for (double x = axis.left() + 6; x < axis.width() - wide - 6; x += 12) {
                    if (axis.besideWindows(x - 4, x + wide + 4)) {
                        places.add(new Place(x, foot, Hold.START));
                    }
                }
            }
            if (labels.setIfFree(type, words, places)) {
                return;
            }
        }
    }

    /** Height of still water at which to be gone. */
    private Optional<Double> guardLine() {
        return axis.day().windows().stream()
                .filter(w -> w.getObject("guard") != null)
                .map(w -> w.getObject("guard").getDouble("rulingMetres")
                        - w.getObject("guard").getDouble("marginMetres"))
                .findFirst();
    }

    private void leaveBy(Drawing to, double y, Labels labels) {
        for (JsonObject window : axis.day().windows()) {
            JsonObject guard = window.getObject("guard");
            if (guard != null
                    && guard.isString("leaveBy")
                    && DayPlan.instant(guard, "leaveBy").isBefore(axis.day().to())) {
                double at = axis.x(DayPlan.instant(guard, "leaveBy"));
                String words = (axis.narrow() ? "" : "leave by ")
                        + axis.day().zone().deadline(DayPlan.instant(guard, "leaveBy"));
                Lettering type =
                        Lettering.of(axis.small() + 1, Ink.WRACK).strong().haloed();
                Place right = new Place(at + 7, y + axis.small() + 5, Hold.START);
                Place left = new Place(at - 7, right.y(), Hold.END);
                boolean room = at + to.width(type, words) + 12 <= axis.width();
                to.line(at, y, at, y + height, Ink.WRACK, 3);
                labels.set(type, words, room ? List.of(right, left) : List.of(left));
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
