package ebblight.checks;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.card.Role;
import ebblight.core.numeric.Work;
import ebblight.demo.Card;
import ebblight.demo.Filter;
import ebblight.demo.Flaws;
import ebblight.demo.Shot;
import ebblight.imaging.card.CardSorter;
import ebblight.imaging.card.SortedCard;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Cards drawn by lot from the demo, whose groups, filters, mishaps, dust and hot pixels are known: the demo itself is
 * the source of every expected value.
 */
class SortReferenceTest {

    private static final int CARDS = 4;
    /** Asked of the sorting: of ten groups nine begin with the best frame. */
    private static final double BEST_FIRST = 0.9;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private int groups;
    private int bestFirst;

    @Test
    void groupsAreRightAndTheBestFrameComesFirst() throws Exception {
        MixedCard demo = new MixedCard();
        for (int seed = 1; seed <= CARDS; seed++) {
            List<Shot> shots = Card.mixed(seed);
            Path card = Files.createDirectory(folder.resolve("card" + seed));
            demo.write(card, shots);
            SortedCard sorted = CardSorter.sort(card, Work.alone());
            assertThat(sorted.skipped()).isEmpty();
            assertThat(names(sorted)).isEqualTo(expected(shots));
            for (SortedCard.Group group : sorted.groups()) {
                judge(group, byName(shots));
            }
            dust(sorted, demo.card().flaws());
        }
        System.out.printf("best frame first in %d of %d groups%n", bestFirst, groups);
        assertThat(bestFirst).isGreaterThanOrEqualTo((int) Math.ceil(BEST_FIRST * groups));
    }

    private static Set<Set<String>> names(SortedCard sorted) {
        return sorted.groups().stream()
                .map(g -> g.frames().stream().map(f -> name(f.file())).collect(Collectors.toSet()))
                .collect(Collectors.toSet());
    }

    private static Set<Set<String>> expected(List<Shot> shots) {
        Map<Shot.Composition, Set<String>> groups = new HashMap<>();
        shots.forEach(s ->
                groups.computeIfAbsent(s.composition(), k -> new HashSet<>()).add(s.name()));
        return new HashSet<>(groups.values());
    }

    private static Map<String, Shot> byName(List<Shot> shots) {
        return shots.stream().collect(Collectors.toMap(Shot::name, s -> s));
    }

    private static String name(Path file) {
        return file.getFileName().toString().replace(".jpg", "");
    }

    private void judge(SortedCard.Group group, Map<String, Shot> truth) {
        groups++;
        double longest = group.frames().stream()
                .map(f -> truth.get(name(f.file())))
                .filter(s -> s != null && s.note() == Shot.Note.GOOD)
                .mapToDouble(Shot::exposureSeconds)
                .max()
                .orElseThrow();
        for (SortedCard.Frame frame : group.frames()) {
            Shot shot = Objects.requireNonNull(truth.get(name(frame.file())), "every frame is in the answers");
            boolean best = shot.note() == Shot.Note.GOOD && shot.exposureSeconds() == longest;
            bestFirst += frame.rank() == 1 && best ? 1 : 0;
            double stops = shot.filter().map(Filter::trueStops).orElse(0.0);
            assertThat(frame.filterStops()).as(shot.toString()).isBetween(stops - 0.35, stops + 0.35);
            assertThat(frame.role()).as(shot.toString()).isEqualTo(stops == 0 ? Role.TEST : Role.FILTERED);
            String notes = String.join("; ", frame.notes());
            boolean soft = notes.contains("all over the picture");
            assertThat(soft).as(shot + ": " + notes).isEqualTo(shot.note() == Shot.Note.SHAKEN);
            assertThat(notes.contains("stops brighter"))
                    .as(shot + ": " + notes)
                    .isEqualTo(shot.note() == Shot.Note.MIS_SET);
        }
    }

    /** Every spot told is one of the demo's, and most of the demo's are told. */
    private static void dust(SortedCard sorted, Flaws flaws) {
        int found = 0;
        for (SortedCard.DustSpot spot : sorted.dust()) {
            boolean known = flaws.spots().stream()
                    .anyMatch(s -> Math.hypot(s.x() - spot.x(), (s.y() - spot.y()) * 2 / 3) < 0.015);
            assertThat(known).as(spot.toString()).isTrue();
            found++;
        }
        assertThat(found).isGreaterThanOrEqualTo(flaws.spots().size() / 2);
    }
}
