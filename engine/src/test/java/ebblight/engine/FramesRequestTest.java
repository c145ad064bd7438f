package ebblight.engine;

import static ebblight.engine.Asking.json;
import static ebblight.engine.Asking.with;
import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** {@code measure/1}, {@code wish/1}, {@code preview/1} and {@code balance/1} on made frames, field by field. */
class FramesRequestTest {

    private static final int WIDTH = 240;
    private static final int HEIGHT = 160;
    private static final int FRAMES = 30;
    private static final int CELL = 4;

    private static final Blobs BLOBS = frames();
    private final Asking asking = new Asking(BLOBS);

    private static JsonObject request(String schema) {
        return request(schema, 0.1);
    }

    private static JsonObject request(String schema, double gapSeconds) {
        StringBuilder times = new StringBuilder();
        for (int i = 0; i < FRAMES; i++) {
            times.append(i == 0 ? "" : ",").append(i * gapSeconds);
        }
        return json("{'schema':'" + schema + "','frames':{'blob':'made','coding':'srgb8','width':" + WIDTH
                + ",'height':" + HEIGHT + ",'timesSeconds':[" + times + "]}}");
    }

    /** A bright, plain sky over a dark ground of fixed pattern; between them ripples that renew themselves. */
    private static Blobs frames() {
        SplittableRandom dice = new SplittableRandom(5);
        Blobs blobs = new Blobs();
        int cells = WIDTH * HEIGHT / (CELL * CELL);
        double[] pattern = dice.doubles(cells).toArray();
        double[] ripple = new double[cells];
        for (int i = 0; i < FRAMES; i++) {
            byte[] frame = new byte[3 * WIDTH * HEIGHT];
            for (int c = 0; c < cells; c++) {
                ripple[c] = 0.7 * ripple[c] + 0.7 * (dice.nextDouble() - 0.5);
            }
            for (int p = 0; p < WIDTH * HEIGHT; p++) {
                int row = p / WIDTH;
                int cell = row / CELL * (WIDTH / CELL) + p % WIDTH / CELL;
                double v = row < 40 ? 200 : row < 100 ? 110 + 60 * ripple[cell] : 60 + 80 * pattern[cell];
                v += 2 * (dice.nextDouble() - 0.5);
                for (int c = 0; c < 3; c++) {
                    frame[3 * p + c] = (byte) Math.max(0, Math.min(255, Math.round(v)));
                }
            }
            blobs.put("made/" + i, frame);
        }
        return blobs;
    }

    @Test
    void measureHoldsTheFieldsOfTheContract() {
        JsonObject answer = asking.ask(with(request("measure/1"), "regionsBlob", "'map'"));
        assertThat(answer.getString("mode")).isEqualTo("clip");
        assertThat(answer.getInt("frames")).isEqualTo(FRAMES);
        assertThat(answer.getDouble("fps")).isBetween(9.99, 10.01);
        assertThat(answer.getInt("width")).isEqualTo(WIDTH);
        assertThat(answer.getInt("height")).isEqualTo(HEIGHT);
        assertThat(answer.getString("camera")).isIn("still", "corrected", "refused", "unsure");
        assertThat(answer.isNumber("cameraShiftPixels")).isTrue();
        assertThat(answer.get("warnings")).isInstanceOf(JsonArray.class);
        double area = 0;
        double before = 1;
        JsonArray regions = answer.getArray("regions");
        for (int k = 0; k < regions.size(); k++) {
            JsonObject region = regions.getObject(k);
            String kind = region.getString("kind");
            assertThat(kind).isIn("fixed", "flowing", "drifting", "swaying");
            assertThat(region.getString("id")).matches(kind + "-\\d+");
            for (String number : new String[] {"areaFraction", "texture", "standing", "confidence"}) {
                assertThat(region.isNumber(number)).as(number).isTrue();
            }
            assertThat(region.has("correlationSeconds")).isTrue();
            assertThat(region.has("driftPixelsPerSecond")).isTrue();
            assertThat(region.getDouble("areaFraction")).isLessThanOrEqualTo(before);
            before = region.getDouble("areaFraction");
            area += before;
            remaining(region, kind);
        }
        assertThat(area).isBetween(1 - 1e-9, 1 + 1e-9);
        byte[] map = BLOBS.get("map").orElseThrow();
        assertThat(map).hasSize(WIDTH * HEIGHT);
        for (byte part : map) {
            assertThat((int) part).isBetween(0, regions.size() - 1);
        }
    }

    private static void remaining(JsonObject region, String kind) {
        JsonArray remaining = region.getArray("remaining");
        if (kind.equals("fixed") || kind.equals("drifting")) {
            assertThat(remaining).isEmpty();
            return;
        }
        // whole stops from 1/8 s, and 960 s
        assertThat(remaining.getObject(0).getDouble("seconds")).isEqualTo(0.125);
        assertThat(remaining.getObject(remaining.size() - 1).getDouble("seconds"))
                .isEqualTo(960);
        double last = Double.POSITIVE_INFINITY;
        for (int i = 0; i < remaining.size(); i++) {
            JsonObject at = remaining.getObject(i);
            assertThat(at.getDouble("ratio")).isBetween(0.0, 1.0).isLessThanOrEqualTo(last + 1e-9);
            assertThat(at.getDouble("low")).isLessThanOrEqualTo(at.getDouble("ratio"));
            assertThat(at.getDouble("high")).isGreaterThanOrEqualTo(at.getDouble("ratio"));
            last = at.getDouble("ratio");
        }
    }

    @Test
    void strokesNameTheirParts() {
        JsonObject drawn = with(
                request("measure/1"),
                "strokes",
                "{'schema':'strokes/1','strokes':[{'kind':'flowing','points':[[0.1,0.5],[0.9,0.5]]},"
                        + "{'kind':'fixed','points':[[0.1,0.9],[0.9,0.9]]},{'kind':'fixed','points':[[0.1,0.1],[0.9,0.1]]}]}");
        // 60 of 160 rows ripple
        assertThat(flowing(asking.ask(drawn))).isBetween(0.3, 0.45);
        asking.refused(with(drawn, "strokes.schema", "'lines/2'"), "strokes.schema");
        asking.refused(with(drawn, "strokes.strokes", "[{'kind':'wet','points':[[0,0]]}]"), "strokes.strokes[0].kind");
        asking.refused(
                with(drawn, "strokes.strokes", "[{'kind':'fixed','points':[[0,2]]}]"), "strokes.strokes[0].points");
        asking.refused(
                with(drawn, "strokes.strokes", "[{'kind':'fixed','points':[[0]]}]"), "strokes.strokes[0].points");
        asking.refused(with(drawn, "strokes.strokes", "[{'kind':'fixed'}]"), "strokes.strokes[0].points");
    }

    @Test
    void wishAndMeasureSayTheSameOfSpacedFrames() {
        JsonObject spaced = with(
                with(request("measure/1", 12), "frames.medianGapSeconds", "12"),
                "strokes",
                "{'schema':'strokes/1','strokes':[{'kind':'flowing','points':[[0.1,0.5],[0.9,0.5]]}]}");
        JsonObject measured = asking.ask(spaced);
        assertThat(measured.getString("mode")).isEqualTo("spaced");
        // common practice: a clip's remedy, more of the same rate, is none for frames taken over minutes
        assertThat(measured.getArray("warnings")).isNotEmpty().noneMatch(w -> w.toString()
                .contains("film 20 s"));
        assertThat(asking.ask(with(with(spaced, "schema", "'wish/1'"), "wishes", "['water=silky']"))
                        .getArray("warnings"))
                .isEqualTo(measured.getArray("warnings"));
    }

    @Test
    void wishHoldsTheFieldsOfTheContract() {
        JsonObject request = with(
                with(request("wish/1"), "wishes", "['water=silky']"),
                "strokes",
                "{'schema':'strokes/1','strokes':[{'kind':'flowing','points':[[0.1,0.5],[0.9,0.5]]}]}");
        JsonObject answer = asking.ask(request);
        for (Object each : answer.getArray("windows")) {
            JsonObject window = (JsonObject) each;
            assertThat(window.getDouble("fromSeconds")).isPositive();
            assertThat(window.has("toSeconds")).isTrue();
            assertThat(window.has("sure")).isTrue();
        }
        assertThat(answer.getArray("windows").isEmpty()).isEqualTo(!answer.isNull("conflict"));
        JsonArray worth = answer.getArray("worth");
        assertThat(worth).isNotEmpty();
        for (Object each : worth) {
            JsonObject at = (JsonObject) each;
            assertThat(at.getDouble("seconds")).isPositive();
            assertThat(at.getDouble("changedFraction")).isBetween(0.0, 1.0);
            assertThat(at.has("separation")).isTrue();
            assertThat(at.has("colour")).isTrue();
        }
        assertThat(asking.refused(with(request, "wishes", "['water=wet']"), "wish"))
                .contains("wet");
        assertThat(asking.refused(with(request, "wishes", "['moon=sharp']"), "wish"))
                .contains("moon");
        asking.refused(with(request, "wishes", "['water']"), "wish");
        asking.refused(with(request, "wishes", "'water=silky'"), "wishes");
    }

    @Test
    void wishesThatClashNameThreeWaysOut() {
        String strokes = "{'schema':'strokes/1','strokes':[{'kind':'flowing','points':[[0.1,0.5],[0.9,0.5]]}]}";
        String water = asking.ask(with(request("measure/1"), "strokes", strokes)).getArray("regions").stream()
                .map(r -> ((JsonObject) r).getString("id"))
                .filter(id -> id.startsWith("flowing"))
                .findFirst()
                .orElseThrow();
        JsonObject answer = asking.ask(with(
                with(request("wish/1"), "wishes", "['water=glass','" + water + "=as seen!']"), "strokes", strokes));
        assertThat(answer.getArray("windows")).isEmpty();
        assertThat(answer.getObject("conflict").getArray("ways").size()).isGreaterThanOrEqualTo(3);
    }

    @Test
    void previewHoldsTheFieldsOfTheContract() {
        JsonObject request = with(with(request("preview/1"), "time", "'1s'"), "pictureBlob", "'picture'");
        JsonObject answer = asking.ask(request);
        assertThat(answer.getDouble("seconds")).isEqualTo(1);
        assertThat(answer.getString("method")).isNotBlank();
        assertThat(answer.getDouble("knownFraction")).isBetween(0.0, 1.0);
        int samples = 3 * answer.getInt("width") * answer.getInt("height");
        assertThat(BLOBS.get("picture").orElseThrow()).hasSize(4 * samples);
        asking.refused(with(request, "time", ""), "time");
        asking.refused(with(request, "time", "'-1s'"), "time");
    }

    @Test
    void balanceHoldsTheFieldsOfTheContract() {
        JsonObject request = request("balance/1");
        JsonObject answer = asking.ask(request);
        // sRGB codes 200, 110 and about 75: the line may part the picture at either step, the sky is the brighter side
        assertThat(answer.getDouble("stops")).isPositive();
        for (String field : new String[] {"x", "y", "angleDegrees", "softness"}) {
            assertThat(answer.getObject("transition").isNumber(field)).as(field).isTrue();
        }
        assertThat(answer.getDouble("clippedFraction")).isZero();
        assertThat(answer.getArray("choices")).isNotEmpty();
        asking.refused(with(request, "graduatedStops", "[9]"), "graduatedStops");
        asking.refused(with(request, "graduatedStops", "['two']"), "graduatedStops[0]");
    }

    /** What a stroke changes must not depend on whether the frames were surveyed before without it. */
    @Test
    void aStrokeOverSurveyedFramesPartsThemAsIfItHadBeenThereFromTheStart() {
        String strokes = "{'strokes':[{'kind':'fixed','points':[[0.1,0.4],[0.9,0.5]]}]}";
        JsonObject drawn = with(with(request("measure/1"), "strokes", strokes), "regionsBlob", "'drawn'");
        new Asking(BLOBS).ask(drawn);
        byte[] fromTheStart = BLOBS.get("drawn").orElseThrow();
        Asking later = new Asking(BLOBS);
        JsonObject plain = later.ask(with(request("parts/1"), "regionsBlob", "'plain'"));
        JsonObject parts = later.ask(with(with(request("parts/1"), "strokes", strokes), "regionsBlob", "'drawn'"));
        assertThat(BLOBS.get("drawn").orElseThrow())
                .isEqualTo(fromTheStart)
                .isNotEqualTo(BLOBS.get("plain").orElseThrow());
        assertThat(flowing(parts)).isLessThan(flowing(plain));
        assertThat(later.ask(drawn).toString())
                .isEqualTo(new Asking(BLOBS).ask(drawn).toString());
    }

    /** A page may hand in the next clip under the name of the one before. */
    @Test
    void otherFramesUnderTheSameNameAreMeasuredAnew() {
        Blobs blobs = frames();
        Asking again = new Asking(blobs);
        double before = flowing(again.ask(request("measure/1")));
        for (int i = 1; i < FRAMES; i++) {
            blobs.put("made/" + i, blobs.get("made/0").orElseThrow().clone());
        }
        assertThat(before).isPositive();
        assertThat(flowing(again.ask(request("measure/1")))).isZero();
    }

    private static double flowing(JsonObject answer) {
        double flowing = 0;
        for (Object each : answer.getArray("regions")) {
            JsonObject region = (JsonObject) each;
            flowing += region.getString("kind").equals("flowing") ? region.getDouble("areaFraction") : 0;
        }
        return flowing;
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "frames | ~~ | frames",
                "frames | 'made' | frames",
                "frames.blob | ~~ | frames.blob",
                "frames.blob | 'none' | frames.blob",
                "frames.coding | 'png' | frames.coding",
                "frames.width | 0 | frames",
                "frames.width | 241 | frames",
                "frames.width | 'wide' | frames.width",
                "frames.timesSeconds | [0] | frames",
                "frames.timesSeconds | [] | frames",
                "frames.timesSeconds | [0,'x'] | frames.timesSeconds[1]",
                "frames.timesSeconds | [1,0] | frames",
                "frames.exposureSeconds | [1,2] | frames.exposureSeconds",
                "frames.sourceWidth | -640 | frames.sourceWidth",
                "frames.sourceFps | -10 | frames.sourceFps",
                "frames.wholeWidth | 0 | frames.wholeWidth",
                "frames.medianGapSeconds | -1 | frames.medianGapSeconds",
            })
    void framesAreRefusedByName(String field, String value, String named) {
        asking.refused(with(request("measure/1"), field, value), named);
    }
}
