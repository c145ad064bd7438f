package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** The shrinking of bands against its definition: what persists and what varies, from the two ends of a clip. */
class TextureShrinkPropertyTest {

    private static final int BANDS = 6;

    @Property(tries = 4)
    void theFactorIsTheShareOfPowerThatIsLeft(
            @ForAll @IntRange(min = 9, max = 40) int width,
            @ForAll @IntRange(min = 7, max = 30) int height,
            @ForAll @IntRange(min = 2, max = 11) int count,
            @ForAll @IntRange(min = 0, max = 999) int seed) {
        // the left half stands, the right half is another in every frame
        double[] stands = Plain.noise(width, height, 1, seed);
        LuminanceFrames frames = Plain.frames(
                width,
                height,
                count,
                0.1,
                (x, y, t) -> x < width / 2
                        ? stands[y * width + x]
                        : Plain.noise(1, 1, 0, seed + 7919L * x + 104_729L * y + Math.round(1e6 * t))[0]);
        TextureShrink fast = TextureShrink.of(frames, Work.alone());
        int third = Math.max(1, count / 3);
        double[] a = Plain.mean(frames, 0, third);
        double[] b = Plain.mean(frames, count - third, count);
        for (int k = 0; k < BANDS; k++) {
            double[] nextA = Plain.gaussian(a, width, height, Math.pow(2, k));
            double[] nextB = Plain.gaussian(b, width, height, Math.pow(2, k));
            double[] product = new double[a.length];
            double[] varies = new double[a.length];
            for (int p = 0; p < a.length; p++) {
                double bandA = a[p] - nextA[p];
                double bandB = b[p] - nextB[p];
                product[p] = bandA * bandB;
                varies[p] = (bandA - bandB) * (bandA - bandB) / 2;
            }
            double window = 2.25 * Math.pow(2, k) + 2;
            product = Plain.gaussian(product, width, height, window);
            varies = Plain.gaussian(varies, width, height, window);
            for (int p = 0; p < a.length; p++) {
                double persists = Math.max(0, product[p] - varies[p] / 2);
                for (double time : new double[] {0.05, 0.4}) {
                    double now = persists + 0.6 * varies[p] + 1e-10;
                    double amount = Math.sqrt((persists + time * varies[p]) / now);
                    double likeliest = (persists + 0.6 * 0.3 * varies[p]) / now;
                    double expected = k < 3 ? amount : k == 3 ? (amount + likeliest) / 2 : likeliest;
                    // rounding of bands to floats counts where they cancel
                    assertThat(fast.factor(k, p, 0.6, time, 0.3)).isCloseTo(expected, within(2e-3));
                }
            }
            a = nextA;
            b = nextB;
        }
    }
}
