package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.numeric.Work;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** A sky made of a glow that stays and ripples that go: both are known, so it is known what has to be carried. */
class CarriedLightTest {

    private static final int W = 240;
    private static final int H = 120;
    private static final int SHIFT = 6;

    @Test
    void ripplesAreCarriedAndTheGlowIsLeft() {
        float[] sky = sum(glow(0), ripples(0));
        float[] kept = light(difference(ripples(SHIFT), ripples(0))).carried(sky, W, H);
        // a glow has a little of every scale, and what it has of the ripples' scales goes with them
        assertThat(rms(difference(kept, ripples(0)))).isLessThan(0.05 * rms(glow(0)));
    }

    @Test
    void whereNothingMovesNothingIsCarried() {
        float[] kept = light(new float[W * H]).carried(sum(glow(0), ripples(0)), W, H);
        assertThat(rms(kept)).isLessThan(1e-6);
    }

    @Test
    void whereAllMovesAllThatTheScalesHoldIsCarried() {
        float[] sky = sum(glow(0), ripples(0));
        float[] moved = difference(sum(glow(SHIFT), ripples(SHIFT)), sky);
        float[] kept = light(moved).carried(sky, W, H);
        float[] mean = new float[W * H];
        Arrays.fill(mean, (float) mean(difference(sky, kept)));
        // what is broader than the scales stays whatever happens
        assertThat(rms(difference(difference(sky, kept), mean))).isLessThan(0.25 * rms(glow(0)));
    }

    private static CarriedLight light(float[] happened) {
        float[] seen = new float[W * H];
        Arrays.fill(seen, 1);
        float[] carried = difference(sum(glow(SHIFT), ripples(SHIFT)), sum(glow(0), ripples(0)));
        return CarriedLight.of(seen, happened, carried, W, H, Work.alone());
    }

    private static float[] glow(double shift) {
        return field((x, y) -> Math.exp(-Math.pow((x - shift - 90) / 60, 2) - Math.pow((y - 110) / 50.0, 2)));
    }

    private static float[] ripples(double shift) {
        return field((x, y) -> 0.05 * Math.sin((x - shift) / 3) * Math.cos(y / 4.0));
    }

    private interface Light {
        double at(int x, int y);
    }

    private static float[] field(Light light) {
        float[] field = new float[W * H];
        for (int p = 0; p < field.length; p++) {
            field[p] = (float) light.at(p % W, p / W);
        }
        return field;
    }

    private static float[] sum(float[] a, float[] b) {
        float[] out = a.clone();
        for (int p = 0; p < out.length; p++) {
            out[p] += b[p];
        }
        return out;
    }

    private static float[] difference(float[] a, float[] b) {
        float[] out = a.clone();
        for (int p = 0; p < out.length; p++) {
            out[p] -= b[p];
        }
        return out;
    }

    private static double mean(float[] field) {
        double sum = 0;
        for (float v : field) {
            sum += v;
        }
        return sum / field.length;
    }

    private static double rms(float[] field) {
        double squares = 0;
        for (float v : field) {
            squares += (double) v * v;
        }
        return Math.sqrt(squares / field.length);
    }
}
