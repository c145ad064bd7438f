package ebblight.core.wish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Windows and clashes of wishes whose times are worked by hand in {@link DemandTest}. */
class WishesTest {

    private static Wishes weigh(List<Part> parts, String... wishes) {
        return Wishes.of(
                Stream.of(wishes).map(Wish::parse).toList(),
                new Wishes.Picture(parts.stream().map(Part::motion).toList(), 480, 360));
    }

    private static void close(double actual, double expected) {
        assertThat(actual).isCloseTo(expected, within(1e-6 * expected));
    }

    /** Silky from 8 s, the cloud sharp up to 16 s at 1/40 of a pixel a second: a stop lies between. */
    @Test
    void theWindowIsWhereAllHold() {
        Wishes wishes = weigh(List.of(Part.water(), Part.cloud(0.025)), "water=silky", "cloud=sharp");
        assertThat(wishes.clash()).isEmpty();
        assertThat(wishes.windows()).hasSize(1);
        Window window = wishes.windows().get(0);
        close(window.likely().fromSeconds(), 8);
        close(window.likely().toSeconds(), 16);
        // surely silky from 32 s only
        assertThat(window.sure()).isEmpty();
        assertThat(wishes.demands()).extracting(Demand::region).containsExactly("flowing-1", "drifting-1");
    }

    @Test
    void theSurePartLiesInsideTheWindow() {
        Wishes wishes = weigh(List.of(Part.water(), Part.cloud(0.0025)), "water=silky", "cloud=sharp");
        Window window = wishes.windows().get(0);
        close(window.likely().fromSeconds(), 8);
        close(window.likely().toSeconds(), 160);
        close(window.sure().orElseThrow().fromSeconds(), 32);
        close(window.sure().orElseThrow().toSeconds(), 160 / 1.1);
    }

    /** A branch is still up to 0.5 s and again from 50 s: two windows, each with its sure part. */
    @Test
    void twoWindowsWhereABranchIsStillShortAndLong() {
        Wishes wishes = weigh(List.of(Part.branch(0.4, 0.8)), "branch=still");
        assertThat(wishes.windows()).hasSize(2);
        close(wishes.windows().get(0).sure().orElseThrow().toSeconds(), 0.25);
        close(wishes.windows().get(1).sure().orElseThrow().fromSeconds(), 200);
    }

    /** Silky from 8 s, the cloud sharp up to 1/2 s: four stops apart, 2 s between, 16 frames of 1/2 s. */
    @Test
    void aClashIsToldInStopsWithWaysOut() {
        Wishes wishes = weigh(List.of(Part.water(), Part.cloud(0.8)), "water=silky", "cloud=sharp");
        assertThat(wishes.windows()).isEmpty();
        Clash clash = wishes.clash().orElseThrow();
        assertThat(clash.first().region()).isEqualTo("drifting-1");
        assertThat(clash.second().region()).isEqualTo("flowing-1");
        assertThat(clash.stops()).isCloseTo(4, within(1e-6));
        close(clash.shorterSeconds(), 0.5);
        close(clash.longerSeconds(), 8);
        assertThat(clash.ways()).extracting(Clash.Way::kind).containsExactly("between", "blend", "burst");
        Clash.Way between = clash.ways().get(0);
        close(between.seconds().get(0), 2);
        // 0.8 px/s · 2 s of 480 px: 0.3 %; water 40 % · √(1/16) = 10 %
        assertThat(between.words())
                .contains("2 s", "drifting-1 travels 0.3 % of the width", "flowing-1 softened (10 % left)");
        assertThat(clash.ways().get(1).words()).contains("0.5 s for drifting-1", "8 s for flowing-1");
        assertThat(clash.ways().get(1).frames()).isEqualTo(2);
        Clash.Way burst = clash.ways().get(2);
        assertThat(burst.frames()).isEqualTo(16);
        // common practice: a RAW file of about 30 MB
        assertThat(burst.words()).contains("16 frames of 0.5 s over 8 s", "500 MB");
    }

    /** Of several clashes the widest is told: mist (50 s) lies farther from 1/2 s than silky (8 s). */
    @Test
    void theWidestClashIsTold() {
        Clash clash = weigh(
                        List.of(Part.water(), Part.water().numbered(2), Part.cloud(0.8)),
                        "water=mist",
                        "flowing-2=silky",
                        "cloud=sharp")
                .clash()
                .orElseThrow();
        assertThat(clash.second().wish().word()).isEqualTo(Word.MIST);
        assertThat(clash.stops()).isCloseTo(Math.log(100) / Math.log(2), within(1e-6));
    }

    /**
     * The branch is still up to 0.5 s or from 50 s, softened water begins at 0.889 s, the cloud is sharp up to 16 s: any two
     * go together, all three do not. What is told is the narrowest step for two of them while the third is kept.
     */
    @Test
    void threeWishesCanClashOfWhichAnyTwoGoTogether() {
        List<Part> parts = List.of(Part.branch(0.4, 0.8), Part.water(), Part.cloud(0.025));
        assertThat(weigh(parts, "branch=still", "water=softened").windows()).isNotEmpty();
        assertThat(weigh(parts, "branch=still", "cloud=sharp").windows()).isNotEmpty();
        assertThat(weigh(parts, "water=softened", "cloud=sharp").windows()).isNotEmpty();
        Clash clash = weigh(parts, "branch=still", "water=softened", "cloud=sharp")
                .clash()
                .orElseThrow();
        assertThat(clash.stops()).isPositive().isFinite();
        assertThat(clash.ways()).hasSize(3);
        assertThat(clash.longerSeconds()).isGreaterThan(clash.shorterSeconds());
    }

    /** Water with strands of 3 % is never mist; the nearest is the longest time, and a calm lake's the shortest. */
    @Test
    void aWishThatNeverHoldsIsToldWithTheNearest() {
        Clash never = weigh(List.of(Part.water().with(0.4, 0.03)), "water=mist")
                .clash()
                .orElseThrow();
        assertThat(never.first()).isEqualTo(never.second());
        assertThat(never.stops()).isInfinite();
        assertThat(never.shorterSeconds()).isZero();
        assertThat(never.longerSeconds()).isInfinite();
        assertThat(never.ways()).extracting(Clash.Way::kind).containsExactly("relax", "nearest", "measure");
        assertThat(never.ways().get(0).words()).startsWith("relax water=mist: what stands in it");
        assertThat(never.ways().get(1).seconds()).containsExactly(960.0);
        assertThat(never.ways().get(1).words()).contains("16 min flowing-1 silky");
        Clash calm = weigh(List.of(Part.water().with(0.1, 0)), "water=as seen")
                .clash()
                .orElseThrow();
        assertThat(calm.ways().get(1).seconds()).containsExactly(0.125);
        assertThat(calm.ways().get(1).words()).contains("1/8 flowing-1 softened (10 % left)");
        Clash storm =
                weigh(List.of(Part.branch(8, 8000)), "branch=still").clash().orElseThrow();
        assertThat(storm.ways().get(1).seconds()).containsExactly(0.125);
    }

    @Test
    void partsThatStayAreSaidToStay() {
        Wishes.Picture picture =
                new Wishes.Picture(List.of(Part.rock().motion(), Part.water().motion()), 480, 360);
        assertThat(Wishes.becomes("fixed-1", 8, picture)).isEqualTo("fixed-1 stays");
        assertThat(Wishes.becomes("flowing-1", 8, picture)).isEqualTo("flowing-1 silky (5 % left)");
        assertThat(Wishes.becomes("other-1", 8, picture)).isEqualTo("other-1");
    }

    @Test
    void wishesForWhatIsNotThereAreRefused() {
        assertThatThrownBy(() -> weigh(List.of(Part.water(), Part.rock()), "cloud=sharp"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("about nothing")
                .hasMessageContaining("flowing-1, fixed-1");
        assertThatThrownBy(() -> weigh(List.of(Part.water()), "flowing-1=still"))
                .hasMessageContaining("\"still\" is no wish for flowing-1")
                .hasMessageContaining("silky");
    }

    @Test
    void noWishLeavesAllTimes() {
        List<Window> windows = weigh(List.of(Part.water())).windows();
        assertThat(windows).extracting(Window::likely).containsExactly(Span.ALL);
        assertThat(windows.get(0).sure()).contains(Span.ALL);
    }
}
