package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class SwayRimsTest {

    private static final String[] TREE = {
        "cccccccc", //
        "cc~yy~cc",
        "cc~yy~cc",
        "########",
        "~~~~~~~~",
    };

    /**
     * Ten frames, eight at 0.5 and two at 0.9; noise of 0.01, so the limit is 0.03. Rests 0.8 of the time. Normal light of the
     * same Σd² = 2 · 0.16 would: u² = 0.0009 · 10/0.32 = 0.028125, √(1 − exp(−2 · 0.028125/π)) = √0.0177456 = 0.133213.
     */
    @Test
    void leavesBeforeAnEvenSkyRest() {
        float[] rest = rest((x, y, t) -> x == 0 && (t == 3 || t == 7) ? 0.9 : 0.5);
        assertThat(rest[0]).isCloseTo(0.666787f, within(1e-3f));
    }

    /** Light that never changes rests all the time, and a normal one of no variance does so too. */
    @Test
    void stillPlacesRestNoMoreThanTheyWould() {
        assertThat(rest((x, y, t) -> 0.5)[3]).isCloseTo(0, within(1e-6f));
    }

    /** A place between two lights, five frames each, is never at its median: 0 less what a normal one would. */
    @Test
    void aPlaceThatIsAlwaysElsewhereNeverRests() {
        float[] rest = rest((x, y, t) -> x == 0 && t % 2 > 0 ? 0.9 : 0.5);
        assertThat(rest[0]).isNegative();
    }

    @Test
    void restingRimsOfATreeSway() {
        SoftRegions soft = Drawing.regions(4, TREE);
        float[] rest = new float[32 * 20];
        Arrays.fill(rest, 0.8f);
        SoftRegions rims = SwayRims.apply(soft, rest);
        assertThat(row(rims, 6)).isEqualTo("ccyyyycc");
        assertThat(row(rims, 18)).isEqualTo("~~~~~~~~"); // touches no tree
        assertThat(row(rims, 2)).isEqualTo("cccccccc");
        assertThat(row(soft, 6)).isEqualTo("cc~yy~cc");
    }

    @Test
    void waterBesideATreeFlowsOn() {
        SoftRegions soft = Drawing.regions(4, TREE);
        assertThat(SwayRims.apply(soft, new float[32 * 20]).labels()).isEqualTo(soft.labels());
    }

    /** A lake whose border meets the tree along 4 of 48 px is no rim, calm as it may be. */
    @Test
    void whatHardlyTouchesTheTreeIsNoRim() {
        SoftRegions soft = Drawing.regions(4, "y#######", "~~~~~~~~", "########");
        float[] rest = new float[32 * 12];
        Arrays.fill(rest, 0.8f);
        assertThat(SwayRims.apply(soft, rest).labels()).isEqualTo(soft.labels());
    }

    private static float[] rest(Plain.Scene scene) {
        LuminanceFrames frames = Plain.frames(32, 32, 10, 1, scene);
        return SwayRims.rest(frames, frames.median(Work.alone()), new NoiseModel(0, 1e-4), Work.alone());
    }

    private static String row(SoftRegions regions, int y) {
        StringBuilder letters = new StringBuilder();
        for (int x = 0; x < regions.width(); x += 4) {
            letters.append("#c~y".charAt(regions.labels()[y * regions.width() + x]));
        }
        return letters.toString();
    }
}
