package ebblight.core.motion;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;

/** What plain twins of the kernels are built from: sums over every neighbour in double, and made-up frames. */
final class Plain {

    private Plain() {}

    static double[] wide(float[] plane) {
        double[] wide = new double[plane.length];
        Arrays.setAll(wide, p -> plane[p]);
        return wide;
    }

    static float[] narrow(double[] plane) {
        float[] narrow = new float[plane.length];
        for (int p = 0; p < plane.length; p++) {
            narrow[p] = (float) plane[p];
        }
        return narrow;
    }

    /**
     * A Gaussian, mirrored at the borders without repeating the edge: to 4 px by its formula to four deviations, beyond
     * by the kernel of four extended boxes (Gwosdek, Grewenig, Bruhn, Weickert 2011, equations 3 and 4).
     */
    static double[] gaussian(double[] plane, int width, int height, double sigma) {
        double[] kernel = sigma <= 4 ? taps(sigma) : fourBoxes(sigma);
        int radius = kernel.length / 2;
        double[] rows = new double[plane.length];
        double[] out = new double[plane.length];
        for (int p = 0; p < plane.length; p++) {
            for (int d = -radius; d <= radius; d++) {
                rows[p] += kernel[d + radius] * plane[p / width * width + mirrored(p % width + d, width)];
            }
        }
        for (int p = 0; p < plane.length; p++) {
            for (int d = -radius; d <= radius; d++) {
                out[p] += kernel[d + radius] * rows[mirrored(p / width + d, height) * width + p % width];
            }
        }
        return out;
    }

    private static double[] taps(double sigma) {
        int radius = Math.max(1, (int) Math.round(4 * sigma));
        double[] kernel = new double[2 * radius + 1];
        for (int i = -radius; i <= radius; i++) {
            kernel[i + radius] = Math.exp(-0.5 * i * i / (sigma * sigma));
        }
        double sum = Arrays.stream(kernel).sum();
        return Arrays.stream(kernel).map(k -> k / sum).toArray();
    }

    private static double[] fourBoxes(double sigma) {
        double part = sigma * sigma / 4;
        int r = (int) Math.floor(0.5 * Math.sqrt(12 * part + 1) - 0.5);
        double end = (2 * r + 1) * (r * (r + 1.0) - 3 * part) / (6 * (part - (r + 1.0) * (r + 1.0)));
        double[] box = new double[2 * r + 3];
        Arrays.fill(box, 1 / (2 * end + 2 * r + 1));
        box[0] *= end;
        box[box.length - 1] *= end;
        double[] kernel = {1};
        for (int k = 0; k < 4; k++) {
            double[] wider = new double[kernel.length + box.length - 1];
            for (int i = 0; i < kernel.length; i++) {
                for (int j = 0; j < box.length; j++) {
                    wider[i + j] += kernel[i] * box[j];
                }
            }
            kernel = wider;
        }
        return kernel;
    }

    /** … 2 1 0 1 2 …, step by step. */
    static int mirrored(int i, int n) {
        int at = i;
        while (n > 1 && (at < 0 || at >= n)) {
            at = at < 0 ? -at : 2 * (n - 1) - at;
        }
        return n == 1 ? 0 : at;
    }

    /** Straight lines between the four samples round a place, mirrored beyond the border. */
    static double between(double[] plane, int width, int height, double x, double y) {
        int left = (int) Math.floor(x);
        int top = (int) Math.floor(y);
        double sum = 0;
        for (int j = top; j <= top + 1; j++) {
            for (int i = left; i <= left + 1; i++) {
                double weight = (1 - Math.abs(x - i)) * (1 - Math.abs(y - j));
                sum += weight * plane[mirrored(j, height) * width + mirrored(i, width)];
            }
        }
        return sum;
    }

    /** Mean in time of the frames {@code from} to before {@code to}. */
    static double[] mean(LuminanceFrames frames, int from, int to) {
        double[] mean = new double[frames.pixels()];
        for (int i = from; i < to; i++) {
            for (int p = 0; p < mean.length; p++) {
                mean[p] += frames.frame(i)[p] / (double) (to - from);
            }
        }
        return mean;
    }

    /** What a made-up scene shows: linear light from 0 to 1 at a pixel at an instant. */
    interface Scene {
        double light(int x, int y, double seconds);
    }

    /** A clip of a made-up scene, grey, 16 bits a sample. */
    static Clip clip(int width, int height, int count, double spacing, Scene scene) {
        List<byte[]> list = new ArrayList<>();
        double[] times = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = spacing * i;
            byte[] frame = new byte[6 * width * height];
            for (int p = 0; p < width * height; p++) {
                int code = (int) Math.rint(65535 * scene.light(p % width, p / width, times[i]));
                for (int c = 0; c < 3; c++) {
                    frame[6 * p + 2 * c] = (byte) code;
                    frame[6 * p + 2 * c + 1] = (byte) (code >> 8);
                }
            }
            list.add(frame);
        }
        return Clip.of(width, height, times, list, Clip.Coding.LINEAR16);
    }

    /** The luminance of such a clip. */
    static LuminanceFrames frames(int width, int height, int count, double spacing, Scene scene) {
        return LuminanceFrames.of(clip(width, height, count, spacing, scene), Work.alone());
    }

    /** Noise that is even between 0 and 1, and smooth over {@code sigma} pixels about one half when that is above 0. */
    static double[] noise(int width, int height, double sigma, long seed) {
        double[] plane =
                new SplittableRandom(seed).doubles((long) width * height).toArray();
        return sigma > 0 ? gaussian(plane, width, height, sigma) : plane;
    }
}
