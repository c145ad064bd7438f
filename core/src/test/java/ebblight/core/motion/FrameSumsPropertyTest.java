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
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Sums over the frames of a clip, pixel by pixel, against plain loops in double; odd sizes, both codings. */
class FrameSumsPropertyTest {

    private static final Work ALONE = Work.alone();

    /** IEC 61966-2-1 for bytes; whole numbers of 65535 for two bytes. */
    private static double linear(Clip clip, int frame, int pixel, int channel) {
        byte[] bytes = clip.bytes(frame);
        if (clip.coding() == Clip.Coding.LINEAR16) {
            int q = 2 * (3 * pixel + channel);
            return ((bytes[q] & 0xFF) + 256 * (bytes[q + 1] & 0xFF)) / 65535.0;
        }
        double v = (bytes[3 * pixel + channel] & 0xFF) / 255.0;
        return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }

    /** Noise of at least a tenth of white, so that gains stay near 1. */
    private static Clip noise(int width, int height, int frames, boolean wide, long seed) {
        SplittableRandom dice = new SplittableRandom(seed);
        List<byte[]> list = new ArrayList<>();
        double[] times = new double[frames];
        for (int i = 0; i < frames; i++) {
            byte[] frame = new byte[3 * width * height * (wide ? 2 : 1)];
            for (int k = 0; k < frame.length; k++) {
                frame[k] = (byte) (60 + dice.nextInt(190));
            }
            list.add(frame);
            times[i] = 0.1 * i;
        }
        return Clip.of(width, height, times, list, wide ? Clip.Coding.LINEAR16 : Clip.Coding.SRGB8);
    }

    @Property(tries = 30)
    void luminanceIsTheSumOfThreeColours(
            @ForAll @IntRange(min = 1, max = 9) int width,
            @ForAll @IntRange(min = 1, max = 7) int height,
            @ForAll boolean wide) {
        Clip clip = noise(width, height, 2, wide, width + 10L * height);
        float[] plane = new float[width * height];
        float[] blue = new float[width * height];
        clip.luminance(1, plane);
        clip.channel(1, 2, blue);
        for (int p = 0; p < plane.length; p++) {
            double y = 0.2126 * linear(clip, 1, p, 0) + 0.7152 * linear(clip, 1, p, 1) + 0.0722 * linear(clip, 1, p, 2);
            assertThat((double) plane[p]).isCloseTo(y, within(2e-7));
            assertThat((double) blue[p]).isCloseTo(linear(clip, 1, p, 2), within(1e-7));
        }
    }

    @Property(tries = 20)
    void meanAndDeviationAreThoseOfTwoPasses(
            @ForAll @IntRange(min = 1, max = 9) int width,
            @ForAll @IntRange(min = 1, max = 7) int height,
            @ForAll @IntRange(min = 1, max = 17) int frames,
            @ForAll boolean wide) {
        Clip clip = noise(width, height, frames, wide, width + 10L * height + 100L * frames);
        float[] gain = new float[frames];
        for (int i = 0; i < frames; i++) {
            gain[i] = 1 + 0.02f * i;
        }
        Moments fast = Moments.of(clip, gain, ALONE);
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < width * height; p++) {
                double mean = 0;
                for (int i = 0; i < frames; i++) {
                    mean += linear(clip, i, p, c) / gain[i] / frames;
                }
                double squares = 0;
                for (int i = 0; i < frames; i++) {
                    double d = linear(clip, i, p, c) / gain[i] - mean;
                    squares += d * d / frames;
                }
                assertThat((double) fast.mean()[c][p]).isCloseTo(mean, within(3e-7));
                assertThat((double) fast.deviation()[c][p]).isCloseTo(Math.sqrt(squares), within(1e-5));
            }
        }
    }

    @Property(tries = 20)
    void meanVarianceAndMedianOfLuminance(
            @ForAll @IntRange(min = 1, max = 9) int width,
            @ForAll @IntRange(min = 1, max = 7) int height,
            @ForAll @IntRange(min = 1, max = 29) int frames) {
        Clip clip = noise(width, height, frames, false, width + 10L * height + 100L * frames);
        LuminanceFrames luminance = LuminanceFrames.of(clip, ALONE);
        int from = frames / 3;
        float[] part = luminance.mean(from, frames);
        float[] mean = luminance.mean(0, frames);
        float[] variance = luminance.variance(mean);
        float[] median = luminance.median(ALONE);
        float[] gain = luminance.drift().gain();
        for (int p = 0; p < width * height; p++) {
            double[] values = new double[frames];
            for (int i = 0; i < frames; i++) {
                values[i] = (0.2126 * linear(clip, i, p, 0)
                                + 0.7152 * linear(clip, i, p, 1)
                                + 0.0722 * linear(clip, i, p, 2))
                        / gain[i];
            }
            double all = Arrays.stream(values).average().orElseThrow();
            double late = Arrays.stream(values, from, frames).average().orElseThrow();
            double squares =
                    Arrays.stream(values).map(v -> (v - all) * (v - all)).sum();
            assertThat((double) mean[p]).isCloseTo(all, within(3e-7));
            assertThat((double) part[p]).isCloseTo(late, within(3e-7));
            assertThat((double) variance[p]).isCloseTo(squares / Math.max(1, frames - 1), within(1e-6));
            Arrays.sort(values);
            assertThat((double) median[p]).isCloseTo((values[frames / 2] + values[(frames - 1) / 2]) / 2, within(3e-7));
        }
    }

    /** A view that stands still in a light that fades: the rate typed in comes out, and the frames are level again. */
    @Property(tries = 12)
    void aFadingLightIsTakenOut(@ForAll @DoubleRange(min = -2, max = 2) double stopsPerMinute) {
        int n = 32 * 24;
        SplittableRandom dice = new SplittableRandom(4);
        double[] scene = dice.doubles(n, 0.1, 0.4).toArray();
        List<byte[]> list = new ArrayList<>();
        double[] times = new double[40];
        for (int i = 0; i < times.length; i++) {
            times[i] = 0.25 * i;
            byte[] frame = new byte[6 * n];
            for (int p = 0; p < n; p++) {
                int code = (int) Math.rint(65535 * scene[p] * Math.pow(2, -stopsPerMinute * times[i] / 60));
                for (int c = 0; c < 3; c++) {
                    frame[6 * p + 2 * c] = (byte) code;
                    frame[6 * p + 2 * c + 1] = (byte) (code >> 8);
                }
            }
            list.add(frame);
        }
        LuminanceFrames level = LuminanceFrames.of(Clip.of(32, 24, times, list, Clip.Coding.LINEAR16), ALONE);
        assertThat(level.drift().stopsPerMinute()).isCloseTo(stopsPerMinute, within(0.002));
        for (int p = 0; p < n; p += 7) {
            assertThat((double) level.frame(0)[p]).isCloseTo(level.frame(39)[p], within(1e-4));
        }
    }

    /** Photon and read noise typed in come out to a tenth: the noise model's stated 0.93 to 1.04, widened for chance. */
    @Property(tries = 4)
    void noiseIsThatOfTheSensor(@ForAll @DoubleRange(min = 0.1, max = 4) double tenThousandths) {
        double slope = 1e-4 * tenThousandths;
        int w = 160;
        int h = 128;
        double floor = 2e-6;
        Dice dice = new Dice(Double.doubleToLongBits(slope));
        List<byte[]> list = new ArrayList<>();
        double[] times = new double[16];
        for (int i = 0; i < times.length; i++) {
            times[i] = 0.1 * i;
            byte[] frame = new byte[6 * w * h];
            for (int p = 0; p < w * h; p++) {
                double light = 0.05 + 0.5 * (p % w) / w;
                double seen = light + Math.sqrt(slope * light + floor) * dice.normal();
                int code = (int) Math.max(0, Math.min(65535, Math.rint(65535 * seen)));
                for (int c = 0; c < 3; c++) {
                    frame[6 * p + 2 * c] = (byte) code;
                    frame[6 * p + 2 * c + 1] = (byte) (code >> 8);
                }
            }
            list.add(frame);
        }
        LuminanceFrames frames = LuminanceFrames.of(Clip.of(w, h, times, list, Clip.Coding.LINEAR16), ALONE);
        NoiseModel model = NoiseModel.of(frames, frames.mean(0, times.length));
        for (double light : new double[] {0.1, 0.3, 0.5}) {
            double truth = slope * light + floor;
            assertThat(model.at(light)).isCloseTo(truth, within(0.15 * truth));
        }
    }
}
