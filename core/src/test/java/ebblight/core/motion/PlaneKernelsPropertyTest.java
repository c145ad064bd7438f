package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

/** Kernels that look round a pixel, against loops that take their definition at its word. */
class PlaneKernelsPropertyTest {

    private static final double SIGMA = 4;

    @Property(tries = 40)
    void areasAreWhatStepsOverEdgesReach(
            @ForAll @IntRange(min = 1, max = 13) int width,
            @ForAll @IntRange(min = 1, max = 11) int height,
            @ForAll @IntRange(min = 1, max = 3) int kinds,
            @ForAll @IntRange(min = 0, max = 1000) int seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        byte[] picture = new byte[width * height];
        for (int p = 0; p < picture.length; p++) {
            picture[p] = (byte) dice.nextInt(kinds);
        }
        // every pixel takes the smallest number of its neighbours of the same kind until nothing changes
        int[] plain = new int[picture.length];
        Arrays.setAll(plain, p -> p);
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int p = 0; p < picture.length; p++) {
                for (int q : neighbours(p, width, height)) {
                    if (picture[q] == picture[p] && plain[q] < plain[p]) {
                        plain[p] = plain[q];
                        changed = true;
                    }
                }
            }
        }
        Areas areas = Areas.of(picture, width, height);
        assertThat((long) areas.count())
                .isEqualTo(Arrays.stream(plain).distinct().count());
        int[] touched = areas.mostTouched(picture, width, height);
        for (int p = 0; p < picture.length; p++) {
            int number = plain[p];
            assertThat(areas.at(p)).isEqualTo(areas.at(number));
            assertThat((long) areas.size(areas.at(p)))
                    .isEqualTo(Arrays.stream(plain).filter(n -> n == number).count());
            assertThat(areas.label(areas.at(p))).isEqualTo(picture[p]);
            for (int q : neighbours(p, width, height)) {
                if (plain[q] != number) {
                    assertThat(areas.size(touched[areas.at(p)])).isGreaterThanOrEqualTo(areas.size(areas.at(q)));
                }
            }
        }
    }

    private static int[] neighbours(int p, int width, int height) {
        List<Integer> list = new ArrayList<>();
        if (p % width > 0) {
            list.add(p - 1);
        }
        if (p % width < width - 1) {
            list.add(p + 1);
        }
        if (p / width > 0) {
            list.add(p - width);
        }
        if (p / width < height - 1) {
            list.add(p + width);
        }
        return list.stream().mapToInt(Integer::intValue).toArray();
    }

    /** Immerkær 1996: the kernel [1 −2 1; −2 4 −2; 1 −2 1] / 6. */
    @Property(tries = 20)
    void theWhitePartIsItsKernel(@ForAll @IntRange(min = 3, max = 9) int width, @ForAll @IntRange(min = 0) int seed) {
        float[] plane = noise(width * 5, seed);
        int[] once = {1, -2, 1};
        for (int y = 1; y < 4; y++) {
            for (int x = 1; x < width - 1; x++) {
                double sum = 0;
                for (int dy = -1; dy <= 1; dy++) {
                    for (int dx = -1; dx <= 1; dx++) {
                        sum += once[dy + 1] * once[dx + 1] * (double) plane[(y + dy) * width + x + dx] / 6;
                    }
                }
                assertThat(WhitePart.at(plane, y * width + x, width)).isCloseTo(sum, within(1e-12));
            }
        }
    }

    @Property(tries = 15)
    void bandsAndRestAddUpToThePlane(
            @ForAll @IntRange(min = 1, max = 33) int width, @ForAll @IntRange(min = 1, max = 21) int height) {
        float[] plane = noise(width * height, 7L * width + height);
        Bands bands = Bands.of(plane, width, height, 4);
        for (int p = 0; p < plane.length; p++) {
            double sum = bands.rest()[p];
            for (float[] band : bands.bands()) {
                sum += band[p];
            }
            assertThat(sum).isCloseTo(plane[p], within(1e-6));
        }
    }

    @Property(tries = 30)
    void thinningTakesEvenSteps(@ForAll @IntRange(min = 1, max = 60_000) int pixels) {
        float[] share = noise(pixels, pixels);
        share[0] = 1;
        List<Integer> all = new ArrayList<>();
        for (int p = 0; p < pixels; p++) {
            if (share[p] > 0.5f) {
                all.add(p);
            }
        }
        int[] thinned = PixelSeries.thinned(share);
        int step = thinned.length > 1 ? all.indexOf(thinned[1]) : 1;
        assertThat(thinned.length).isLessThan(10_000);
        assertThat(step == 1 || thinned.length >= 5000).isTrue();
        for (int k = 0; k < thinned.length; k++) {
            assertThat(thinned[k]).isEqualTo(all.get(k * step));
        }
        assertThat(thinned.length).isEqualTo((all.size() + step - 1) / step);
    }

    /**
     * Texture that stays, by its definition: of every direction (in half degrees) the gradient energy of the mean
     * picture there against that of single frames, and of all directions the least.
     */
    @Property(tries = 6)
    void persistenceIsTheLeastOverDirections(
            @ForAll @IntRange(min = 5, max = 25) int width, @ForAll @IntRange(min = 5, max = 19) int height) {
        LuminanceFrames frames = frames(width, height, 7);
        float[] mean = frames.mean(0, 7);
        Persistence fast = Persistence.of(frames, mean, SIGMA, 7);
        double[][] single = new double[3][width * height];
        for (int i = 0; i < 7; i++) {
            double[][] one = tensor(frames.frame(i), width, height);
            for (int c = 0; c < 3; c++) {
                for (int p = 0; p < one[c].length; p++) {
                    single[c][p] += one[c][p] / 7;
                }
            }
        }
        double[][] lasting = tensor(mean, width, height);
        for (int p = 0; p < mean.length; p += 3) {
            double little = 1e-3 * (single[0][p] + single[2][p]) + 1e-9;
            double least = 1.2;
            for (int k = 0; k < 360; k++) {
                double c = Math.cos(Math.PI * k / 360);
                double s = Math.sin(Math.PI * k / 360);
                double stays = c * c * lasting[0][p] + 2 * c * s * lasting[1][p] + s * s * lasting[2][p];
                double was = c * c * single[0][p] + 2 * c * s * single[1][p] + s * s * single[2][p] + little;
                least = Math.min(least, stays / was);
            }
            assertThat((double) fast.least()[p]).isCloseTo(Math.max(0, least), within(2e-3));
            double plain = (lasting[0][p] + lasting[2][p]) / (single[0][p] + single[2][p] + 2 * little);
            assertThat((double) fast.plain()[p]).isCloseTo(Math.min(1.2, plain), within(2e-3));
        }
    }

    private static double[][] tensor(float[] plane, int width, int height) {
        double[] smooth = Plain.gaussian(Plain.wide(plane), width, height, 1);
        double[][] products = new double[3][plane.length];
        for (int p = 0; p < plane.length; p++) {
            int x = p % width;
            int y = p / width;
            double gx = (smooth[y * width + (x + 1) % width] - smooth[y * width + (x + width - 1) % width]) / 2;
            double gy = (smooth[(y + 1) % height * width + x] - smooth[(y + height - 1) % height * width + x]) / 2;
            products[0][p] = gx * gx;
            products[1][p] = gx * gy;
            products[2][p] = gy * gy;
        }
        for (int c = 0; c < 3; c++) {
            products[c] = Plain.gaussian(products[c], width, height, SIGMA);
        }
        return products;
    }

    /** The maps of change by their definitions: variance and differences in time, noise off, smoothed, ratios. */
    @Property(tries = 4)
    void theMapsOfChangeAreTheirDefinitions(
            @ForAll @IntRange(min = 5, max = 25) int width, @ForAll @IntRange(min = 5, max = 19) int height) {
        int count = 12;
        LuminanceFrames frames = frames(width, height, count);
        float[] mean = frames.mean(0, count);
        NoiseModel noise = new NoiseModel(1e-4, 1e-5);
        float[][] colour = {mean, noise(mean.length, 3), noise(mean.length, 4)};
        float[][] maps =
                RegionFeatures.of(frames, mean, noise, colour, Work.alone()).maps();
        double[] change = new double[mean.length];
        double[][] structure = new double[4][mean.length];
        int[] lags = {1, 10, 3, 5}; // 0.1 s, 1 s, 0.3 s and 0.45 of 1.2 s
        double[] light = new double[mean.length];
        for (int p = 0; p < mean.length; p++) {
            light[p] = 1e-4 * mean[p] + 1e-5 + 1e-8;
            for (int i = 0; i < count; i++) {
                double d = frames.frame(i)[p] - (double) mean[p];
                change[p] += d * d / (count - 1);
            }
            change[p] = Math.max(0, change[p] - light[p]);
            for (int k = 0; k < 4; k++) {
                for (int i = 0; i + lags[k] < count; i++) {
                    double d = frames.frame(i + lags[k])[p] - (double) frames.frame(i)[p];
                    structure[k][p] += d * d / (2 * (count - lags[k]));
                }
                structure[k][p] = Math.max(0, structure[k][p] - light[p]);
            }
        }
        double[] v = Plain.gaussian(change, width, height, SIGMA);
        double[] n = Plain.gaussian(light, width, height, SIGMA);
        double[] m = Plain.gaussian(Plain.wide(mean), width, height, SIGMA);
        double[][] s = new double[4][];
        for (int k = 0; k < 4; k++) {
            s[k] = Plain.gaussian(structure[k], width, height, SIGMA);
        }
        for (int p = 0; p < mean.length; p++) {
            double little = 0.1 * n[p] + 1e-9;
            assertThat((double) maps[0][p])
                    .isCloseTo(Math.log10(Math.sqrt(v[p]) / (m[p] + 0.01) + 0.003), within(1e-4));
            assertThat((double) maps[1][p]).isCloseTo(Math.log10(v[p] / n[p] + 0.1), within(1e-4));
            assertThat((double) maps[2][p])
                    .isCloseTo(Math.log10((s[0][p] + little) / (s[1][p] + little)), within(1e-4));
            assertThat((double) maps[3][p])
                    .isCloseTo(Math.log10((s[2][p] + little) / (s[3][p] + little)), within(1e-4));
            int row = p / width;
            assertThat((double) maps[7][p]).isCloseTo(row / (height - 1.0), within(1e-6));
        }
    }

    /** Frames of 0.1 s each whose left side stands still and whose right side renews itself. */
    private static LuminanceFrames frames(int width, int height, int count) {
        SplittableRandom dice = new SplittableRandom(31L * width + height);
        double[] stands = dice.doubles((long) width * height).toArray();
        List<byte[]> list = new ArrayList<>();
        double[] times = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = 0.1 * i;
            byte[] frame = new byte[3 * width * height];
            for (int p = 0; p < width * height; p++) {
                double value = p % width < width / 2 ? stands[p] : dice.nextDouble();
                Arrays.fill(frame, 3 * p, 3 * p + 3, (byte) (80 + 150 * value));
            }
            list.add(frame);
        }
        return LuminanceFrames.of(Clip.of(width, height, times, list, Clip.Coding.SRGB8), Work.alone());
    }

    private static float[] noise(int samples, long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        float[] plane = new float[samples];
        for (int p = 0; p < samples; p++) {
            plane[p] = (float) dice.nextDouble();
        }
        return plane;
    }
}
