package ebblight.app.plan;

import com.grack.nanojson.JsonObject;
import java.time.Instant;

/** What the water guard says of a window, in words. */
public final class GuardWords {

    private GuardWords() {}

    /** Words for a window of {@code when/1}; empty when no guard was asked for. */
    public static String of(JsonObject window, Zone zone) {
        JsonObject guard = window.getObject("guard");
        if (guard == null) {
            return "";
        }
        if (guard.isString("leaveBy")) {
            Instant by = Instant.parse(guard.getString("leaveBy"));
            boolean early = by.isBefore(Instant.parse(window.getString("end")));
            Instant start = Instant.parse(window.getString("start"));
            String when = zone.date(by).equals(zone.date(start)) ? zone.deadline(by) : zone.dayAndDeadline(by);
            return "LEAVE BY " + when + (early ? ", before the window ends" : "");
        }
        return switch (guard.getString("verdict", "")) {
            case "leave now" -> "THE WATER IS OVER THE WAY BACK AT THE START";
            case "not reached by the prediction" -> "predicted water does not reach the way back";
            default -> "the water is not known";
        };
    }
}
