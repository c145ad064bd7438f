package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Resample;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** The fast sums of the measuring against plain ones. */
class KernelPropertyTest {

    /** The running sums of far blocks against a loop over every pair of blocks. */
    @Property(tries = 25)
    void farBlocksAreAllPairsFarEnoughApart(
            @ForAll @IntRange(min = 8, max = 70) int frames, @ForAll @IntRange(min = 0, max = 6) int interval) {
        SplittableRandom dice = new SplittableRandom(frames * 100L + interval);
        double[] times = new double[frames];
        float[][] planes = new float[frames][5];
        for (int i = 0; i < frames; i++) {
            times[i] = i * 0.1 + (i % 3) * 0.01;
            for (int p = 0; p < 5; p++) {
                planes[i][p] = (float) dice.nextDouble();
            }
        }
        PixelSeries series = PixelSeries.of(planes, times, new int[] {0, 1, 2, 3, 4});
        if (frames - interval > 40) {
            return; // blocks are thinned there, by rule and not by sums
        }
        List<double[]> means = new ArrayList<>();
        for (int start = 0; start < frames - interval; start++) {
            double[] mean = new double[5];
            for (int p = 0; p < 5; p++) {
                for (int i = start; i < start + interval; i++) {
                    mean[p] += 0.5 * ((double) planes[i][p] + planes[i + 1][p]) * (times[i + 1] - times[i]);
                }
                mean[p] = interval == 0 ? planes[start][p] : mean[p] / (times[start + interval] - times[start]);
            }
            means.add(mean);
        }
        double apart = 0.35 * frames * (times[frames - 1] - times[0]) / (frames - 1);
        double sum = 0;
        long pairs = 0;
        for (int i = 0; i < means.size(); i++) {
            for (int j = i + interval + 1; j < means.size(); j++) {
                if (times[j] - times[i] >= apart * (1 - 1e-9)) {
                    pairs++;
                    for (int p = 0; p < 5; p++) {
                        double d = means.get(i)[p] - means.get(j)[p];
                        sum += d * d;
                    }
                }
            }
        }
        double aboutMean = 0;
        for (int p = 0; p < 5; p++) {
            double clip = 0;
            for (int i = 0; i + 1 < frames; i++) {
                clip += 0.5 * ((double) planes[i][p] + planes[i + 1][p]) * (times[i + 1] - times[i]);
            }
            clip /= times[frames - 1] - times[0];
            for (double[] mean : means) {
                aboutMean += (mean[p] - clip) * (mean[p] - clip) / (5.0 * means.size());
            }
        }
        FarBlocks fast = FarBlocks.of(series, interval);
        assertThat(fast.pairs()).isEqualTo(pairs);
        if (pairs > 0) {
            assertThat(fast.scatter().halfSquaredDifference()).isCloseTo(sum / (2.0 * 5 * pairs), within(1e-8));
        }
        assertThat(fast.scatter().squareAboutClipMean()).isCloseTo(aboutMean, within(1e-8));
    }

    /** Blur by doubling against a thousand carried planes. */
    @Property(tries = 8)
    void aDriftIsTheMeanOfWhatIsCarriedAlong(
            @ForAll @DoubleRange(min = -6, max = 6) double u, @ForAll @DoubleRange(min = -3, max = 3) double v) {
        int w = 48;
        int h = 36;
        float[] plane = new float[w * h];
        for (int p = 0; p < plane.length; p++) {
            int row = p / w;
            plane[p] = (float) (0.5 + 0.3 * Math.sin(p % w / 4.0) * Math.cos(row / 5.0));
        }
        Flow flow = new Flow(u, 0, 0, v, 0, 0, w, h);
        double seconds = 2;
        float[] fast = DriftBlur.mean(plane, flow, 0, seconds, Work.alone());
        int steps = 1000;
        for (int y = 12; y < h - 12; y += 3) {
            for (int x = 16; x < w - 16; x += 3) {
                double sum = 0;
                for (int k = 0; k < steps; k++) {
                    double t = seconds * (k + 0.5) / steps;
                    sum += Resample.mirrored(plane, w, h, x - u * t, y - v * t);
                }
                // one step of at most 0.7 px, and straight lines between samples at every doubling
                assertThat((double) fast[y * w + x]).isCloseTo(sum / steps, within(0.02));
            }
        }
    }

    @Property(tries = 12)
    void aShiftIsFoundToHalfAPixel(
            @ForAll @IntRange(min = -9, max = 9) int dx, @ForAll @IntRange(min = -7, max = 7) int dy) {
        int w = 96;
        int h = 64;
        SplittableRandom dice = new SplittableRandom(9);
        int border = 10;
        int wide = w + 2 * border;
        float[] field = new float[wide * (h + 2 * border)];
        for (int p = 0; p < field.length; p++) {
            field[p] = (float) dice.nextDouble();
        }
        float[] first = new float[w * h];
        float[] second = new float[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                first[y * w + x] = field[(y + border) * wide + x + border];
                second[y * w + x] = field[(y + border - dy) * wide + x + border - dx];
            }
        }
        double[] shift = PhaseCorrelation.shift(first, second, w, h);
        assertThat(shift[0]).isCloseTo(dx, within(0.5));
        assertThat(shift[1]).isCloseTo(dy, within(0.5));
    }

    /** G. I. Taylor 1922, by summing the covariance of every pair of instants. */
    @Property(tries = 20)
    void aFadingMemoryKeepsWhatItsCovarianceSumsTo(
            @ForAll @DoubleRange(min = 0.05, max = 20) double memory,
            @ForAll @DoubleRange(min = 0.1, max = 30) double seconds) {
        int n = 4000;
        double sum = 0;
        for (int k = 0; k < n; k++) {
            double lag = seconds * (k + 0.5) / n;
            sum += 2 * (1 - lag / seconds) * Math.exp(-lag / memory) / n;
        }
        assertThat(FadingMemory.share(seconds, memory)).isCloseTo(sum, within(1e-4));
    }
}
