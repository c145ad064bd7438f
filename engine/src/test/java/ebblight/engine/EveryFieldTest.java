package ebblight.engine;

import static ebblight.engine.Asking.json;
import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Every field of every request, taken away and replaced by what does not belong there: there is an answer of finite
 * numbers, or one sentence that begins with the field.
 */
class EveryFieldTest {

    private static final String[] WRONG = {
        "", "null", "true", "'x'", "''", "[]", "{}", "['x']", "[{}]", "[[]]", "0", "-1", "0.5", "1e-30", "1e9", "-1e9",
        "1e300"
    };

    private static final int WIDTH = 64;
    private static final int HEIGHT = 48;
    private static final int FRAMES = 8;

    private final Asking asking = new Asking(frames());

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{'schema':'settings/1','meter':'f/16 1/100 ISO100','time':'30s','filters':['6','10','pol'],"
                        + "'measured':['10=10.3'],'maxStack':2,'biasStops':1,'fadingStopsPerMinute':0.1,"
                        + "'reciprocityExponent':1.3,'nearestMetres':1,'farthestMetres':50,'camera':{"
                        + "'widestFNumber':2.8,'narrowestFNumber':22,'lowestIso':50,'highestIso':6400,'baseIso':100,"
                        + "'timedLimitSeconds':32,'sharpestFrom':5.6,'sharpestTo':11,'darkFrame':true,"
                        + "'sensorWidthMillimetres':36,'sensorHeightMillimetres':24,'focalMillimetres':24,"
                        + "'opticalFinder':true}}",
                "{'schema':'settings/1','exposureValue100':14,'from':'2s','to':'30s','filters':['10']}",
                "{'schema':'light/1','readings':[{'meter':'f/8 1/60 ISO100','atSeconds':0},"
                        + "{'meter':'f/8 1/30 ISO100','atSeconds':300}],'openAtSeconds':420}",
                "{'schema':'light/1','readings':[{'meter':'f/8 1/60 ISO100','atSeconds':0}],'openAtSeconds':420,"
                        + "'stopsPerMinute':0.2}",
                "{'schema':'sky/1','at':'51.4779,0','elevationMetres':10,'time':'2024-03-20T12:00:00Z',"
                        + "'cloud':'thin','meter':{'reading':'f/8 1/60 ISO100','time':'2024-03-20T11:00:00Z'},"
                        + "'skylineDegrees':1,'windMetresPerSecond':5,'view':{'azimuth':180,'altitude':5,"
                        + "'focalMillimetres':24,'sensorMillimetres':[36,24]},"
                        + "'exposure':{'seconds':30,'fNumber':11,'iso':100,'filterStops':6,'openSeconds':31}}",
                "{'schema':'sky/1','at':'51.4779,0','from':'2024-03-20T00:00:00Z','to':'2024-03-20T03:00:00Z',"
                        + "'everySeconds':3600}",
                "{'schema':'tide/1','station':{'id':'one','name':'one','country':'none','latitude':50,'longitude':0,"
                        + "'datum':'MSL','meanMetres':2,'harmonics':[['M2',1,0]],'source':'s','licence':'l'},"
                        + "'at':'50,1','elevationMetres':1,'from':'2024-03-20T00:00:00Z','to':'2024-03-21T00:00:00Z',"
                        + "'everySeconds':3600,'between':{'metres':[1,2],'direction':'rising'},"
                        + "'guard':{'now':'2024-03-20T06:00:00Z','feetMetres':2,'wayBackMetres':2.5,"
                        + "'marginMetres':0.5,'swellMetres':1,'swellSeconds':8,'exposureSeconds':60,"
                        + "'busySeconds':60,'packingSeconds':180}}",
                "{'schema':'tide/1','table':[['2024-03-20T00:00:00Z',1,'low'],['2024-03-20T06:10:00Z',4,'high'],"
                        + "['2024-03-20T12:20:00Z',1,'low']],'datum':'CD','from':'2024-03-20T01:00:00Z',"
                        + "'to':'2024-03-20T11:00:00Z','guard':{'now':'2024-03-20T02:00:00Z',"
                        + "'atFeet':'2024-03-20T03:00:00Z'}}",
            })
    void isAnsweredOrRefusedByName(String request) {
        tryEvery(json(request));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "'schema':'balance/1','graduatedStops':[1,2],'clippedFraction':0.1",
                "'schema':'measure/1','regionsBlob':'map'",
                "'schema':'wish/1','wishes':['water=silky']",
                "'schema':'preview/1','time':'1s','pictureBlob':'picture','detailBlob':'detail','meanBlob':'mean'",
            })
    void framesAreAnsweredOrRefusedByName(String request) {
        tryEvery(json("{" + request + ",'frames':{'blob':'made','coding':'srgb8','width':64,"
                + "'height':48,'sourceWidth':640,'sourceHeight':480,'wholeWidth':64,'sourceFrames':8,'sourceFps':10,"
                + "'medianGapSeconds':0.1,'timesSeconds':[0,0.1,0.2,0.3,0.4,0.5,0.6,0.7],"
                + "'exposureSeconds':[0.01,0.01,0.01,0.01,0.01,0.01,0.01,0.01]},"
                + "'strokes':{'schema':'strokes/1','strokes':[{'kind':'flowing','points':[[0.1,0.5],[0.9,0.5]]}]}}"));
    }

    private void tryEvery(JsonObject request) {
        asking.ask(request);
        List<String> wrong = new ArrayList<>();
        for (List<Object> path : paths(request, List.of())) {
            for (String value : WRONG) {
                JsonObject changed = replaced(request, path, value);
                try {
                    asking.ask(changed);
                } catch (RequestException refusal) {
                    String words = String.valueOf(refusal.getMessage());
                    if (!(gone(value) ? words.indexOf(':') > 0 : named(words, path))
                            || words.contains("\n")
                            || words.contains("Exception")) {
                        wrong.add(path + " = " + value + " → " + words);
                    }
                } catch (RuntimeException | AssertionError | OutOfMemoryError e) {
                    wrong.add(path + " = " + value + " → " + e);
                }
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** Without a field another one may be missed, such as a meter reading where the exposure value was taken away. */
    private static boolean gone(String value) {
        return value.isEmpty() || value.equals("null") || value.equals("[]");
    }

    /** Whether a sentence begins with the field, with what holds it, or with one beside it. */
    private static boolean named(String words, List<Object> path) {
        String field = words.substring(0, Math.max(0, words.indexOf(':')));
        StringBuilder text = new StringBuilder();
        boolean any = false;
        for (Object step : path) {
            text.append(step instanceof Integer ? "[" + step + "]" : (text.isEmpty() ? "" : ".") + step);
            any |= field.contentEquals(text);
        }
        any |= field.startsWith(text.toString());
        any |= field.equals("wish"); // other frames or strokes may hold no part that it could be for
        any |= path.equals(List.of("nearestMetres")) && field.equals("farthestMetres"); // either may be the wrong one
        String holder = text.toString();
        holder = holder.contains(".") ? holder.substring(0, holder.lastIndexOf('.') + 1) : "";
        return any || (!holder.isEmpty() && field.startsWith(holder));
    }

    /** The way to every value of a document, containers too. */
    private static List<List<Object>> paths(@Nullable Object value, List<Object> to) {
        List<List<Object>> all = new ArrayList<>();
        if (!to.isEmpty()) {
            all.add(to);
        }
        if (value instanceof JsonObject object) {
            object.forEach((name, each) -> all.addAll(paths(each, with(to, name))));
        } else if (value instanceof JsonArray array) {
            for (int i = 0; i < Math.min(2, array.size()); i++) {
                all.addAll(paths(array.get(i), with(to, i)));
            }
        }
        return all;
    }

    private static List<Object> with(List<Object> path, Object step) {
        List<Object> longer = new ArrayList<>(path);
        longer.add(step);
        return longer;
    }

    private static JsonObject replaced(JsonObject request, List<Object> path, String value) {
        JsonObject copy = json(JsonWriter.string(request));
        replace(copy, path, value);
        return copy;
    }

    private static void replace(@Nullable Object holder, List<Object> path, String value) {
        Object step = path.get(0);
        if (path.size() > 1) {
            Object inside = holder instanceof JsonArray array
                    ? array.get((Integer) step)
                    : holder instanceof JsonObject object ? object.get(step) : null;
            replace(inside, path.subList(1, path.size()), value);
            return;
        }
        Object wrong = value.isEmpty() ? null : json("{'v':" + value + "}").get("v");
        if (holder instanceof JsonArray array) {
            array.set((Integer) step, wrong);
        } else if (holder instanceof JsonObject object) {
            object.put((String) step, wrong);
            if (value.isEmpty()) {
                object.remove(step);
            }
        }
    }

    private static Blobs frames() {
        Blobs blobs = new Blobs();
        for (int i = 0; i < FRAMES; i++) {
            byte[] frame = new byte[3 * WIDTH * HEIGHT];
            for (int p = 0; p < frame.length; p++) {
                int pixel = p / 3;
                int y = pixel / WIDTH;
                frame[p] = (byte) (y < HEIGHT / 3 ? 190 : 60 + 50 * Math.sin(pixel % WIDTH / 3.0 + y) + 5 * (i % 3));
            }
            blobs.put("made/" + i, frame);
        }
        return blobs;
    }
}
