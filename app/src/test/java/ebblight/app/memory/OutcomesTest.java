package ebblight.app.memory;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import org.junit.jupiter.api.Test;

class OutcomesTest {

    private static JsonObject memory(JsonObject outing) {
        JsonObject memory = new JsonObject();
        memory.put("outings", JsonArray.from(outing));
        return memory;
    }

    private static JsonObject outing(int results) throws Exception {
        JsonArray rows = new JsonArray();
        for (int k = 0; k < results; k++) {
            rows.add(JsonParser.object()
                    .from("{\"outcomes\":[{\"part\":\"flowing-1\",\"kind\":\"flowing\",\"water\":\"swell\","
                            + "\"windMetresPerSecond\":6.5,\"predicted\":0.10,\"low\":0.08,\"high\":0.14,\"cameOut\":"
                            + (0.10 + 0.01 * k) + "}]}"));
        }
        JsonObject outing = new JsonObject();
        outing.put("results", rows);
        return outing;
    }

    @Test
    void fivePicturesAreTooFewToSay() throws Exception {
        JsonObject group =
                Outcomes.of(memory(outing(5))).getArray("predictions").getObject(0);
        assertThat(group.get("off")).isNull();
        assertThat(group.getString("words")).isEqualTo("too few to say (5 of at least 6)");
    }

    /** Ratios 1.0 to 1.6 in tenths: middle 1.3; seven values hold the median between the ends (place 1, Conover). */
    @Test
    void sevenPicturesTellTheMiddleAndItsRangePerWaterAndWind() throws Exception {
        JsonObject group =
                Outcomes.of(memory(outing(7))).getArray("predictions").getObject(0);
        assertThat(group.getString("of")).isEqualTo("swell");
        assertThat(group.getString("wind")).startsWith("moderate to fresh breeze"); // Beaufort 4 begins at 5.5 m/s
        assertThat(Math.round(100 * group.getDouble("off"))).isEqualTo(30);
        assertThat(Math.round(100 * group.getDouble("offLow"))).isZero();
        assertThat(Math.round(100 * group.getDouble("offHigh"))).isEqualTo(60);
        assertThat(group.getString("words")).contains("30 % more left than predicted");
    }

    @Test
    void verdictsAndTheOwnMarksTellWhatIsKeptAndTheProgramsMarksDoNot() throws Exception {
        JsonObject outing = new JsonObject();
        JsonArray frames = new JsonArray();
        for (int k = 0; k < 8; k++) {
            JsonObject frame = JsonParser.object()
                    .from("{\"file\":\"card/A_" + k + ".jpg\",\"role\":\"filtered\",\"exposureSeconds\":32}");
            if (k < 3) {
                frame.put("rating", 5);
            } else if (k < 5) {
                frame.put("rating", 5);
                frame.put("suggestedRating", 5);
            } else if (k == 5) {
                frame.put("rating", -1);
            }
            frames.add(frame);
        }
        outing.put("frames", frames);
        outing.put(
                "entries",
                JsonParser.array()
                        .from("[{\"openedAt\":\"x\",\"openSeconds\":30,\"verdict\":\"keep\",\"file\":\"A_7.jpg\"},"
                                + "{\"openedAt\":\"y\",\"openSeconds\":2,\"verdict\":\"not\"},"
                                + "{\"openedAt\":\"z\",\"openSeconds\":2,\"verdict\":null}]"));
        JsonArray times = Outcomes.of(memory(outing)).getArray("times");
        assertThat(times).hasSize(2);
        assertThat(times.getObject(0).getInt("taken")).isEqualTo(1);
        assertThat(times.getObject(0).getString("words")).startsWith("too few to say");
        JsonObject half = times.getObject(1);
        assertThat(half.getDouble("seconds")).isEqualTo(32);
        assertThat(half.getInt("taken")).isEqualTo(8);
        assertThat(half.getInt("kept")).isEqualTo(4);
        assertThat(half.getString("words")).startsWith("kept 4 of 8");
    }

    @Test
    void aCardThatOnlyTheProgramMarkedSaysNothingOfThePhotographer() throws Exception {
        JsonObject outing = new JsonObject();
        outing.put(
                "frames",
                JsonParser.array()
                        .from("[{\"file\":\"a\",\"role\":\"filtered\",\"exposureSeconds\":8,\"rating\":5,"
                                + "\"suggestedRating\":5}]"));
        assertThat(Outcomes.of(memory(outing)).getArray("times")).isEmpty();
    }
}
