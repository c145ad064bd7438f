package ebblight.engine;

import static ebblight.engine.Asking.json;
import static ebblight.engine.Asking.with;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code sky/1} and {@code tide/1}, field by field. */
class SkyAndTideRequestTest {

    private static final JsonObject SKY = json("{'schema':'sky/1','at':'51.4779,0','time':'2024-03-20T12:00:00Z'}");

    /** One constituent of 1 m, principal lunar semidiurnal: high water every 12 h 25 min 14 s. */
    private static final JsonObject TIDE = json("{'schema':'tide/1','station':{'id':'one','name':'one constituent',"
            + "'latitude':50,'longitude':0,'datum':'MSL','meanMetres':2,'harmonics':[['M2',1,0]]},"
            + "'from':'2024-03-20T00:00:00Z','to':'2024-03-22T00:00:00Z','everySeconds':3600}");

    private final Asking asking = new Asking(new Blobs());

    @Test
    void theSkyHoldsTheFieldsOfTheContract() {
        JsonObject answer = asking.ask(SKY);
        for (String body : new String[] {"sun", "moon"}) {
            for (String field : new String[] {"azimuth", "altitude", "altitudeAirless"}) {
                assertThat(answer.getObject(body).isNumber(field))
                        .as(body + field)
                        .isTrue();
            }
        }
        // equinox at Greenwich: the sun culminates near 90° − 51.48° (common knowledge, to a degree)
        assertThat(answer.getObject("sun").getDouble("altitude")).isCloseTo(38.5, within(1.0));
        assertThat(answer.getObject("moon").isNumber("phase")).isTrue();
        assertThat(answer.getObject("moon").getDouble("fraction")).isBetween(0.0, 1.0);
        assertThat(answer.isNumber("illuminanceLux")).isTrue();
        assertThat(answer.isNumber("exposureValue100")).isTrue();
        JsonObject events = answer.getObject("events");
        for (String event : new String[] {
            "sunrise",
            "sunset",
            "transit",
            "civilDawn",
            "civilDusk",
            "nauticalDawn",
            "nauticalDusk",
            "astronomicalDawn",
            "astronomicalDusk",
            "moonrise",
            "moonset"
        }) {
            assertThat(events.has(event)).as(event).isTrue();
            if (!events.isNull(event)) {
                assertThat(Instant.parse(events.getString(event))).isAfter(Instant.parse("2024-03-20T11:59:00Z"));
            }
        }
        assertThat(events.has("polar")).isTrue();
    }

    @Test
    void thePolarDayIsData() {
        JsonObject day = asking.ask(with(with(SKY, "at", "'78.2,15.6'"), "time", "'2024-06-21T12:00:00Z'"));
        assertThat(day.getObject("events").getString("polar")).isEqualTo("day");
        assertThat(day.getObject("events").isNull("sunset")).isTrue();
        JsonObject night = asking.ask(with(with(SKY, "at", "'78.2,15.6'"), "time", "'2024-12-21T12:00:00Z'"));
        assertThat(night.getObject("events").getString("polar")).isEqualTo("night");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "at | '' | at",
                "at | '95,0' | at",
                "at | '10' | at",
                "at | 10 | at",
                "time | 'noon' | time",
                "time | '2024-02-30T12:00:00Z' | time",
                "time | '2024-03-20 12:00' | time",
                "cloud | 'pink' | cloud",
                "view | {} | view.azimuth",
                "view | {'azimuth':10} | view.focalMillimetres",
                "view | {'azimuth':10,'focalMillimetres':24,'sensorMillimetres':[36]} | view.sensorMillimetres",
                "elevationMetres | 'high' | elevationMetres",
            })
    void theSkyRefusesByName(String field, String value, String named) {
        asking.refused(with(SKY, field, value), named);
    }

    @Test
    void theTideHoldsTheFieldsOfTheContract() {
        JsonObject answer = asking.ask(TIDE);
        assertThat(answer.getString("datum")).isEqualTo("MSL");
        assertThat(answer.getObject("station").getString("id")).isEqualTo("one");
        JsonArray heights = answer.getArray("heights");
        assertThat(heights.size()).isGreaterThanOrEqualTo(48);
        for (Object each : heights) {
            // amplitude 1 m times a node factor of 0.963 to 1.037 (Schureman SP 98, table 14)
            assertThat(((JsonObject) each).getDouble("heightMetres")).isBetween(2 - 1.038, 2 + 1.038);
        }
        JsonArray extremes = answer.getArray("extremes");
        double last = Double.NaN;
        for (Object each : extremes) {
            JsonObject one = (JsonObject) each;
            assertThat(one.getString("kind")).isIn("high", "low");
            double at = Instant.parse(one.getString("time")).toEpochMilli() / 60_000.0;
            if (!Double.isNaN(last)) {
                // half of M2's period: 12.4206 h (Schureman SP 98, table 2)
                assertThat(at - last).isCloseTo(12.4206 * 30, within(0.5));
            }
            last = at;
        }
        assertThat(extremes.size()).isBetween(7, 8);
    }

    /** Of the lists that could be read none gives these two with a phase (IHO 2017 lacks both). */
    @Test
    void constituentsThatCannotBeReadAreNamedAndWidenTheRange() {
        JsonObject answer = asking.ask(TIDE);
        assertThat(answer.getArray("warnings").toString()).doesNotContain("left out");
        JsonObject more = asking.ask(with(TIDE, "station.harmonics", "[['M2',1,0],['3L2',0.12,10],['T3',0.03,20]]"));
        assertThat(more.getArray("warnings").toString()).contains("left out", "3L2, T3", "at most 15 cm");
        assertThat(more.getArray("leftOut").getObject(0).getString("name")).isEqualTo("3L2");
        assertThat(more.getArray("heights")).isEqualTo(answer.getArray("heights"));
        assertThat(more.getDouble("levelRangeMetres") - answer.getDouble("levelRangeMetres"))
                .isCloseTo(0.15, within(1e-9));
        // a centimetre is less than the weather moves: named in the answer, not warned of
        JsonObject little = asking.ask(with(TIDE, "station.harmonics", "[['M2',1,0],['R3',0.004,10]]"));
        assertThat(little.getArray("warnings").toString()).doesNotContain("left out");
        assertThat(little.getArray("leftOut")).hasSize(1);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "station | ~~ | station",
                "station | 'port' | station",
                "station.harmonics | [['M2',1]] | station.harmonics[0]",
                "station.latitude | 95 | station.harmonics",
                "from | 'today' | from",
                "to | '2024-03-19T00:00:00Z' | to",
                "table | [['2024-03-20T00:00:00Z',1,'high']] | station",
                "everySeconds | 0 | every",
            })
    void theTideRefusesByName(String field, String value, String named) {
        asking.refused(with(TIDE, field, value), named);
    }

    /** Whoever could type a negative wait would be told a start after the hour to leave. */
    @ParameterizedTest
    @CsvSource({
        "exposureSeconds, -60",
        "busySeconds, -60",
        "busySeconds, 1e9",
        "packingSeconds, -60",
        "marginMetres, 99",
        "feetMetres, -99",
        "wayBackMetres, -99"
    })
    void theGuardRefusesWhatCannotBe(String field, String value) {
        JsonObject guarded = with(TIDE, "guard", "{'now':'2024-03-20T06:00:00Z','feetMetres':3,'wayBackMetres':3}");
        assertThat(asking.ask(guarded).getObject("guard").getString("verdict")).isNotBlank();
        asking.refused(with(guarded, "guard." + field, value), "guard");
    }

    @Test
    void noWaterStandsHigherThanTheHighestTides() {
        JsonObject table = with(
                with(TIDE, "station", ""),
                "table",
                "[['2024-03-20T00:00:00Z',99,'high'],['2024-03-20T06:10:00Z',2.5,'low']]");
        asking.refused(table, "table");
        // a station may, on paper
        JsonObject tall =
                with(with(TIDE, "station.harmonics", "[['M2',20,0],['S2',20,0]]"), "station.meanMetres", "20");
        assertThat(asking.ask(tall).getArray("extremes")).isNotEmpty();
    }

    @Test
    void aTableOfTwoHighWatersInARowIsRefused() {
        JsonObject table = with(
                with(TIDE, "station", ""),
                "table",
                "[['2024-03-20T00:00:00Z',3,'high']," + "['2024-03-20T06:10:00Z',2.5,'high']]");
        assertThat(asking.refused(table, "table")).contains("high");
    }

    /** The first and the last water of a table turn as much as those between. */
    @Test
    void everyWaterOfATableIsTold() {
        JsonObject table = with(
                with(TIDE, "station", ""),
                "table",
                "[['2024-03-20T03:00:00Z',5,'high'],['2024-03-20T09:00:00Z',1,'low'],['2024-03-20T15:20:00Z',5.2,'high'],"
                        + "['2024-03-20T21:40:00Z',0.8,'low']]");
        JsonObject answer = asking.ask(table);
        assertThat(answer.getArray("extremes").stream()
                        .map(e ->
                                ((JsonObject) e).getString("time") + " " + ((JsonObject) e).getDouble("heightMetres")))
                .containsExactly(
                        "2024-03-20T03:00:00Z 5.0",
                        "2024-03-20T09:00:00Z 1.0",
                        "2024-03-20T15:20:00Z 5.2",
                        "2024-03-20T21:40:00Z 0.8");
        assertThat(answer.getArray("warnings").toString()).contains("2024-03-20T21:40:00Z");
        JsonObject when = with(
                json("{'schema':'when/1','at':'50,0','from':'2024-03-20T00:00:00Z','to':'2024-03-22T00:00:00Z',"
                        + "'tideMetres':[3,9]}"),
                "table",
                JsonWriter.string(table.getArray("table")));
        JsonObject windows = asking.ask(when);
        assertThat(windows.getArray("windows")).hasSize(2);
        assertThat(windows.getArray("warnings").toString()).contains("the water is not known");
    }

    /** Overcast takes 3.3 stops (divisor 10, USNO Circular 171), in the strip of the day as in the windows. */
    @Test
    void aForecastDimsTheLight() {
        JsonObject clear = json("{'schema':'sky/1','at':'50,0','time':'2024-03-20T12:00:00Z'}");
        JsonObject covered = with(
                clear,
                "weather",
                "[{'time':'2024-03-20T09:00:00Z','cloudCover':1},{'time':'2024-03-20T15:00:00Z','cloudCover':1}]");
        assertThat(asking.ask(clear).getDouble("exposureValue100")
                        - asking.ask(covered).getDouble("exposureValue100"))
                .isCloseTo(3.322, within(0.01));
        // a reading taken under that cover already holds it
        JsonObject metered = with(covered, "meter", "{'reading':'f/8 1/60 ISO100','time':'2024-03-20T12:00:00Z'}");
        // log2(64 · 64): 1/60 on a dial is 1/64 s (ISO 516 series)
        assertThat(asking.ask(metered).getDouble("exposureValue100")).isCloseTo(12, within(0.1));
    }

    /** Dusk and dawn of an equinox on the equator lie alike about noon (symmetry). */
    @Test
    void aDayTellsTheMorningToo() {
        JsonObject day = json("{'schema':'sky/1','at':'0,0','from':'2024-03-20T00:00:00Z','to':'2024-03-21T00:00:00Z',"
                + "'exposure':{'seconds':120,'fNumber':11,'filterStops':6}}");
        JsonObject answer = asking.ask(day);
        double noon =
                Instant.parse(answer.getObject("events").getString("transit")).getEpochSecond();
        JsonObject exposure = answer.getObject("exposure");
        double dusk = Instant.parse(exposure.getString("darkEnough")).getEpochSecond() - noon;
        double dawn = noon - Instant.parse(exposure.getString("brightEnough")).getEpochSecond();
        assertThat(dawn).isCloseTo(dusk, within(60.0)).isBetween(6 * 3600.0, 7 * 3600.0);
        assertThat(exposure.get("openSeconds")).isNull();
    }

    /** On the equator at the equinox the sun rises due east at about 6 by the local sun (common knowledge). */
    @Test
    void theSunThatEntersBeforeTheShutterClosesIsSaid() {
        JsonObject dawn = json("{'schema':'sky/1','at':'0,0','time':'2024-03-20T06:02:00Z','view':{'azimuth':90,"
                + "'focalMillimetres':24},'exposure':{'seconds':240,'fNumber':11,'filterStops':6}}");
        JsonArray entering = asking.ask(dawn).getObject("exposure").getArray("entering");
        assertThat(entering).hasSize(1);
        assertThat(entering.getObject(0).getString("body")).isEqualTo("sun");
        assertThat(entering.getObject(0).getString("time")).startsWith("2024-03-20T06:0");
        JsonObject settled = with(dawn, "exposure", "{'openSeconds':240}");
        assertThat(asking.ask(settled).getObject("exposure").getArray("entering"))
                .isEqualTo(entering);
        asking.refused(with(dawn, "exposure", "{'openSeconds':-1}"), "exposure.openSeconds");
        JsonObject west = with(dawn, "view.azimuth", "270");
        assertThat(asking.ask(west).getObject("exposure").getArray("entering")).isEmpty();
    }
}
