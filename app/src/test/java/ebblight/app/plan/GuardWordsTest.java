package ebblight.app.plan;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonObject;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class GuardWordsTest {

    /** A time by which to be gone is never told later than it is, not even by the seconds of its minute. */
    @Test
    void leavesWithTheMinuteThatHasBegun() {
        JsonObject guard = new JsonObject();
        guard.put("leaveBy", "2027-01-02T11:00:45Z");
        JsonObject window = new JsonObject();
        window.put("guard", guard);
        window.put("start", "2027-01-02T09:00:00Z");
        window.put("end", "2027-01-02T10:00:00Z");
        Zone zone = Zone.of("zone", "Europe/Paris");
        assertThat(GuardWords.of(window, zone)).isEqualTo("LEAVE BY 12:00");
        assertThat(zone.hour(Instant.parse("2027-01-02T11:00:45Z"))).isEqualTo("12:01");
    }

    /** After midnight the day is named: 3 January 2027 is a Sunday (any calendar). */
    @Test
    void namesTheDayWhenItIsAnother() {
        JsonObject guard = new JsonObject();
        guard.put("leaveBy", "2027-01-03T00:25:10Z");
        JsonObject window = new JsonObject();
        window.put("guard", guard);
        window.put("start", "2027-01-02T17:00:00Z");
        window.put("end", "2027-01-02T18:00:00Z");
        assertThat(GuardWords.of(window, Zone.of("zone", "UTC"))).isEqualTo("LEAVE BY Sun 00:25");
    }
}
