package ebblight.app.report;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.report.AxisModel.Span;
import ebblight.core.exposure.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Makes the model of a time axis of the engine's answers. */
final class AxisReading {

    private static final List<String> ORDER = List.of("drifting", "swaying", "fixed", "flowing");
    private static final List<String> SMOOTHNESS = List.of("as seen", "softened", "silky", "mist", "glass");

    private AxisReading() {}

    /** The largest region of each kind that is found, those in the air first. */
    static List<JsonObject> rows(JsonObject measured) {
        List<JsonObject> rows = new ArrayList<>();
        for (String kind : ORDER) {
            for (Object one : measured.getArray("regions")) {
                if (one instanceof JsonObject region && region.getString("kind").equals(kind)) {
                    rows.add(region);
                    break;
                }
            }
        }
        return rows;
    }

    /**
     * The model.
     *
     * @param measured answer of {@code measure/1}
     * @param wished answer of {@code wish/1}
     * @param settings answer of {@code settings/1}
     * @param raised by region: how much the contrast of its strip was raised
     */
    static AxisModel of(
            JsonObject measured, JsonObject wished, JsonObject settings, double seconds, Map<String, Double> raised) {
        List<AxisModel.Part> parts = new ArrayList<>();
        for (JsonObject region : rows(measured)) {
            String id = region.getString("id");
            Optional<JsonObject> demand = demand(wished, id);
            String wish = demand.map(d -> d.getString("wish"))
                    .map(w -> w.substring(w.indexOf('=') + 1))
                    .orElse("");
            parts.add(new AxisModel.Part(
                    region.getString("kind"),
                    wish,
                    demand.map(d -> spans(d.getArray("likely"))).orElse(List.of()),
                    demand.map(d -> spans(d.getArray("sure"))).orElse(List.of()),
                    words(region),
                    left(region),
                    "strip-" + id,
                    raised.getOrDefault(id, 1.0)));
        }
        List<AxisModel.Window> windows = new ArrayList<>();
        for (Object one : wished.getArray("windows")) {
            if (one instanceof JsonObject w) {
                windows.add(new AxisModel.Window(
                        span(w), w.get("sure") instanceof JsonObject s ? Optional.of(span(s)) : Optional.empty()));
            }
        }
        double rate = measured.getDouble("fadingStopsPerMinute", 0);
        double fades = rate > 0 ? 60 / (rate * Math.log(2)) : Double.POSITIVE_INFINITY;
        return new AxisModel(seconds, parts, windows, clash(wished, measured), bag(settings), worth(wished), fades);
    }

    private static List<AxisModel.Worth> worth(JsonObject wished) {
        List<AxisModel.Worth> worth = new ArrayList<>();
        for (Object one : wished.getArray("worth")) {
            if (one instanceof JsonObject w) {
                worth.add(new AxisModel.Worth(
                        w.getDouble("seconds"), w.getDouble("changedFraction"), w.getDouble("separation")));
            }
        }
        return worth;
    }

    private static Optional<JsonObject> demand(JsonObject wished, String id) {
        for (Object one : wished.getArray("demands")) {
            if (one instanceof JsonObject d && id.equals(d.getString("region"))) {
                return Optional.of(d);
            }
        }
        return Optional.empty();
    }

    private static Span span(JsonObject span) {
        return new Span(
                span.getDouble("fromSeconds"),
                span.isNumber("toSeconds") ? span.getDouble("toSeconds") : Double.POSITIVE_INFINITY);
    }

    private static List<Span> spans(JsonArray array) {
        List<Span> spans = new ArrayList<>();
        for (int i = 0; i < array.size(); i++) {
            spans.add(span(array.getObject(i)));
        }
        return spans;
    }

    private static List<AxisModel.Left> left(JsonObject region) {
        List<AxisModel.Left> left = new ArrayList<>();
        for (Object one : region.getArray("left", new JsonArray())) {
            if (one instanceof JsonObject l) {
                left.add(new AxisModel.Left(l.getDouble("seconds"), l.getDouble("left")));
            }
        }
        return left;
    }

    private static Optional<Span> likely(JsonObject region, String word) {
        for (Object one : region.getArray("words")) {
            if (one instanceof JsonObject w
                    && w.getString("word").equals(word)
                    && !w.getArray("likely").isEmpty()) {
                return Optional.of(span(w.getArray("likely").getObject(0)));
            }
        }
        return Optional.empty();
    }

    /** Words of a part one after the other along the scale of time. */
    private static List<AxisModel.Word> words(JsonObject region) {
        record Begin(String word, double from) {}
        List<Begin> begins = new ArrayList<>();
        String kind = region.getString("kind");
        if (kind.equals("fixed")) {
            begins.add(new Begin("still", 0));
        } else if (kind.equals("drifting")) {
            begins.add(new Begin("sharp", 0));
            likely(region, "sharp").ifPresent(s -> begins.add(new Begin("softened", s.to())));
            likely(region, "streaked").ifPresent(s -> begins.add(new Begin("streaked", s.from())));
        } else {
            SMOOTHNESS.forEach(w -> likely(region, w).ifPresent(s -> begins.add(new Begin(w, s.from()))));
        }
        List<AxisModel.Word> words = new ArrayList<>();
        for (int i = 0; i < begins.size(); i++) {
            double to = i + 1 < begins.size() ? begins.get(i + 1).from() : Double.POSITIVE_INFINITY;
            if (to > begins.get(i).from()) {
                words.add(new AxisModel.Word(
                        begins.get(i).word(), new Span(begins.get(i).from(), to)));
            }
        }
        return words;
    }

    private static Optional<AxisModel.Clash> clash(JsonObject wished, JsonObject measured) {
        if (wished.get("conflict") instanceof JsonObject c && c.isNumber("longerSeconds") && c.isNumber("stops")) {
            return Optional.of(new AxisModel.Clash(
                    partOf(c.getArray("between").getString(0), measured),
                    partOf(c.getArray("between").getString(1), measured),
                    c.getDouble("shorterSeconds"),
                    c.getDouble("longerSeconds"),
                    c.getDouble("stops")));
        }
        return Optional.empty();
    }

    /** "Cloud" for a wish such as cloud=sharp or drifting-1=sharp. */
    private static String partOf(String wish, JsonObject measured) {
        String part = wish.substring(0, wish.indexOf('='));
        for (JsonObject region : rows(measured)) {
            if (region.getString("id").equals(part)) {
                return Marks.NAMES.getOrDefault(region.getString("kind"), part);
            }
        }
        return part.substring(0, 1).toUpperCase(Locale.ROOT) + part.substring(1);
    }

    private static List<AxisModel.Reach> bag(JsonObject settings) {
        List<AxisModel.Reach> bag = new ArrayList<>();
        for (Object one : settings.getArray("choices")) {
            if (one instanceof JsonObject c) {
                List<String> filters =
                        c.getArray("filters").stream().map(String::valueOf).toList();
                bag.add(new AxisModel.Reach(
                        c.getDouble("seconds"),
                        filters.isEmpty() ? "none" : String.join("+", filters),
                        "f/" + Numbers.shortest(c.getDouble("fNumber"), 2)));
            }
        }
        return bag;
    }

    /** A text of the engine with the names of regions made readable: "drifting-1 travels" to "cloud travels". */
    static String readable(String text) {
        String out = text;
        for (Map.Entry<String, String> name : Marks.NAMES.entrySet()) {
            out = out.replaceAll(
                            "\\b" + name.getKey() + "-1\\b", name.getValue().toLowerCase(Locale.ROOT))
                    .replaceAll(
                            "\\b" + name.getKey() + "-(\\d+)", name.getValue().toLowerCase(Locale.ROOT) + " $1");
        }
        return out.isEmpty() ? out : out.substring(0, 1).toUpperCase(Locale.ROOT) + out.substring(1);
    }
}
