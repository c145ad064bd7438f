package ebblight.engine;

import com.grack.nanojson.JsonObject;
import ebblight.core.numeric.Epoch;
import ebblight.core.tide.Swell;
import ebblight.core.tide.TideCurve;
import ebblight.core.tide.WaterGuard;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The water guard in {@code tide/1}: {@code now}; {@code feetMetres}, or {@code atFeet}, the instant at which the water
 * stood at the feet; {@code wayBackMetres}; {@code marginMetres}; {@code swellMetres} with {@code swellSeconds};
 * {@code exposureSeconds}, {@code busySeconds}, {@code packingSeconds}.
 */
final class GuardAnswer {

    private static final double LONGEST_SECONDS = 86_400;

    private GuardAnswer() {}

    static JsonObject of(Fields fields, TideCurve curve) {
        double now = Epoch.seconds(Instants.read(fields, "now"));
        WaterGuard guard = guard(fields, curve);
        WaterGuard.Verdict verdict = guard.at(
                now,
                fields.number("exposureSeconds", 0, 0, LONGEST_SECONDS),
                fields.number("busySeconds", 0, 0, LONGEST_SECONDS));
        JsonObject answer = new JsonObject();
        answer.put("feetMetres", feet(fields, curve));
        answer.put("rulingMetres", guard.lowestMetres());
        answer.put("marginMetres", guard.marginMetres());
        answer.put("wayBackGiven", fields.has("wayBackMetres"));
        put(answer, verdict);
        return answer;
    }

    /** The guard that the fields describe, whatever the hour. */
    static WaterGuard guard(Fields fields, TideCurve curve) {
        return guard(fields, curve, Optional.empty());
    }

    /** The same, with the swell of a forecast where the fields tell none. */
    static WaterGuard guard(Fields fields, TideCurve curve, Optional<Swell> forecast) {
        double feet = feet(fields, curve);
        OptionalDouble wayBack = fields.has("wayBackMetres")
                ? OptionalDouble.of(fields.number("wayBackMetres"))
                : OptionalDouble.empty();
        Optional<Swell> swell = fields.has("swellMetres")
                ? Optional.of(Checked.of(
                        fields.path("swellMetres"),
                        () -> new Swell(fields.number("swellMetres"), fields.number("swellSeconds"))))
                : forecast;
        return Checked.of(
                "guard",
                () -> WaterGuard.of(
                        curve,
                        feet,
                        wayBack,
                        fields.number("marginMetres", 0),
                        swell,
                        fields.number("packingSeconds", WaterGuard.PACKING_SECONDS)));
    }

    private static double feet(Fields fields, TideCurve curve) {
        if (fields.has("feetMetres")) {
            return fields.number("feetMetres");
        }
        if (!fields.has("atFeet")) {
            throw new RequestException(
                    fields.path("feetMetres"),
                    "is missing: give a height, or atFeet, when the water stood at your feet");
        }
        double at = Epoch.seconds(Instants.read(fields, "atFeet"));
        if (!curve.knows(at)) {
            throw new RequestException(fields.path("atFeet"), "lies outside of the table of waters");
        }
        return curve.heightMetres(at);
    }

    static void put(JsonObject answer, WaterGuard.Verdict verdict) {
        answer.put("leaveBy", null);
        answer.put("latestStart", null);
        answer.put("rising", null);
        if (verdict instanceof WaterGuard.Verdict.LeaveBy leave) {
            answer.put("verdict", "leave by");
            answer.put("leaveBy", Instants.write(leave.leaveBy()));
            answer.put("latestStart", Instants.write(leave.latestStart()));
            answer.put("rising", leave.rising());
            answer.put("needsYes", leave.rising());
        } else if (verdict instanceof WaterGuard.Verdict.Gone gone) {
            answer.put("verdict", "leave now");
            answer.put("rising", gone.rising());
            answer.put("needsYes", true);
        } else if (verdict instanceof WaterGuard.Verdict.NotReached reached) {
            answer.put("verdict", "not reached by the prediction");
            answer.put("notBefore", Instants.write(reached.before()));
            answer.put("rising", reached.rising());
            answer.put("needsYes", false);
        } else {
            answer.put("verdict", "not known");
            answer.put("needsYes", true);
        }
    }
}
