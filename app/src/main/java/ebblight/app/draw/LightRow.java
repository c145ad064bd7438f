package ebblight.app.draw;

import com.grack.nanojson.JsonObject;
import ebblight.app.draw.Drawing.Hold;
import ebblight.app.draw.Drawing.Lettering;
import java.util.List;
import java.util.Optional;

/** The row of the light: one step a stop, as a wedge is cut; dots a stop above are its doubt. */
record LightRow(HourAxis axis, double height) {

    private static final int LEAST_EV = -2;
    private static final int MOST_EV = 16;

    void draw(Drawing to, double y) {
        axis.name(to, y, "Light", axis.range("ev100", "EV ", "", 0));
        double step = (height - 8) / (MOST_EV - LEAST_EV);
        Optional<double[]> wish = axis.day().wished("ev100");
        int now = ev(axis.day().hours().get(0));
        double begun = axis.left();
        for (JsonObject row : axis.day().hours()) {
            double at = axis.x(DayPlan.instant(row, "time"));
            int next = ev(row);
            if (next != now || !DayPlan.instant(row, "time").isBefore(axis.day().to())) {
                if (now > LEAST_EV) {
                    boolean wished = wish.isPresent() && now >= wish.get()[0] && now <= wish.get()[1];
                    double tall = (now - LEAST_EV) * step;
                    to.rect(begun, y + height - tall, Math.max(0.8, at - begun - 1), tall, wished ? Ink.INK : Ink.STEP);
                    to.line(begun, y + height - tall - step, at - 1, y + height - tall - step, Ink.INK_3, 1.3, 1.5, 3);
                }
                now = next;
                begun = at;
            }
        }
        for (int value : new int[] {0, 5, 10}) {
            double at = y + height - (value - LEAST_EV) * step;
            to.line(axis.left(), at, axis.left() + 8, at, Ink.INK, 1.5);
            to.text(
                    axis.left() + 12,
                    at + axis.small() / 3,
                    Lettering.of(axis.small(), Ink.INK).haloed(),
                    axis.narrow() ? "" + value : "EV " + value);
        }
        double brightest = axis.day().hours().stream()
                .mapToDouble(r -> r.getDouble("exposureValue100"))
                .max()
                .orElse(0);
        String most = "up to EV " + Math.round(brightest) + ", give or take 1";
        List<double[]> bright = axis.spans(r -> r.getDouble("exposureValue100"), brightest - 3, brightest);
        Lettering type = Lettering.of(axis.small(), Ink.INK).held(Hold.MIDDLE);
        for (double[] span : bright) {
            if (brightest > 5 && span[1] - span[0] > to.width(type, most)) {
                to.text((span[0] + span[1]) / 2, y + height - 14, type, most);
            }
        }
    }

    private static int ev(JsonObject row) {
        return (int) Math.max(LEAST_EV, Math.min(MOST_EV, Math.round(row.getDouble("exposureValue100"))));
    }
}
