package ebblight.engine;

import static ebblight.engine.Asking.json;
import static ebblight.engine.Asking.with;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.numeric.Work;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code settings/1} and {@code light/1}, field by field. */
class SettingsRequestTest {

    private static final JsonObject PLAIN =
            json("{'schema':'settings/1','meter':'f/16 1/100 ISO100','time':'30s','filters':['6','10','16']}");

    private final Asking asking = new Asking(new Blobs());

    @Test
    void everyChoiceHoldsTheFieldsOfTheContract() {
        JsonObject answer = asking.ask(with(with(PLAIN, "nearestMetres", "1.2"), "farthestMetres", "40"));
        // APEX: f/16 (exact f/16), 1/100 s, ISO 100 is EV 14.6439
        assertThat(answer.getDouble("exposureValue100")).isCloseTo(14.6439, within(1e-4));
        JsonArray choices = answer.getArray("choices");
        assertThat(choices).isNotEmpty();
        for (Object each : choices) {
            JsonObject choice = (JsonObject) each;
            for (String number : new String[] {
                "stops",
                "fNumber",
                "iso",
                "seconds",
                "correctedSeconds",
                "busySeconds",
                "focusMetres",
                "nearMetres",
                "errorStops",
                "errorRangeStops"
            }) {
                assertThat(choice.isNumber(number)).as(number).isTrue();
            }
            assertThat(choice.has("farMetres")).isTrue();
            assertThat(choice.get("filters")).isInstanceOf(JsonArray.class);
            assertThat(choice.get("cautions")).isInstanceOf(JsonArray.class);
            assertThat(choice.getString("dial")).isNotBlank();
            assertThat(choice.getString("shutter")).isIn("timed", "bulb");
        }
        assertThat(answer.getArray("ways")).isEmpty();
    }

    @Test
    void aMeasuredFilterTakesTheEngravedOnesPlace() {
        JsonObject only = with(with(PLAIN, "filters", "['10']"), "time", "'10s'");
        double engraved = first(asking.ask(only)).getDouble("stops");
        JsonObject measured = first(asking.ask(with(only, "measured", "['10=10.3']")));
        assertThat(engraved).isEqualTo(10);
        assertThat(measured.getDouble("stops")).isEqualTo(10.3);
        assertThat(measured.getDouble("errorRangeStops")).isLessThan(0.1);
    }

    @Test
    void lightThatFadesNeedsLongerAndLightThatGrowsLess() {
        JsonObject bulb = with(PLAIN, "time", "'4m'");
        double steady = first(asking.ask(bulb)).getDouble("correctedSeconds");
        JsonObject fading = first(asking.ask(with(bulb, "fadingStopsPerMinute", "0.2")));
        JsonObject growing = first(asking.ask(with(bulb, "fadingStopsPerMinute", "-0.2")));
        assertThat(fading.getDouble("correctedSeconds")).isGreaterThan(fading.getDouble("seconds"));
        assertThat(growing.getDouble("correctedSeconds")).isLessThan(growing.getDouble("seconds"));
        assertThat(steady).isPositive();
    }

    @Test
    void aTimeOutOfReachHasWaysAndNoChoices() {
        JsonObject answer = asking.ask(with(with(PLAIN, "meter", "'f/16 1/8000 ISO100'"), "filters", "[]"));
        assertThat(answer.getArray("choices")).isEmpty();
        assertThat(answer.getArray("ways").size()).isGreaterThanOrEqualTo(3);
        for (Object way : answer.getArray("ways")) {
            assertThat(((JsonObject) way).getString("text")).isNotBlank();
        }
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "meter | '' | meter", // an empty reading
                "meter | 'junk' | meter",
                "meter | 7 | meter",
                "meter | 'f/16 1/100' | meter",
                "time | '-3s' | time",
                "time | 'soon' | time",
                "time | 3 | time",
                "filters | ['ten'] | filters",
                "filters | [10] | filters",
                "filters | '10' | filters",
                "filters | ['-2'] | filters",
                "filters | ['31'] | filters",
                "measured | ['6'] | measured",
                "measured | ['6=x'] | measured",
                "measured | ['7=7.1'] | measured",
                "maxStack | 1.5 | maxStack",
                "maxStack | 9 | maxStack",
                "biasStops | 'bright' | biasStops",
                "biasStops | 99 | biasStops",
                "fadingStopsPerMinute | 9 | fadingStopsPerMinute",
                "reciprocityExponent | 3 | reciprocityExponent",
                "nearestMetres | -1 | nearestMetres",
                "filters | ['1','2','3','4','5','6','7','8','9','10','11','12','13'] | filters",
                "from | '2s' | time",
                "camera | 'mine' | camera",
                "camera | {'baseIso':0} | camera",
                "camera | {'widestFNumber':0} | camera",
                "camera | {'lowestIso':0} | camera",
                "camera | {'sharpestFrom':16} | camera",
                "camera | {'timedLimitSeconds':0} | camera",
                "camera | {'focalMillimetres':'wide'} | camera.focalMillimetres",
            })
    void refusesByName(String field, String value, String named) {
        asking.refused(with(PLAIN, field, value), named);
    }

    @Test
    void aRangeRunsFromShorterToLonger() {
        JsonObject range = with(with(PLAIN, "time", ""), "from", "'30s'");
        asking.refused(with(range, "to", "'2s'"), "to");
        asking.refused(range, "time");
    }

    /** JSON may hold 1e999, which no double does. */
    @Test
    void numbersAreFinite() {
        assertThatThrownBy(() -> new Engine()
                        .answer(
                                "{\"schema\":\"settings/1\",\"exposureValue100\":1e999,\"time\":\"2s\"}",
                                new Blobs(),
                                Work.alone()))
                .isInstanceOf(RequestException.class)
                .hasMessageStartingWith("exposureValue100");
    }

    /** Some cameras count further than 30 s themselves: no bulb, and no label that their dial does not have. */
    @Test
    void aCameraThatCountsToAQuarterOfAnHourNeedsNoBulb() {
        JsonObject answer = asking.ask(with(with(PLAIN, "time", "'4m'"), "camera", "{'timedLimitSeconds':900}"));
        assertThat(answer.getArray("choices")).isNotEmpty().allSatisfy(each -> {
            JsonObject choice = (JsonObject) each;
            assertThat(choice.getString("shutter")).isEqualTo("timed");
            // ISO 516, from memory: thirds of a stop, 4 min 16 s = 2^8 s among them
            double thirds = 3 * Math.log(choice.getDouble("correctedSeconds")) / Math.log(2);
            assertThat(thirds).isCloseTo(Math.rint(thirds), within(1e-9));
        });
        assertThat(answer.getArray("choices").getObject(0).getString("dial")).contains("min");
    }

    /** A camera whose lowest sensitivity is 200 has no base of 100. */
    @Test
    void theBaseIsNeverBelowTheLowestSensitivity() {
        assertThat(asking.ask(with(PLAIN, "camera", "{'lowestIso':200}")).getArray("choices"))
                .isNotEmpty();
    }

    @Test
    void saysWhatIsMissing() {
        assertThat(asking.refused(with(PLAIN, "time", ""), "time")).contains("missing");
        assertThat(asking.refused(with(PLAIN, "meter", ""), "meter")).contains("missing");
        assertThat(asking.refused(with(PLAIN, "schema", "'setings/1'"), "schema"))
                .contains("settings/1");
        assertThat(asking.refused(with(PLAIN, "meter", "'junk'"), "meter")).contains("f/16 1/100 ISO100");
    }

    @Test
    void readingsAreCarriedToTheOpening() {
        JsonObject light = json("{'schema':'light/1','readings':[{'meter':'f/8 1/60 ISO100','atSeconds':0},"
                + "{'meter':'f/8 1/30 ISO100','atSeconds':300}],'openAtSeconds':420}");
        JsonObject answer = asking.ask(light);
        // a stop in five minutes, from one metered time to twice that time
        assertThat(answer.getDouble("stopsPerMinute")).isCloseTo(0.2, within(1e-9));
        assertThat(answer.getDouble("meteredValue100") - answer.getDouble("exposureValue100"))
                .isCloseTo(0.4, within(1e-9));
        asking.refused(with(light, "readings", "[]"), "readings");
        asking.refused(with(light, "readings", "[{'meter':'junk','atSeconds':0}]"), "readings[0].meter");
        asking.refused(with(light, "readings", "[{'meter':'f/8 1/60 ISO100'}]"), "readings[0].atSeconds");
    }

    private static JsonObject first(JsonObject answer) {
        return answer.getArray("choices").getObject(0);
    }
}
