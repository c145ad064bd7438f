package ebblight.engine;

import static ebblight.engine.Asking.json;
import static ebblight.engine.Asking.with;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code when/1}, field by field. */
class WhenRequestTest {

    private static final JsonObject SUN_UP = json("{'schema':'when/1','at':'51.4779,0','from':'2024-03-20T00:00:00Z',"
            + "'to':'2024-03-21T00:00:00Z','sunAltitude':[0,90]}");

    private static final JsonObject TIDE = json("{'schema':'when/1','at':'50,0','station':{'id':'one','name':'one"
            + " constituent','latitude':50,'longitude':0,'datum':'MSL','meanMetres':2,'harmonics':[['M2',1,0]]},"
            + "'from':'2024-03-20T00:00:00Z','to':'2024-03-22T00:00:00Z','tideMetres':[2.5,9]}");

    private final Asking asking = new Asking(new Blobs());

    private static JsonObject only(JsonObject answer) {
        assertThat(answer.getArray("windows")).hasSize(1);
        return answer.getArray("windows").getObject(0);
    }

    @Test
    void aWindowIsWholeMinutesFromTheFirstToTheLast() {
        JsonObject window = only(asking.ask(SUN_UP));
        Instant start = Instant.parse(window.getString("start"));
        Instant end = Instant.parse(window.getString("end"));
        assertThat(start.getEpochSecond() % 60).isZero();
        assertThat(end.getEpochSecond() % 60).isZero();
        assertThat(window.getLong("minutes"))
                .isEqualTo(Duration.between(start, end).toMinutes() + 1);
        // equinox: the sun's middle is over the horizon for 12 h and some minutes of refraction (common knowledge)
        assertThat(window.getLong("minutes")).isBetween(12 * 60L, 12 * 60 + 12L);
        assertThat(window.getArray("why").getString(0)).startsWith("sun ");
    }

    @Test
    void framesFitWithTheBusyTimeBetweenThem() {
        JsonObject asked = with(SUN_UP, "exposure", "{'time':'4m','busySeconds':60}");
        asked = with(asked, "hours", "['12:00','12:30']");
        // half an hour: 4 + 1 minutes six times, the last frame without its busy minute
        assertThat(only(asking.ask(asked)).getLong("frames")).isEqualTo(6);
        asked = with(asked, "hours", "['12:00','12:28']");
        assertThat(only(asking.ask(asked)).getLong("frames")).isEqualTo(5);
    }

    @Test
    void hoursAreThoseOfTheClockAtThePlace() {
        JsonObject asked = with(with(SUN_UP, "sunAltitude", ""), "hours", "['12:00','12:30']");
        asked = with(asked, "offsets", "[['2024-03-20T00:00:00Z','-05:00']]");
        assertThat(only(asking.ask(asked)).getString("start")).isEqualTo("2024-03-20T17:00:00Z");
    }

    @Test
    void oneConstituentStandsHighTwiceADay() {
        JsonObject answer = asking.ask(TIDE);
        // over half its height for a third of its 12 h 25 min: a cosine over ½ (trigonometry), 248 min
        JsonObject whole = answer.getArray("windows").getObject(1);
        assertThat((double) whole.getLong("minutes")).isCloseTo(248, within(12.0));
        assertThat(whole.getString("water")).isEqualTo("turning");
        assertThat(answer.getArray("cautions").getString(0)).contains("Not for navigation");
        JsonObject falling = asking.ask(with(TIDE, "tideDirection", "'falling'"));
        assertThat(falling.getArray("windows")).isNotEmpty();
        for (Object each : falling.getArray("windows")) {
            assertThat(((JsonObject) each).getString("water")).isEqualTo("falling");
            assertThat(((JsonObject) each).getArray("why").getString(0)).isEqualTo("falling water");
        }
    }

    /** High water between two passages of the same height: the ends alone would say that it stands still. */
    @Test
    void aReasonTellsTheWholeWay() {
        // 2 m + 1 m times a node factor of 0.963 to 1.037 (Schureman SP 98, table 14): high water at 3 m
        JsonObject high = asking.ask(TIDE).getArray("windows").getObject(1);
        assertThat(high.getArray("why").getString(0)).isEqualTo("water between 2.5 and 3 m");
        // from six degrees under to five over the horizon and back, every day: two windows, one way each
        JsonArray low = asking.ask(with(SUN_UP, "sunAltitude", "[-6,5]")).getArray("windows");
        assertThat(low.getObject(0).getArray("why").getString(0)).matches("sun −[56](\\.9)? to (5|4\\.9)° high");
        assertThat(low.getObject(1).getArray("why").getString(0)).matches("sun (5|4\\.9) to −[56](\\.9)?° high");
        JsonObject twilight = asking.ask(with(with(SUN_UP, "sunAltitude", ""), "twilight", "['civil','nautical']"))
                .getArray("windows")
                .getObject(0);
        assertThat(twilight.getArray("why").getString(0)).isEqualTo("civil twilight, nautical twilight");
        JsonObject unknown = only(asking.ask(with(with(SUN_UP, "sunAltitude", ""), "swellMetres", "[0,2]")));
        assertThat(unknown.getArray("why").getString(0)).isEqualTo("swell not known");
    }

    @Test
    void fallingWaterRanksBeforeRising() {
        JsonArray windows = asking.ask(with(with(TIDE, "tideMetres", "[2.2,2.8]"), "minMinutes", "10"))
                .getArray("windows");
        int lastFalling = 0;
        int firstRising = Integer.MAX_VALUE;
        for (Object each : windows) {
            JsonObject window = (JsonObject) each;
            if (window.getString("water").equals("falling")) {
                lastFalling = Math.max(lastFalling, window.getInt("rank"));
            } else {
                firstRising = Math.min(firstRising, window.getInt("rank"));
            }
        }
        assertThat(lastFalling).isPositive().isLessThan(firstRising);
    }

    @Test
    void whereTheWayBackIsCutOffRanksLast() {
        JsonObject asked = with(with(TIDE, "tideMetres", "[1.2,2.9]"), "guard", "{'feetMetres':2.6}");
        boolean cutOff = false;
        List<JsonObject> windows = asking.ask(asked).getArray("windows").stream()
                .map(JsonObject.class::cast)
                .sorted(Comparator.comparingInt(w -> w.getInt("rank")))
                .toList();
        // the water stands between 1 and 3 m; over 2.6 m less half a metre the way back is cut off
        for (JsonObject window : windows) {
            boolean now = window.getObject("guard").getString("verdict").equals("leave now");
            assertThat(now || !cutOff).isTrue();
            assertThat(now).isEqualTo(window.getArray("tideMetres").getDouble(0) >= 2.1);
            cutOff |= now;
        }
        assertThat(cutOff).isTrue();
        assertThat(windows.get(0).getObject("guard").getString("leaveBy")).isNotNull();
    }

    /** Stockdon et al. 2006, 0.043 √(H L₀): 3 m every 12 s, L₀ 224.75 m (deep-water dispersion), runs up 1.117 m. */
    @Test
    void theSwellOfTheForecastWidensTheMargin() {
        JsonObject asked = with(with(TIDE, "tideMetres", "[1.2,2.9]"), "guard", "{'feetMetres':4}");
        String rows = "[{'time':'2024-03-20T00:00:00Z','swellMetres':3,'swellSeconds':12},"
                + "{'time':'2024-03-20T12:00:00Z','swellMetres':3,'swellSeconds':12},"
                + "{'time':'2024-03-21T00:00:00Z','swellMetres':3,'swellSeconds':12},"
                + "{'time':'2024-03-21T12:00:00Z','swellMetres':3,'swellSeconds':12}]";
        JsonObject calm = asking.ask(asked).getArray("windows").getObject(0);
        JsonObject rough =
                asking.ask(with(asked, "weather", rows)).getArray("windows").getObject(0);
        assertThat(calm.getObject("guard").getDouble("marginMetres")).isEqualTo(0.5);
        assertThat(rough.getObject("guard").getDouble("marginMetres")).isCloseTo(1.117, within(0.002));
        // what is typed for the guard itself rules
        JsonObject typed = with(asked, "guard", "{'feetMetres':4,'swellMetres':1,'swellSeconds':8}");
        assertThat(asking.ask(with(typed, "weather", rows))
                        .getArray("windows")
                        .getObject(0)
                        .getObject("guard")
                        .getDouble("marginMetres"))
                .isEqualTo(0.5);
    }

    @Test
    void aStationFarAwayIsWarnedOf() {
        assertThat(asking.ask(TIDE).getArray("warnings").toString()).doesNotContain("km away");
        assertThat(asking.ask(with(TIDE, "at", "'51,0'")).getArray("warnings").toString())
                .contains("111 km away");
    }

    @Test
    void aWishThatNeverHoldsSaysWhichAndByHowMuch() {
        JsonObject answer = asking.ask(with(with(SUN_UP, "sunAltitude", "[60,90]"), "hours", "['06:00','18:00']"));
        assertThat(answer.getArray("windows")).isEmpty();
        JsonObject conflict = answer.getObject("conflict");
        assertThat(conflict.getString("wish")).isEqualTo("sunAltitude");
        // at the equinox the sun culminates at 90° − 51.48° plus a tenth: 21.4° short of 60°
        assertThat(conflict.getDouble("shortBy")).isCloseTo(21.5, within(0.4));
        assertThat(answer.getArray("ways").getString(0)).contains("sunAltitude");
    }

    @Test
    void wishesThatAreEachImpossibleSayByHowMuchTheyAre() {
        JsonObject answer = asking.ask(with(with(TIDE, "tideMetres", "[5,9]"), "sunAltitude", "[80,90]"));
        for (Object each : answer.getArray("shortfalls")) {
            assertThat(((JsonObject) each).isNumber("shortBy")).isTrue();
        }
        assertThat(answer.getArray("ways")).isEmpty();
    }

    @Test
    void whatIsNotForecastIsSaidToBeAssumed() {
        JsonObject asked = with(SUN_UP, "windMetresPerSecond", "[0,5]");
        assertThat(asking.ask(asked).getArray("assumed").toString()).contains("wind is not known");
        String rows = "[{'time':'2024-03-20T00:00:00Z','windMetresPerSecond':0},"
                + "{'time':'2024-03-20T12:00:00Z','windMetresPerSecond':10},"
                + "{'time':'2024-03-21T00:00:00Z','windMetresPerSecond':10}]";
        JsonObject forecast = asking.ask(with(with(asked, "weather", rows), "sunAltitude", ""));
        // halfway up a straight line from 0 to 10 m/s over twelve hours
        assertThat(only(forecast).getString("end")).isEqualTo("2024-03-20T06:00:00Z");
    }

    /** From north-west round by north to north-east; the wind stands north until it leaps to the south at noon. */
    @Test
    void windsFromTheNorthAreWishedOverNorth() {
        String rows = "[{'time':'2024-03-20T00:00:00Z','windFromDegrees':350},"
                + "{'time':'2024-03-20T12:00:00Z','windFromDegrees':180},"
                + "{'time':'2024-03-21T00:00:00Z','windFromDegrees':180}]";
        JsonObject wished = with(with(SUN_UP, "weather", rows), "windFromDegrees", "[315,45]");
        // the last whole minute before the leap
        assertThat(only(asking.ask(with(wished, "sunAltitude", ""))).getString("end"))
                .isEqualTo("2024-03-20T11:59:00Z");
    }

    @Test
    void theKitIsPackedForTheTimeWished() {
        JsonObject asked = with(with(SUN_UP, "hours", "['12:00','12:30']"), "exposure", "{'time':'2m'}");
        JsonObject packing =
                asking.ask(with(asked, "kit", "{'filters':['3','6','10']}")).getObject("packing");
        // noon under a clear sky, EV100 near 14: f/11 1/128 s; 2 min is 14 stops more
        assertThat(packing.getArray("filters").toString()).contains("10");
        assertThat(packing.getDouble("reachedFraction")).isEqualTo(1);
        JsonObject short1 = asking.ask(with(asked, "kit", "{'filters':['3']}")).getObject("packing");
        assertThat(short1.getObject("missing").getString("text")).contains("is missing");
    }

    @Test
    void aGuessIsMarkedAsOne() {
        JsonObject answer = asking.ask(json("{'schema':'guess/1','windMetresPerSecond':5,'layer':'low',"
                + "'view':{'azimuth':270,'focalMillimetres':24}}"));
        assertThat(answer.getString("mark")).contains("guess");
        // Stewart, Introduction to Physical Oceanography: 3.75 s in a fully grown sea of 5 m/s
        assertThat(answer.getObject("water").getDouble("periodSeconds")).isCloseTo(3.75, within(0.01));
        for (String part : new String[] {"water", "cloud"}) {
            for (Object each : answer.getObject(part).getArray("limits")) {
                JsonObject limit = (JsonObject) each;
                assertThat(limit.getDouble("low")).isLessThan(limit.getDouble("seconds"));
                assertThat(limit.getDouble("high")).isGreaterThan(limit.getDouble("seconds"));
            }
        }
        JsonObject still = asking.ask(json("{'schema':'guess/1','cloudBaseMetres':1000,'cloudWindMetresPerSecond':0,"
                + "'view':{'azimuth':270,'focalMillimetres':24}}"));
        assertThat(still.getObject("cloud").getArray("limits").getObject(0).getString("text"))
                .isEqualTo("sharp at any time");
        asking.refused(json("{'schema':'guess/1'}"), "windMetresPerSecond");
        asking.refused(json("{'schema':'guess/1','layer':'low'}"), "view");
        asking.refused(json("{'schema':'guess/1','windMetresPerSecond':90}"), "windMetresPerSecond");
        asking.refused(json("{'schema':'guess/1','swellSeconds':90}"), "swellSeconds");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "at | '95,0' | at",
                "from | '2024-02-30T00:00:00Z' | from",
                "to | '2024-03-20T00:00:00Z' | to",
                "to | '2074-03-20T00:00:00Z' | to",
                "sunAltitude |  | wishes",
                "sunAltitude | [5] | sunAltitude",
                "sunAltitude | [5,1] | sunAltitude",
                "sunAltitude | 'low' | sunAltitude",
                "sunAltitud | [0,5] | sunAltitud",
                "sunInFrame | false | sunInFrame",
                "sunInFrame | 'no' | sunInFrame",
                "tideMetres | [0,1] | tideMetres",
                "twilight | ['dusk'] | twilight",
                "days | ['someday'] | days",
                "days | [] | days",
                "hours | ['05:00'] | hours",
                "hours | ['05:00','25:00'] | hours",
                "hours | ['05:70','06:00'] | hours",
                "minMinutes | 0 | minMinutes",
                "setUpMinutes | -5 | setUpMinutes",
                "offsets | [['2024-03-20T00:00:00Z','five']] | offsets[0]",
                "exposure | {} | exposure.from",
                "exposure | {'from':'4m','to':'2m'} | exposure.to",
                "exposure | {'time':'2m','busySeconds':-1} | exposure.busySeconds",
                "weather | [{'cloudCover':0.5}] | weather[0].time",
                "weather | [{'time':'2024-03-20T00:00:00Z','cloudCover':5}] | weather[0].",
                "table | [['2024-03-20T01:00:00Z',5,'high'],['2024-03-20T07:00:00Z',6,'high']] | table"
            })
    void whatCannotBeUsedIsRefusedByName(String field, String value, String named) {
        asking.refused(with(SUN_UP, field, value == null ? "" : value), named);
    }
}
