package ebblight.app.card;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.kit.KitStore;
import ebblight.app.kit.MeasuredFilter;
import ebblight.app.memory.Calibrations;
import ebblight.core.card.Measured;
import ebblight.core.card.Slate;
import ebblight.core.exposure.Filter;
import ebblight.core.exposure.FilterCheck;
import ebblight.core.exposure.FilterPair;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.card.FilterFrames;
import ebblight.imaging.card.SortedCard;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.TreeMap;

/** Filters checked by the pairs of a card whose slates say which filter was on. */
public final class LearnedFilters {

    /** Pairs of one filter that are read; more hardly narrow the range. */
    private static final int MOST_PAIRS = 8;
    /** The slate is believed where arithmetic finds about as many stops. */
    private static final double AGREES_STOPS = 1;

    private static final double MOST_CLIPPED = 0.05;
    private static final double LEAST_SHARPNESS = 0.7;

    private final Map<String, Learned> learned = new TreeMap<>();

    /** Pairs of one filter. */
    private static final class Learned {
        private final List<FilterPair> pairs = new ArrayList<>();
        private final List<Path> frames = new ArrayList<>();
        private final FilterFrames reader = new FilterFrames();
    }

    /** Reads the pairs of {@code card} again at full size. */
    public LearnedFilters(SortedCard card, SlatedCard slated, Work work) {
        for (SortedCard.Group group : card.groups()) {
            for (SortedCard.Pair pair : group.pairs()) {
                work.check();
                SortedCard.Frame with = frame(group, pair.with());
                SortedCard.Frame without = frame(group, pair.without());
                Optional<String> filter = slated.over(with)
                        .map(Slate::filters)
                        .filter(f -> f.size() == 1)
                        .map(f -> f.get(0));
                boolean clear =
                        slated.over(without).map(s -> s.filters().isEmpty()).orElse(true);
                if (filter.isPresent() && clear && sound(with) && sound(without) && agrees(filter.get(), pair)) {
                    work.progress(0.5, "checking filters");
                    add(filter.get(), pair, clearAfter(group, with));
                }
            }
        }
    }

    private static SortedCard.Frame frame(SortedCard.Group group, Path file) {
        return group.frames().stream()
                .filter(f -> f.file().equals(file))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(file + " is not in its group"));
    }

    private static boolean sound(SortedCard.Frame frame) {
        boolean soft = frame.measured()
                .map(Measured::fixedSharpness)
                .filter(s -> s < LEAST_SHARPNESS)
                .isPresent();
        return !soft && frame.clippedFraction() < MOST_CLIPPED;
    }

    private static boolean agrees(String filter, SortedCard.Pair pair) {
        try {
            return Math.abs(Filter.parse(filter).stops() - pair.filterStops()) < AGREES_STOPS;
        } catch (IllegalArgumentException e) {
            return false;
        }
    }

    /** A frame without filter that was taken after {@code with}, to tell how the light changed. */
    private static Optional<Path> clearAfter(SortedCard.Group group, SortedCard.Frame with) {
        return group.frames().stream()
                .filter(f -> f.filterStops() < 0.5
                        && sound(f)
                        && f.facts().taken().isPresent()
                        && with.facts().taken().isPresent()
                        && f.facts().taken().get().isAfter(with.facts().taken().get()))
                .map(SortedCard.Frame::file)
                .findFirst();
    }

    private void add(String filter, SortedCard.Pair pair, Optional<Path> after) {
        Learned known = learned.computeIfAbsent(filter, k -> new Learned());
        if (known.pairs.size() < MOST_PAIRS) {
            try {
                known.pairs.add(known.reader.pair(pair.without(), pair.with(), after, OptionalDouble.empty()));
                known.frames.add(pair.without());
                known.frames.add(pair.with());
            } catch (UnreadableInputException e) {
                // a pair that shares too little; the others serve
            }
        }
    }

    /** One {@code filter-check/1} for each filter, with its name on the slates. */
    public JsonArray documents() {
        JsonArray documents = new JsonArray();
        learned.forEach((filter, known) -> {
            if (!known.pairs.isEmpty()) {
                JsonObject one = new JsonObject();
                one.put("filter", filter);
                one.putAll(FilterDocument.of(known.frames, FilterCheck.of(known.pairs), known.reader.warnings()));
                documents.add(one);
            }
        });
        return documents;
    }

    /** Keeps the results in the kit; says of each whether the kit knows such a filter. */
    public JsonArray keep(KitStore store, Path data) throws IOException {
        JsonObject kit = store.read();
        JsonArray kept = new JsonArray();
        for (Map.Entry<String, Learned> each : learned.entrySet()) {
            if (!each.getValue().pairs.isEmpty()) {
                try {
                    JsonObject row = MeasuredFilter.find(kit, each.getKey());
                    FilterCheck check = FilterCheck.of(each.getValue().pairs);
                    String day = FilterDocument.dateOf(each.getValue().frames.get(1));
                    MeasuredFilter.put(row, check, day);
                    Calibrations.add(data, row, check, day);
                    kept.add(each.getKey());
                } catch (RequestException e) {
                    // a filter of another's bag: it stands in the answer only
                }
            }
        }
        store.write(kit);
        return kept;
    }
}
