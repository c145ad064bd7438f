package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** A drawn coast: a still strip under the horizon, moving water, a still beach. */
class FarWaterTest {

    private static final int SCALE = 2;
    private static final String[] COAST = {
        "cccccccccc", //
        "cccccccccc",
        "cccccccccc",
        "cccccccccc",
        "##########",
        "##########",
        "~~~~~~~~~~",
        "~~~~~~~~~~",
        "##########",
        "##########",
    };
    private static final int WIDTH = 20;
    private static final Horizon LINE = new Horizon(7.5, 7.5);

    @Test
    void theStripUnderTheHorizonIsWaterTheBeachIsNone() {
        SoftRegions cut = apply(even(), new float[WIDTH * WIDTH]);
        assertThat(column(cut, 5)).isEqualTo("ccccccccwwwwwwww####".replace('w', '~'));
    }

    /** An island that differs from its row by a half: within three pixels of it the row does not look alike. */
    @Test
    void whatStandsOutStands() {
        float[] median = even();
        for (int y = 8; y < 12; y++) {
            median[y * WIDTH + 10] = 0.45f;
        }
        SoftRegions cut = apply(median, new float[WIDTH * WIDTH]);
        assertThat(row(cut, 9)).isEqualTo("~~~~~~~#######~~~~~~");
    }

    @Test
    void darkerWaterFartherDownIsWaterToo() {
        float[] median = even();
        Arrays.fill(median, 10 * WIDTH, 12 * WIDTH, 0.1f);
        assertThat(column(apply(median, new float[WIDTH * WIDTH]), 5)).startsWith("cccccccc~~~~");
    }

    @Test
    void whatWasDrawnByHandStays() {
        float[] lifted = new float[WIDTH * WIDTH];
        for (int y = 8; y < 12; y++) {
            lifted[y * WIDTH + 3] = 6;
        }
        SoftRegions cut = apply(even(), lifted);
        assertThat(row(cut, 9)).isEqualTo("~~~#~~~~~~~~~~~~~~~~");
    }

    @Test
    void aStripFarBelowTheHorizonIsASandbank() {
        SoftRegions regions = Drawing.regions(SCALE, COAST);
        SoftRegions cut =
                FarWater.apply(regions, new Horizon(3, 3), even(), new float[WIDTH * WIDTH], new float[WIDTH * WIDTH]);
        assertThat(cut.labels()).isEqualTo(regions.labels());
    }

    private static SoftRegions apply(float[] median, float[] lifted) {
        SoftRegions regions = Drawing.regions(SCALE, COAST);
        byte[] before = regions.labels();
        SoftRegions cut = FarWater.apply(regions, LINE, median, lifted, new float[WIDTH * WIDTH]);
        assertThat(regions.labels()).isEqualTo(before);
        for (int p = 0; p < before.length; p++) {
            float sum = 0;
            for (float[] share : cut.all()) {
                sum += share[p];
            }
            assertThat(sum).isEqualTo(1);
        }
        return cut;
    }

    private static float[] even() {
        float[] median = new float[WIDTH * WIDTH];
        Arrays.fill(median, 0.3f);
        return median;
    }

    private static String column(SoftRegions regions, int x) {
        StringBuilder letters = new StringBuilder();
        for (int y = 0; y < regions.height(); y++) {
            letters.append("#c~y".charAt(regions.labels()[y * regions.width() + x]));
        }
        return letters.toString();
    }

    private static String row(SoftRegions regions, int y) {
        StringBuilder letters = new StringBuilder();
        for (int x = 0; x < regions.width(); x++) {
            letters.append("#c~y".charAt(regions.labels()[y * regions.width() + x]));
        }
        return letters.toString();
    }
}
