package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import ebblight.core.Oracles;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The three dials, row by row, against {@code exposure_optics.json}: the series of ISO 517, 516 and 12232 (from memory)
 * computed apart from this program, with the labels that dials carry.
 */
class ThirdStopsReferenceTest {

    private static JsonArray table(String name) throws IOException, JsonParserException {
        return JsonParser.object().from(Oracles.text("exposure_optics.json")).getArray(name);
    }

    private static String plain(double nominal) {
        return nominal == Math.floor(nominal) ? Long.toString((long) nominal) : Double.toString(nominal);
    }

    @Test
    void everyApertureOfTheDial() throws IOException, JsonParserException {
        JsonArray rows = table("f_third");
        assertThat(rows).hasSize(37);
        for (int k = 0; k < rows.size(); k++) {
            JsonObject row = rows.getObject(k);
            double nominal = row.getDouble("nominal");
            double exact = row.getDouble("exact");
            assertThat(ThirdStops.fNumber(k)).isCloseTo(exact, within(1e-12 * exact));
            assertThat(ThirdStops.fStep(nominal)).as("f/" + nominal).isEqualTo(k);
            assertThat(ThirdStops.exactFNumber(nominal)).as("f/" + nominal).isCloseTo(exact, within(1e-12 * exact));
            assertThat(ThirdStops.fLabel(exact)).isEqualTo("f/" + plain(nominal));
            assertThat(ThirdStops.fNominal(exact)).isEqualTo(nominal);
        }
    }

    /** What stands on the dial of halves only, such as f/1.7, f/3.3 and f/6.7, means the half. */
    @Test
    void anApertureOfTheDialOfHalvesMeansItsHalf() throws IOException, JsonParserException {
        List<Double> thirds = table("f_third").stream()
                .map(row -> ((JsonObject) row).getDouble("nominal"))
                .toList();
        int compared = 0;
        for (Object each : table("f_half")) {
            JsonObject row = (JsonObject) each;
            double nominal = row.getDouble("nominal");
            if (!thirds.contains(nominal)) {
                double exact = row.getDouble("exact");
                assertThat(ThirdStops.exactFNumber(nominal)).as("f/" + nominal).isCloseTo(exact, within(1e-12 * exact));
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(6);
    }

    @Test
    void everySensitivityOfTheDial() throws IOException, JsonParserException {
        JsonArray rows = table("iso_third");
        assertThat(rows).hasSizeGreaterThan(20);
        for (int k = 0; k < rows.size(); k++) {
            double nominal = rows.getObject(k).getDouble("nominal");
            double exact = rows.getObject(k).getDouble("exact");
            // the table begins at ISO 50, a stop under 100
            assertThat(ThirdStops.iso(k - 3)).isCloseTo(exact, within(1e-12 * exact));
            assertThat(ThirdStops.isoStep(nominal)).isEqualTo(k - 3);
            assertThat(ThirdStops.exactIso(nominal)).isCloseTo(exact, within(1e-12 * exact));
            assertThat(ThirdStops.isoLabel(exact)).isEqualTo(plain(nominal));
            assertThat(ThirdStops.isoNominal(exact)).isEqualTo(nominal);
        }
    }

    @Test
    void everyTimeOfTheDial() throws IOException, JsonParserException {
        JsonArray rows = table("t_third");
        assertThat(rows).hasSize(55);
        for (int k = 0; k < rows.size(); k++) {
            double nominal = rows.getObject(k).getDouble("nominal_s");
            double exact = rows.getObject(k).getDouble("exact");
            // from 30 s, which is step 15, downwards
            int step = 15 - k;
            assertThat(ThirdStops.seconds(step)).isCloseTo(exact, within(1e-12 * exact));
            assertThat(ThirdStops.timeStep(exact)).isEqualTo(step);
            assertThat(ThirdStops.exactSeconds(nominal)).isCloseTo(exact, within(1e-12 * exact));
            assertThat(ShutterTime.parse(ThirdStops.timeLabel(step))).isCloseTo(nominal, within(1e-9 * nominal));
        }
        assertThat(ThirdStops.firstTimeStep()).isEqualTo(15 - 54);
    }

    @Test
    void whatStandsOnNoDialKeepsItsValue() {
        assertThat(ThirdStops.exactIso(140)).isEqualTo(140);
        assertThat(ThirdStops.isoLabel(140)).isEqualTo("140");
        assertThat(ThirdStops.isoLabel(12)).isEqualTo("12");
        assertThat(ThirdStops.isoLabel(204_800)).isEqualTo("204800");
        // a sixth of a stop from f/8 and from its third, the farthest that can be
        assertThat(ThirdStops.exactFNumber(8.475)).isEqualTo(8.475);
        assertThat(ThirdStops.fLabel(8.475)).isEqualTo("f/8.48");
        assertThat(ThirdStops.fLabel(0.7)).isEqualTo("f/0.7");
        assertThat(ThirdStops.fLabel(90)).isEqualTo("f/90");
        assertThat(ThirdStops.exactFNumber(90)).isCloseTo(Math.pow(2, 6.5), within(1e-9));
    }

    /** Cameras write dial times to three figures or so: within a hundredth it is the dial's, beyond it was timed by hand. */
    @ParameterizedTest
    @CsvSource({
        "0.0167, 0.015625",
        "0.017, 0.017",
        "30.2, 32",
        "31, 31",
        "40, 40",
        "0.0001, 0.0001",
        "0.000125, 0.0001220703125"
    })
    void aTimeNearALabelIsTheDials(double written, double exact) {
        assertThat(ThirdStops.exactSeconds(written)).isCloseTo(exact, within(1e-12));
    }

    @Test
    void beyondTheDialTimesAreSaidInWords() {
        assertThat(ThirdStops.timeLabel(16)).isEqualTo("40 s");
        assertThat(ThirdStops.timeLabel(18)).isEqualTo("1 min 4 s");
        assertThatThrownBy(() -> ThirdStops.timeLabel(-40)).hasMessageContaining("-40");
    }
}
