package ebblight.app.draw;

import com.grack.nanojson.JsonObject;
import ebblight.app.draw.Drawing.Dot;
import ebblight.app.draw.Drawing.Hold;
import ebblight.app.draw.Drawing.Lettering;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The rows of sun and moon.
 *
 * @param height of each
 */
record SkyRows(HourAxis axis, double height) {

    /** Black where the sun is down. */
    void ground(Drawing to, double y) {
        axis.spans(row -> -0.833 - HourAxis.altitude(row, "sun"), 0, 1e9)
                .forEach(s -> to.rect(s[0], y, s[1] - s[0], height, Ink.DARK));
    }

    void sun(Drawing to, double y) {
        axis.name(to, y, "Sun", axis.range("sunAltitude", "", "°", 0));
        axis.frames(to, y, height, "sunAltitude", row -> HourAxis.altitude(row, "sun"));
        List<double[]> taken = new ArrayList<>();
        for (String event : new String[] {"sunrise", "sunset"}) {
            Optional<Instant> at = axis.day().event(event);
            if (at.isPresent()) {
                boolean rises = event.equals("sunrise");
                String words = (axis.narrow() ? "" : rises ? "up " : "sets ")
                        + axis.day().zone().hour(at.get());
                // where it is narrow the words stand on the night's side, the day is too short for two of them
                boolean right = rises != axis.narrow();
                Lettering type = Lettering.of(axis.small(), axis.narrow() ? Ink.BAND_INK : Ink.INK)
                        .strong()
                        .held(right ? Hold.START : Hold.END);
                double at0 = axis.x(at.get()) + (right ? 5 : -5);
                double wide = to.width(type, words);
                if (at0 - wide > axis.left() || right) {
                    to.text(at0, y + height / 2 + 5, axis.narrow() ? type : type.haloed(), words);
                    taken.add(new double[] {right ? at0 : at0 - wide, right ? at0 + wide : at0});
                }
            }
        }
        int step = axis.narrow() ? 6 : 2;
        for (int hour = step / 2; hour < 24; hour += step) {
            Instant at = axis.day().zone().at(axis.day().day(), hour);
            double degrees = HourAxis.altitude(axis.nearest(at), "sun");
            String words = HourAxis.number(degrees, 0) + "°";
            double half = to.width(Lettering.of(axis.small(), Ink.INK), words) / 2 + 4;
            boolean free = taken.stream().noneMatch(t -> axis.x(at) + half > t[0] && axis.x(at) - half < t[1])
                    && axis.besideWindows(axis.x(at) - half, axis.x(at) + half);
            if (free) {
                to.text(
                        axis.x(at),
                        y + height / 2 + 5,
                        Lettering.of(axis.small(), degrees < -0.8 ? Ink.BAND_INK : Ink.INK)
                                .held(Hold.MIDDLE),
                        words);
            }
        }
    }

    void moon(Drawing to, double y) {
        axis.name(to, y, "Moon", axis.range("moonAltitude", "", "°", 0));
        axis.frames(to, y, height, "moonAltitude", row -> HourAxis.altitude(row, "moon"));
        JsonObject moon = axis.day().sky().getObject("moon");
        double fraction = moon.getDouble("fraction");
        boolean waxing = moon.getDouble("phase") < 180;
        for (int hour = 0; hour < 24; hour += axis.narrow() ? 2 : 1) {
            Instant at = axis.day().zone().at(axis.day().day(), hour);
            double degrees = HourAxis.altitude(axis.nearest(at), "moon");
            if (degrees > 0 && axis.x(at) > axis.left() + 8) {
                phase(to, axis.x(at), y + height - 10 - Math.min(16, degrees * 0.4), 7, fraction, waxing);
            }
        }
        String lit = Math.round(100 * fraction) + " % lit";
        String whole = lit
                + axis.day()
                        .event("moonrise")
                        .map(i -> ", up " + axis.day().zone().hour(i))
                        .orElse("")
                + axis.day()
                        .event("moonset")
                        .map(i -> ", down " + axis.day().zone().hour(i))
                        .orElse("");
        for (String words : new String[] {whole, lit}) {
            OptionalDouble free = free(to, words);
            if (free.isPresent()) {
                to.text(free.getAsDouble(), y + height / 2 + 5, Lettering.of(axis.small(), Ink.INK), words);
                return;
            }
        }
    }

    /** The leftmost place where words lie neither on the moons nor in a window. */
    private OptionalDouble free(Drawing to, String words) {
        double wide = to.width(Lettering.of(axis.small(), Ink.INK), words) + 10;
        for (double from = axis.left() + 6; from + wide < axis.width(); from += 6) {
            double a = from;
            boolean free = axis.day().hours().stream()
                            .noneMatch(r -> HourAxis.altitude(r, "moon") > 0
                                    && axis.x(DayPlan.instant(r, "time")) > a - 14
                                    && axis.x(DayPlan.instant(r, "time")) < a + wide)
                    && axis.day().windows().stream()
                            .noneMatch(w -> axis.x(DayPlan.instant(w, "end")) > a - 6
                                    && axis.x(DayPlan.instant(w, "start")) < a + wide);
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
}
