package ebblight.app.card;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.card.Slate;
import ebblight.core.numeric.Quantiles;
import ebblight.imaging.card.SortedCard;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.temporal.ChronoField;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the slates on a card say of its frames: which filters each had, and how wrong the camera's clock was. */
public final class SlatedCard {

    /** A slate speaks of the frames that follow, but not of those of another half day (common practice). */
    private static final double LONGEST_SECONDS = 6 * 3600;

    private final List<Shown> slates = new ArrayList<>();

    private record Shown(Slate slate, double cameraSeconds) {}

    /** Gathers the slates of a card. */
    public SlatedCard(SortedCard card) {
        for (SortedCard.Group group : card.groups()) {
            for (SortedCard.Frame frame : group.frames()) {
                Optional<Slate> slate = SlateText.read(frame.slateText());
                OptionalDouble at = cameraSeconds(frame);
                if (slate.isPresent() && at.isPresent()) {
                    slates.add(new Shown(slate.get(), at.getAsDouble()));
                }
            }
        }
        slates.sort(Comparator.comparingDouble(Shown::cameraSeconds));
    }

    /** The camera's wall clock read as if it were UTC. */
    private static OptionalDouble cameraSeconds(SortedCard.Frame frame) {
        return frame.facts()
                .taken()
                .map(t -> OptionalDouble.of(t.toEpochSecond(ZoneOffset.UTC) + t.get(ChronoField.NANO_OF_SECOND) * 1e-9))
                .orElseGet(OptionalDouble::empty);
    }

    /** The slate that was shown last before a frame. */
    Optional<Slate> over(SortedCard.Frame frame) {
        return shownBefore(frame).map(Shown::slate);
    }

    private Optional<Shown> shownBefore(SortedCard.Frame frame) {
        OptionalDouble at = cameraSeconds(frame);
        if (at.isEmpty()) {
            return Optional.empty();
        }
        return slates.stream()
                .filter(s ->
                        s.cameraSeconds <= at.getAsDouble() && at.getAsDouble() - s.cameraSeconds < LONGEST_SECONDS)
                .reduce((a, b) -> b);
    }

    /** Seconds by which the camera's clock is ahead of the wall's, by all slates; empty without any. */
    private OptionalDouble aheadSeconds() {
        double[] ahead = slates.stream()
                .mapToDouble(s -> s.slate.cameraAheadSeconds(s.cameraSeconds))
                .toArray();
        return ahead.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(Quantiles.median(ahead, ahead.length));
    }

    /** Adds the clock to a document, and to each of its frames what its slate says. */
    void describe(JsonObject document) {
        JsonObject clock = null;
        if (aheadSeconds().isPresent()) {
            clock = new JsonObject();
            clock.put("cameraAheadSeconds", aheadSeconds().getAsDouble());
            clock.put("slates", slates.size());
        }
        document.put("clock", clock);
    }

    /** Adds to a frame's document what the slate before it says. */
    void describe(JsonObject document, SortedCard.Frame frame) {
        Optional<Shown> shown = shownBefore(frame);
        JsonObject said = null;
        if (shown.isPresent()) {
            Slate slate = shown.get().slate;
            double taken = slate.trueSeconds(cameraSeconds(frame).orElse(Double.NaN), shown.get().cameraSeconds);
            said = new JsonObject();
            said.put("view", slate.view().isEmpty() ? null : slate.view());
            said.put("filters", new JsonArray(slate.filters()));
            said.put("wish", new JsonArray(slate.wish()));
            said.put("taken", Instant.ofEpochMilli(Math.round(1000 * taken)).toString());
        }
        document.put("slate", said);
    }
}
