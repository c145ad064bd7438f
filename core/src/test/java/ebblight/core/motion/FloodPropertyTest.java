package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Floods against spreading a name to neighbours until nothing changes. */
class FloodPropertyTest {

    @Property(tries = 60)
    void aFloodReachesWhatHangsTogether(
            @ForAll @IntRange(min = 1, max = 9) int w, @ForAll @IntRange(min = 1, max = 9) int h, @ForAll long seed) {
        Dice dice = new Dice(seed);
        byte[] picture = new byte[w * h];
        boolean[] open = new boolean[w * h];
        boolean[] seeds = new boolean[w * h];
        for (int p = 0; p < picture.length; p++) {
            open[p] = dice.even() < 0.6;
            picture[p] = (byte) (open[p] ? 1 : 0);
            seeds[p] = open[p] && dice.even() < 0.1;
        }
        int[] name = names(picture, w, h);
        boolean[] reached = new boolean[w * h];
        Flood.from(seeds, open, w, reached);
        boolean[] large = Flood.large(open, w, 4);
        for (int p = 0; p < picture.length; p++) {
            boolean wet = false;
            int size = 0;
            for (int q = 0; q < picture.length; q++) {
                wet |= seeds[q] && name[q] == name[p];
                size += name[q] == name[p] ? 1 : 0;
            }
            assertThat(reached[p]).isEqualTo(open[p] && wet);
            assertThat(large[p]).isEqualTo(open[p] && size >= 4);
        }
    }

    @Test
    void aClosedSeedFloodsItsNeighboursButIsNoWaterItself() {
        boolean[] out = new boolean[4];
        Flood.from(new boolean[] {false, true, false, false}, new boolean[] {true, false, true, false}, 4, out);
        assertThat(out).containsExactly(true, false, true, false);
    }

    /** The straight way by Pythagoras; what is counted lies within 8 % of it. */
    @Property(tries = 30)
    void distancesAreNearlyStraight(
            @ForAll @IntRange(min = 2, max = 16) int w, @ForAll @IntRange(min = 2, max = 16) int h, @ForAll long seed) {
        Dice dice = new Dice(seed);
        byte[] places = new byte[w * h];
        places[(int) (dice.even() * w * h)] = 1;
        places[(int) (dice.even() * w * h)] = 2;
        double[] away = Flood.distances(places, w);
        for (int p = 0; p < places.length; p++) {
            double nearest = Double.MAX_VALUE;
            for (int q = 0; q < places.length; q++) {
                if (places[q] != 0) {
                    double dx = p % w - (double) (q % w);
                    int rows = p / w - q / w;
                    nearest = Math.min(nearest, Math.sqrt(dx * dx + (double) rows * rows));
                }
            }
            assertThat(away[p]).isBetween(0.92 * nearest, 1.08 * nearest);
        }
    }

    private static boolean beside(int p, int q, int w) {
        return Math.abs(p % w - q % w) + Math.abs(p / w - q / w) == 1;
    }

    private static int[] names(byte[] picture, int w, int h) {
        int[] name = new int[w * h];
        for (int p = 0; p < name.length; p++) {
            name[p] = p;
        }
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int p = 0; p < name.length; p++) {
                for (int q = 0; q < name.length; q++) {
                    if (beside(p, q, w) && picture[p] == picture[q] && name[q] < name[p]) {
                        name[p] = name[q];
                        changed = true;
                    }
                }
            }
        }
        return name;
    }
}
