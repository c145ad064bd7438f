package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Rounding;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Frames of one view taken at different exposure times: the metered test frame and the filtered ones. Each shows what
 * its own time leaves; between and beyond them a memory that fades as exp(−s/τ) is fitted.
 *
 * @param seconds exposure time of every frame of the levelled clip
 */
public record Stills(double[] seconds) {

    /** Exposure times further apart than this make frames stills rather than a clip: half a stop. */
    private static final double HALF_STOP = 1.4142135623730951;

    private static final int CELL = 8;
    private static final double DARKEST = 1e-3;
    private static final double BRIGHTEST = 0.95;

    /** Whether exposure times, 0 for unknown, differ enough to be told from. */
    public static boolean differ(double[] seconds) {
        double least = Double.POSITIVE_INFINITY;
        double most = 0;
        for (double s : seconds) {
            if (s > 0) {
                least = Math.min(least, s);
                most = Math.max(most, s);
            }
        }
        return most > HALF_STOP * least;
    }

    /**
     * The frames of known exposure time brought to the light of the longest one, colour by colour: a filter's cast and
     * the error of its density go with it. Frames of unknown time are left out.
     */
    public static Clip levelled(Clip clip, double[] seconds) {
        boolean[] known = new boolean[seconds.length];
        for (int i = 0; i < known.length; i++) {
            known[i] = seconds[i] > 0;
        }
        Clip used = clip.only(known);
        int longest = longest(known(seconds));
        int n = used.width() * used.height();
        List<byte[]> frames = new ArrayList<>();
        float[] reference = new float[n];
        float[] plane = new float[n];
        for (int i = 0; i < used.frames(); i++) {
            byte[] frame = new byte[6 * n];
            for (int c = 0; c < 3; c++) {
                used.channel(longest, c, reference);
                used.channel(i, c, plane);
                double gain = i == longest ? 1 : gain(plane, reference, used.width(), used.height());
                for (int p = 0; p < n; p++) {
                    int code = (int) Math.max(0, Math.min(65535, Rounding.even(65535 * gain * plane[p])));
                    frame[6 * p + 2 * c] = (byte) code;
                    frame[6 * p + 2 * c + 1] = (byte) (code >> 8);
                }
            }
            frames.add(frame);
        }
        double[] times = new double[used.frames()];
        for (int i = 0; i < times.length; i++) {
            times[i] = used.timeSeconds(i);
        }
        return Clip.of(used.width(), used.height(), times, frames, Clip.Coding.LINEAR16);
    }

    /** The stills among frames of these exposure times, 0 for unknown. */
    public static Stills of(double[] seconds) {
        return new Stills(known(seconds));
    }

    private static double[] known(double[] seconds) {
        double[] known = new double[seconds.length];
        int count = 0;
        for (double s : seconds) {
            if (s > 0) {
                known[count++] = s;
            }
        }
        return Arrays.copyOf(known, count);
    }

    private static int longest(double[] seconds) {
        int best = 0;
        for (int i = 1; i < seconds.length; i++) {
            best = seconds[i] > seconds[best] ? i : best;
        }
        return best;
    }

    /** Median over cells of how much brighter the reference is, cells near black or white left out. */
    private static double gain(float[] plane, float[] reference, int width, int height) {
        int columns = Math.max(1, width / CELL);
        int rows = Math.max(1, height / CELL);
        double[] ratios = new double[columns * rows];
        int count = 0;
        for (int r = 0; r < rows; r++) {
            for (int c = 0; c < columns; c++) {
                double a = 0;
                double b = 0;
                int cell = 0;
                boolean clipped = false;
                for (int y = r * height / rows; y < (r + 1) * height / rows; y++) {
                    for (int x = c * width / columns; x < (c + 1) * width / columns; x++) {
                        int p = y * width + x;
                        a += plane[p];
                        b += reference[p];
                        clipped |= plane[p] > BRIGHTEST || reference[p] > BRIGHTEST;
                        cell++;
                    }
                }
                if (!clipped && a > DARKEST * cell && b > DARKEST * cell) {
                    ratios[count++] = b / a;
                }
            }
        }
        return count == 0 ? 1 : Quantiles.median(ratios, count);
    }

    /** Index of the frame with the longest exposure. */
    int longest() {
        return longest(seconds);
    }

    /** Index of the frame with the shortest exposure. */
    int shortest() {
        int best = 0;
        for (int i = 1; i < seconds.length; i++) {
            best = seconds[i] < seconds[best] ? i : best;
        }
        return best;
    }

    double longestSeconds() {
        return seconds[longest()];
    }

    double shortestSeconds() {
        return seconds[shortest()];
    }
}
