package ebblight.app.card;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.card.Measured;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.Skipped;
import ebblight.imaging.card.SortedCard;
import java.nio.file.Path;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** A sorted card as {@code sort/1}; what is not known is null. */
public final class SortDocument {

    /** Raised when a card would be sorted differently. */
    public static final String VERSION = "2";

    private SortDocument() {}

    /** The document; files are named as they lie under {@code folder}. */
    public static JsonObject of(Path folder, SortedCard card, SlatedCard slated) {
        JsonObject document = new JsonObject();
        document.put("schema", "sort/1");
        document.put("folder", folder.toString());
        JsonArray groups = new JsonArray();
        for (SortedCard.Group group : card.groups()) {
            groups.add(group(folder, group, slated));
        }
        document.put("groups", groups);
        slated.describe(document);
        JsonArray dust = new JsonArray();
        for (SortedCard.DustSpot spot : card.dust()) {
            JsonObject one = new JsonObject();
            one.put("x", rounded(spot.x(), 4));
            one.put("y", rounded(spot.y(), 4));
            one.put("radius", rounded(spot.radius(), 4));
            one.put("stops", rounded(spot.stops(), 2));
            one.put("views", spot.views());
            dust.add(one);
        }
        document.put("dust", dust);
        JsonArray skipped = new JsonArray();
        for (Skipped each : card.skipped()) {
            JsonObject one = new JsonObject();
            one.put("file", name(folder, each.file()));
            one.put("reason", each.reason());
            skipped.add(one);
        }
        document.put("skipped", skipped);
        return document;
    }

    private static JsonObject group(Path folder, SortedCard.Group group, SlatedCard slated) {
        JsonArray frames = new JsonArray();
        for (SortedCard.Frame frame : group.frames()) {
            JsonObject one = frame(folder, frame);
            slated.describe(one, frame);
            frames.add(one);
        }
        JsonArray pairs = new JsonArray();
        for (SortedCard.Pair pair : group.pairs()) {
            JsonObject one = new JsonObject();
            one.put("without", name(folder, pair.without()));
            one.put("with", name(folder, pair.with()));
            one.put("filterStops", rounded(pair.filterStops(), 1));
            pairs.add(one);
        }
        JsonObject one = new JsonObject();
        one.put("kind", group.kind().name().toLowerCase(Locale.ROOT));
        one.put("frames", frames);
        one.put("pairs", pairs);
        return one;
    }

    private static JsonObject frame(Path folder, SortedCard.Frame frame) {
        JsonObject one = new JsonObject();
        one.put("file", name(folder, frame.file()));
        JsonArray companions = new JsonArray();
        frame.companions().forEach(c -> companions.add(name(folder, c)));
        one.put("companions", companions);
        one.put("rank", frame.rank());
        one.put("nearBest", frame.nearBest());
        one.put("role", frame.role().word());
        one.put("burst", frame.burst() == 0 ? null : frame.burst());
        one.put("filterStops", rounded(frame.filterStops(), 1));
        one.put("fixedSharpness", rounded(of(frame, Measured::fixedSharpness), 3));
        one.put("smoothness", rounded(of(frame, Measured::smoothness), 3));
        one.put("clippedFraction", rounded(frame.clippedFraction(), 5));
        one.put("hotPixels", frame.hotPixels());
        one.put("levelStops", rounded(of(frame, Measured::levelStops), 2));
        one.put("veilStops", rounded(of(frame, Measured::veilStops), 2));
        one.put("tiltDegrees", rounded(of(frame, Measured::tiltDegrees), 2));
        facts(one, frame.facts());
        one.put("notes", new JsonArray(frame.notes()));
        return one;
    }

    private static void facts(JsonObject one, FrameFacts facts) {
        one.put("taken", facts.taken().map(Object::toString).orElse(null));
        one.put("exposureSeconds", value(facts.exposureSeconds()));
        one.put("fNumber", value(facts.fNumber()));
        one.put("iso", value(facts.isoSpeed()));
        one.put("focalMillimetres", value(facts.focalMillimetres()));
    }

    private static double of(SortedCard.Frame frame, ToDoubleFunction<Measured> which) {
        return frame.measured().map(which::applyAsDouble).orElse(Double.NaN);
    }

    private static @Nullable Object value(OptionalDouble value) {
        return value.isPresent() ? value.getAsDouble() : null;
    }

    private static @Nullable Object rounded(double value, int decimals) {
        double scale = Math.pow(10, decimals);
        return Double.isFinite(value) ? Math.rint(value * scale) / scale + 0.0 : null;
    }

    private static String name(Path folder, Path file) {
        return file.startsWith(folder) ? folder.relativize(file).toString() : file.toString();
    }
}
