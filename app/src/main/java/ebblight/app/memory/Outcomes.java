package ebblight.app.memory;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.Words;
import ebblight.core.numeric.MedianRange;
import ebblight.core.numeric.ShareRange;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What the memory adds up to, as {@code outcomes/1}: how far off predictions were, and which times were kept. */
public final class Outcomes {

    private Outcomes() {}

    /** Of {@code memory/1}. */
    public static JsonObject of(JsonObject memory) {
        List<JsonObject> outings = Asked.rows(memory.getArray("outings"));
        JsonObject document = new JsonObject();
        document.put("schema", "outcomes/1");
        document.put("fewest", MedianRange.FEWEST);
        document.put("outings", outings.size());
        document.put("measurements", rows(outings, "measurements").size());
        document.put("frames", rows(outings, "frames").size());
        document.put("results", rows(outings, "results").size());
        document.put("predictions", predictions(rows(outings, "results")));
        KeptTimes.put(document, outings);
        document.put("filters", filters(memory));
        return document;
    }

    private static List<JsonObject> rows(List<JsonObject> outings, String list) {
        List<JsonObject> rows = new ArrayList<>();
        outings.forEach(o -> rows.addAll(Asked.rows(o.getArray(list, new JsonArray()))));
        return rows;
    }

    /** One picture's parts of one kind. */
    private static final class Seen {
        private double logs;
        private int parts;
        private boolean within = true;

        void add(JsonObject outcome) {
            double cameOut = Math.max(1e-6, outcome.getDouble("cameOut"));
            logs += Math.log(cameOut / Math.max(1e-6, outcome.getDouble("predicted")));
            parts++;
            within &= cameOut >= outcome.getDouble("low", 0) && cameOut <= outcome.getDouble("high", 1);
        }
    }

    /** Per kind of water and wind; the parts of one picture count once, for they saw the same minute. */
    private static JsonArray predictions(List<JsonObject> results) {
        Map<List<String>, List<Seen>> groups =
                new TreeMap<>((a, b) -> a.toString().compareTo(b.toString()));
        for (JsonObject result : results) {
            Map<List<String>, Seen> here = new LinkedHashMap<>();
            for (JsonObject outcome : Asked.rows(result.getArray("outcomes"))) {
                String water = outcome.getString("water", "");
                here.computeIfAbsent(
                                List.of(
                                        water.isEmpty() ? Waters.FOLIAGE : water,
                                        Waters.wind(outcome.get("windMetresPerSecond"))),
                                k -> new Seen())
                        .add(outcome);
            }
            here.forEach((k, seen) ->
                    groups.computeIfAbsent(k, g -> new ArrayList<>()).add(seen));
        }
        JsonArray listed = new JsonArray();
        groups.forEach((key, seen) -> listed.add(group(key, seen)));
        return listed;
    }

    private static JsonObject group(List<String> key, List<Seen> seen) {
        JsonObject one = new JsonObject();
        one.put("of", key.get(0));
        one.put("wind", key.get(1));
        one.put("pictures", seen.size());
        Optional<MedianRange> off = MedianRange.of(
                seen.stream().mapToDouble(s -> Math.expm1(s.logs / s.parts)).toArray());
        one.put("off", off.map(MedianRange::median).orElse(null));
        one.put("offLow", off.map(MedianRange::low).orElse(null));
        one.put("offHigh", off.map(MedianRange::high).orElse(null));
        Optional<ShareRange> within = off.map(
                o -> ShareRange.of((int) seen.stream().filter(s -> s.within).count(), seen.size()));
        one.put("within", within.map(ShareRange::share).orElse(null));
        one.put("withinLow", within.map(ShareRange::low).orElse(null));
        one.put("withinHigh", within.map(ShareRange::high).orElse(null));
        one.put(
                "words",
                off.isEmpty() || within.isEmpty()
                        ? tooFew(seen.size())
                        : words(off.get()) + "; inside the likely range " + KeptTimes.words(within.get()));
        return one;
    }

    static String tooFew(int count) {
        return "too few to say (" + count + " of at least " + MedianRange.FEWEST + ")";
    }

    private static String words(MedianRange off) {
        String size = Words.percent(Math.abs(off.median()));
        String how = Math.abs(off.median()) < 0.005
                ? "as predicted"
                : size + (off.median() > 0 ? " more left than predicted" : " less left than predicted");
        return String.format(java.util.Locale.ROOT, "%s (%+.0f to %+.0f %%)", how, 100 * off.low(), 100 * off.high());
    }

    /** Each filter's last density, and how far its checks lie apart. */
    private static JsonArray filters(JsonObject memory) {
        Map<String, List<JsonObject>> byFilter = new TreeMap<>();
        for (JsonObject each : Asked.rows(memory.getArray("calibrations", new JsonArray()))) {
            byFilter.computeIfAbsent(each.getString("filter"), k -> new ArrayList<>())
                    .add(each);
        }
        JsonArray listed = new JsonArray();
        byFilter.forEach((filter, checks) -> {
            JsonObject last = checks.get(checks.size() - 1);
            JsonObject one = new JsonObject();
            one.put("filter", filter);
            one.put("checks", checks.size());
            one.put("stops", last.get("stops"));
            one.put("low", last.get("low"));
            one.put("high", last.get("high"));
            one.put("measuredOn", last.getString("measuredOn"));
            one.put(
                    "spreadStops",
                    checks.stream().mapToDouble(c -> c.getDouble("stops")).max().orElse(0)
                            - checks.stream()
                                    .mapToDouble(c -> c.getDouble("stops"))
                                    .min()
                                    .orElse(0));
            listed.add(one);
        });
        return listed;
    }
}
