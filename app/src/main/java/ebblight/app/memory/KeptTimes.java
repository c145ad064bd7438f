package ebblight.app.memory;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.core.numeric.MedianRange;
import ebblight.core.numeric.ShareRange;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;

/**
 * Which shutter times the photographer keeps: by the verdicts of the log, and by the marks beside the frames. Marks that
 * the program wrote itself do not count; where a card was marked, its frames without a mark were not kept.
 */
final class KeptTimes {

    private static final int KEPT_RATING = 4;

    private final Map<Long, int[]> byStop = new TreeMap<>();
    private final List<Double> kept = new ArrayList<>();

    private KeptTimes() {}

    static void put(JsonObject document, List<JsonObject> outings) {
        KeptTimes times = new KeptTimes();
        outings.forEach(times::addOuting);
        JsonArray listed = new JsonArray();
        times.byStop.forEach((stop, counts) -> listed.add(row(Math.pow(2, stop), counts[1], counts[0])));
        document.put("times", listed);
        MedianRange.of(times.kept.stream().mapToDouble(Double::doubleValue).toArray())
                .ifPresentOrElse(
                        range -> {
                            document.put("keptSeconds", range.median());
                            document.put("keptSecondsLow", range.low());
                            document.put("keptSecondsHigh", range.high());
                        },
                        () -> document.put("keptSeconds", null));
        document.put("kept", times.kept.size());
    }

    private void addOuting(JsonObject outing) {
        Set<String> judged = new HashSet<>();
        for (JsonObject entry : Asked.rows(outing.getArray("entries", new JsonArray()))) {
            String verdict = entry.getString("verdict", "");
            if (!verdict.isEmpty()) {
                add(entry.getDouble("openSeconds", 0), verdict.equals("keep"));
                judged.add(entry.getString("file", ""));
            }
        }
        List<JsonObject> frames = Asked.rows(outing.getArray("frames", new JsonArray()));
        boolean marked = frames.stream().anyMatch(KeptTimes::marked);
        for (JsonObject frame : frames) {
            String file = frame.getString("file");
            String role = frame.getString("role", "");
            boolean picture = role.equals("filtered") || role.equals("variant");
            if (marked && picture && !judged.contains(file.substring(file.lastIndexOf('/') + 1))) {
                add(frame.getDouble("exposureSeconds", 0), marked(frame) && frame.getInt("rating") >= KEPT_RATING);
            }
        }
    }

    private static boolean marked(JsonObject frame) {
        return frame.isNumber("rating")
                && frame.getInt("rating") != 0
                && frame.getInt("rating") != frame.getInt("suggestedRating", 0);
    }

    private void add(double seconds, boolean keep) {
        if (seconds > 0) {
            int[] counts = byStop.computeIfAbsent(Math.round(Math.log(seconds) / Math.log(2)), k -> new int[2]);
            counts[0]++;
            if (keep) {
                counts[1]++;
                kept.add(seconds);
            }
        }
    }

    private static JsonObject row(double seconds, int kept, int taken) {
        JsonObject one = new JsonObject();
        ShareRange share = ShareRange.of(kept, taken);
        boolean enough = taken >= MedianRange.FEWEST;
        one.put("seconds", seconds);
        one.put("taken", taken);
        one.put("kept", kept);
        one.put("share", enough ? share.share() : null);
        one.put("low", enough ? share.low() : null);
        one.put("high", enough ? share.high() : null);
        one.put("words", enough ? "kept " + words(share) : Outcomes.tooFew(taken));
        return one;
    }

    static String words(ShareRange share) {
        return String.format(
                Locale.ROOT,
                "%d of %d (%.0f to %.0f %%)",
                Math.round(share.share() * share.count()),
                share.count(),
                100 * share.low(),
                100 * share.high());
    }
}
