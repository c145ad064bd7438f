package ebblight.core.wish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.motion.FlowLines;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a wish asks, worked by hand: water of {@link Part#water()} has 40 % · √(1/8 s / T) left, a stop more or less. The
 * picture is 480 × 360, its diagonal 600 pixels: 1/1500 of it is 0.4 pixels, a twentieth of the width 24.
 */
class DemandTest {

    private static Demand of(String wish, Part part) {
        return Demand.of(Wish.parse(wish), part.motion(), 480, 360);
    }

    private static void spans(List<Span> spans, double... ends) {
        assertThat(spans).hasSize(ends.length / 2);
        for (int k = 0; k < spans.size(); k++) {
            close(spans.get(k).fromSeconds(), ends[2 * k]);
            close(spans.get(k).toSeconds(), ends[2 * k + 1]);
        }
    }

    private static void close(double actual, double expected) {
        if (Double.isInfinite(expected)) {
            assertThat(actual).isEqualTo(expected);
        } else {
            assertThat(actual).isCloseTo(expected, within(1e-6 * expected + 1e-12));
        }
    }

    /** 1/8 s · (0.4/limit)²; for the whole likely range twice the texture, four times as long. */
    @ParameterizedTest
    @CsvSource({"softened, 0.888889", "silky, 8", "mist, 50", "glass, 200"})
    void waterIsSmoothFromATimeOn(String word, double seconds) {
        Demand demand = of("water=" + word, Part.water());
        spans(demand.likely(), seconds, Double.POSITIVE_INFINITY);
        spans(demand.sure(), 4 * seconds, Double.POSITIVE_INFINITY);
        assertThat(demand.note()).isEmpty();
        assertThat(demand.region()).isEqualTo("flowing-1");
    }

    /** Closed: silky ends where mist begins, surely so where the smoothest of the likely range does, a quarter of 50 s. */
    @Test
    void aClosedWishEndsWhereTheNextWordBegins() {
        Demand silky = of("water=silky!", Part.water());
        spans(silky.likely(), 8, 50);
        // surely smooth only from 32 s, surely not smoother only up to 12.5 s
        assertThat(silky.sure()).isEmpty();
        Demand softened = of("water=softened!", Part.water());
        spans(softened.likely(), 0.125 * 64 / 9, 8);
        assertThat(softened.sure()).isEmpty();
        spans(of("water=glass!", Part.water()).likely(), 200, Double.POSITIVE_INFINITY);
    }

    @Test
    void asSeenEndsWhereItSoftens() {
        Demand demand = of("water=as seen", Part.water());
        spans(demand.likely(), 0, 0.125 * 64 / 9);
        // for the low end of the range a quarter of that
        spans(demand.sure(), 0, 0.125 * 16 / 9);
    }

    /** A calm lake shows 10 % at the shortest time: nothing brings back more, and no time keeps it to a rougher word. */
    @Test
    void calmWaterCannotBeMadeRougher() {
        Part lake = Part.water().with(0.1, 0);
        Demand seen = of("water=as seen", lake);
        assertThat(seen.likely()).isEmpty();
        assertThat(seen.sure()).isEmpty();
        assertThat(seen.note()).contains("smoother than that at any time");
        assertThat(seen.smoothAlready()).isTrue();
        Part glass = Part.water().with(0.015, 0);
        assertThat(of("water=silky!", glass).likely()).isEmpty();
        assertThat(of("water=silky!", glass).smoothAlready()).isTrue();
        spans(of("water=silky", glass).likely(), 0, Double.POSITIVE_INFINITY);
        assertThat(of("water=silky", glass).smoothAlready()).isFalse();
    }

    /** Strands of a waterfall stay: √(change² + 3 %²) never falls to 2 %; silky (5 %) needs the change at 4 %: 12.5 s. */
    @Test
    void whatStandsIsNeverRemoved() {
        Part fall = Part.water().with(0.4, 0.03);
        Demand mist = of("water=mist", fall);
        assertThat(mist.likely()).isEmpty();
        assertThat(mist.note()).contains("(3 %)", "no time removes it");
        spans(of("water=silky", fall).likely(), 12.5, Double.POSITIVE_INFINITY);
        assertThat(Demand.left(fall.motion(), 0.1)).isCloseTo(0.05, within(1e-12));
    }

    /** Texture so strong that 1 % takes 1/8 s · (4/0.01)² = 20,000 s, more than four hours. */
    @Test
    void whatTakesMoreThanFourHoursIsNotPromised() {
        Demand demand = of("water=glass", Part.water().with(4, 0));
        assertThat(demand.likely()).isEmpty();
        assertThat(demand.note()).contains("four hours");
        // 2 % takes 5,000 s; over the whole range 20,000 s
        Demand mist = of("water=mist", Part.water().with(4, 0));
        spans(mist.likely(), 5000, Double.POSITIVE_INFINITY);
        assertThat(mist.sure()).isEmpty();
    }

    @Test
    void timesBeyondWhatTheClipTellsAreMarked() {
        assertThat(of("water=glass", Part.water().toldUpTo(100)).note()).contains("too short to tell");
        assertThat(of("water=silky", Part.water().toldUpTo(100)).note()).isEmpty();
    }

    /** At 2 pixels a second 0.4 pixels take 0.2 s and 24 pixels 12 s; the speed is known to a tenth. */
    @Test
    void cloudsAreSharpUpToATimeAndStreakedFromAnother() {
        Demand sharp = of("cloud=sharp", Part.cloud(2));
        spans(sharp.likely(), 0, 0.2);
        spans(sharp.sure(), 0, 0.2 / 1.1);
        Demand streaked = of("cloud=streaked", Part.cloud(2));
        spans(streaked.likely(), 12, Double.POSITIVE_INFINITY);
        spans(streaked.sure(), 12 * 1.1, Double.POSITIVE_INFINITY);
        Demand calm = of("cloud=streaked", Part.cloud(0));
        assertThat(calm.likely()).containsExactly(Span.ALL);
        assertThat(calm.sure()).isEmpty();
        assertThat(calm.note()).contains("nothing drifts");
    }

    /** A branch that goes 0.8 pixels a second goes 0.4 in half a second; surely in half of that. */
    @Test
    void aBranchIsSharpOrStillWhileItHasNotMoved() {
        spans(of("branch=sharp", Part.branch(0.4, 0.8)).likely(), 0, 0.5);
        spans(of("branch=sharp", Part.branch(0.4, 0.8)).sure(), 0, 0.25);
        // or so long that 2 % is left: 50 s, surely 200 s
        Demand still = of("branch=still", Part.branch(0.4, 0.8));
        spans(still.likely(), 0, 0.5, 50, Double.POSITIVE_INFINITY);
        spans(still.sure(), 0, 0.25, 200, Double.POSITIVE_INFINITY);
        assertThat(still.note()).isEmpty();
        // so fast that 1/8000 s blurs it, so strong that four hours do not smooth it
        Demand storm = of("branch=still", Part.branch(8, 8000));
        assertThat(storm.likely()).isEmpty();
        assertThat(storm.note()).contains("choose the frame of a lull");
        spans(of("branch=still", Part.branch(0.4, 8000)).likely(), 50, Double.POSITIVE_INFINITY);
        Demand slow = of("branch=still", Part.branch(4, 0.8));
        spans(slow.likely(), 0, 0.5, 5000, Double.POSITIVE_INFINITY);
        spans(slow.sure(), 0, 0.25);
    }

    @Test
    void whatDoesNotMoveAsksForNothing() {
        Demand calm = of("water=silky", Part.water().unseen());
        assertThat(calm.likely()).containsExactly(Span.ALL);
        assertThat(calm.sure()).isEmpty();
        assertThat(calm.note()).contains("nothing moves");
        assertThat(of("water=trails", Part.water().unseen()).note()).doesNotContain("nothing moves");
        assertThat(of("water=lines", Part.water().unseen()).note()).contains("no lines seen");
        Demand rock = of("rock=sharp", Part.rock());
        assertThat(rock.likely()).containsExactly(Span.ALL);
        assertThat(rock.sure()).containsExactly(Span.ALL);
    }

    /** Common practice: a quarter to one and a half seconds, released as the water runs back. */
    @Test
    void linesAreThoseSeenOrThoseOfCommonPractice() {
        Demand seen = of("water=lines", Part.water().with(new FlowLines(0.5, 0.3, 0.8), 7.26));
        spans(seen.likely(), 0.3, 0.8);
        assertThat(seen.note()).contains("strongest at 0.5 s", "runs back", "waves come every 7.3 s");
        Demand unseen = of("water=lines", Part.water());
        spans(unseen.likely(), 0.25, 1.5);
        assertThat(unseen.note()).contains("common practice", "runs back").doesNotContain("waves");
    }

    /** A veil of 20 % · 5 % = 1 % stays; with the change at √(2² − 1²) = 1.732 % it is 2 %: 1/8 s · (0.4/0.01732)². */
    @Test
    void passersByLeaveAVeil() {
        Demand gone = of("water=gone", Part.water().passed(0.2, 0.05));
        spans(gone.likely(), 0.125 * 0.16 / 3e-4, Double.POSITIVE_INFINITY);
        spans(gone.sure(), 0.5 * 0.16 / 3e-4, Double.POSITIVE_INFINITY);
        assertThat(gone.note()).contains("covered 20 % of the time");
        Demand crowd = of("water=gone", Part.water().passed(0.3, 0.5));
        assertThat(crowd.likely()).isEmpty();
        assertThat(crowd.note()).contains("30 %", "veil of 15 %", "median of a burst");
        assertThat(of("water=gone", Part.water().with(8, 0).passed(0.2, 0.05)).likely())
                .isEmpty();
    }

    @Test
    void trailsJoinOverSeveralPassages() {
        spans(of("water=trails", Part.water()).likely(), 4 * 0.5, Double.POSITIVE_INFINITY);
    }

    @Test
    void everyWordThatFitsHasItsDemand() {
        List<Demand> water = Demand.ofEveryWord(Part.water().motion(), 480, 360);
        assertThat(water)
                .extracting(d -> d.wish().word())
                .containsExactly(
                        Word.AS_SEEN,
                        Word.SOFTENED,
                        Word.SILKY,
                        Word.MIST,
                        Word.GLASS,
                        Word.LINES,
                        Word.SHARP,
                        Word.GONE,
                        Word.TRAILS);
        assertThat(water).allSatisfy(d -> assertThat(d.wish().part()).isEqualTo("flowing-1"));
        assertThat(Demand.ofEveryWord(Part.rock().motion(), 480, 360)).hasSize(2);
    }
}
