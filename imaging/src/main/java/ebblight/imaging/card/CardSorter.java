package ebblight.imaging.card;

import ebblight.core.card.Role;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Sorts a card: reads it once, groups by time and view, measures each group, ranks. Nothing on it is changed. */
public final class CardSorter {

    private CardSorter() {}

    /** Sorts the pictures in {@code folder} and below. */
    public static SortedCard sort(Path folder, Work work) throws IOException {
        return sorted(CardReader.read(folder, work), work);
    }

    /** Sorts the pictures right in {@code folder} that are wanted, and none in the folders below. */
    public static SortedCard sortLoose(Path folder, Predicate<Path> wanted, Work work) throws IOException {
        return sorted(CardReader.read(folder, CardFiles.in(folder, 1, wanted), work), work);
    }

    private static SortedCard sorted(CardReader card, Work work) {
        List<Views.Group> groups = Views.of(card.frames(), work);
        HotPixels hot = HotPixels.of(groups);
        SortedCard.Group[] sorted = new SortedCard.Group[groups.size()];
        work.progress(0, "measuring views");
        work.forEach(sorted.length, k -> {
            Views.Group group = groups.get(k);
            sorted[k] = group.kind() == Views.Kind.VIEW
                    ? new MeasuredView(group.frames(), hot).sorted()
                    : unranked(group, hot);
        });
        return new SortedCard(List.of(sorted), DustFinder.find(groups, work), card.skipped());
    }

    /** Darks and slates: in order of time, with nothing to choose between. */
    private static SortedCard.Group unranked(Views.Group group, HotPixels hot) {
        boolean dark = group.kind() == Views.Kind.DARKS;
        List<SortedCard.Frame> frames = new ArrayList<>();
        for (CardFrame frame : group.frames()) {
            int found = hot.count(frame);
            List<String> notes = !dark
                    ? List.of("a slate: no picture")
                    : List.of("a dark frame: " + found + (found == 1 ? " hot pixel" : " hot pixels"));
            frames.add(new SortedCard.Frame(
                    frame.file(),
                    frame.companions(),
                    frame.facts(),
                    frames.size() + 1,
                    false,
                    dark ? Role.DARK : Role.SLATE,
                    Double.NaN,
                    0,
                    Optional.empty(),
                    found,
                    frame.clippedFraction(),
                    notes,
                    frame.slateText()));
        }
        return new SortedCard.Group(
                dark ? SortedCard.Kind.DARKS : SortedCard.Kind.SLATE, List.copyOf(frames), List.of());
    }
}
