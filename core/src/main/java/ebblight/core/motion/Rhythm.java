package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Rounding;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * How a part comes and goes: the period of its waves or gusts, and its lulls.
 *
 * @param periodSeconds the period at which its light changes most regularly; 0 when none can be told
 * @param lulls stretches in which it moves least, in seconds from the first frame, in order
 */
public record Rhythm(double periodSeconds, List<Lull> lulls) {

    /** A rhythm needs this many periods in the clip to be told from chance. */
    private static final double LEAST_PERIODS = 2.5;

    /** Slower than this: faster change is ripple, not waves. */
    private static final double SHORTEST_PERIOD = 1;

    /** Power at the peak over the median power: white noise over thousands of pixels stays below 2. */
    private static final double CLEAR_PEAK = 3;

    private static final int FREQUENCIES_A_PERIOD = 4;
    private static final int PIXELS = 1500;
    private static final double SMOOTH_SECONDS = 0.5;
    private static final double CALM = 0.5;
    private static final double SHORTEST_LULL = 0.5;

    public Rhythm {
        lulls = List.copyOf(lulls);
    }

    /** A stretch of little movement, in seconds from the first frame. */
    public record Lull(double fromSeconds, double toSeconds) {}

    static final Rhythm NONE = new Rhythm(0, List.of());

    /** The rhythm of the pixels that {@code mask} marks. */
    static Rhythm of(LuminanceFrames frames, float[] mask) {
        int[] at = PixelSeries.thinned(mask);
        if (at.length < 50 || frames.count() < 12 || frames.spacingSeconds() > SHORTEST_PERIOD / 2) {
            return NONE;
        }
        PixelSeries series = PixelSeries.of(frames.all(), frames.timesSeconds(), at);
        return new Rhythm(period(series), lulls(series));
    }

    /**
     * The strongest line in the summed power spectrum of the pixels, each less its straight trend. No window: one that
     * favours the middle of the clip loses a swing that rests there.
     */
    private static double period(PixelSeries series) {
        int n = series.frames();
        double length = series.timeSeconds(n - 1) - series.timeSeconds(0);
        int lowest = (int) Math.ceil(LEAST_PERIODS * FREQUENCIES_A_PERIOD);
        int highest = (int) Math.floor(FREQUENCIES_A_PERIOD * length / SHORTEST_PERIOD);
        if (highest - lowest < 8) {
            return 0;
        }
        double[] power = power(series, length, highest + 1);
        int best = lowest;
        for (int k = lowest + 1; k <= highest; k++) {
            best = power[k] > power[best] ? k : best;
        }
        double median = Quantiles.median(Arrays.copyOfRange(power, lowest, highest + 1), highest - lowest + 1);
        // A spectrum that only rises towards slow change has its largest value at the end: no line of its own.
        boolean line = best > lowest + 1 && best < highest && power[best] > CLEAR_PEAK * median;
        return line && !sideLobe(power, lowest, best) ? FREQUENCIES_A_PERIOD * length / best : 0;
    }

    /**
     * Whether a peak is no more than change too slow to be a rhythm shows there. A line d periods a clip away shows
     * (sin πd / πd)² of its power; twice as much allows for the other half of its spectrum.
     */
    private static boolean sideLobe(double[] power, int lowest, int peak) {
        for (int k = FREQUENCIES_A_PERIOD / 2; k < lowest; k++) {
            double away = Math.PI * (peak - k) / FREQUENCIES_A_PERIOD;
            if (power[peak] < 2 * power[k] / (away * away)) {
                return true;
            }
        }
        return false;
    }

    /** Power summed over the pixels at multiples of a quarter period a clip. */
    private static double[] power(PixelSeries series, double length, int count) {
        int n = series.frames();
        double[] power = new double[count];
        double[] cos = new double[count * n];
        double[] sin = new double[count * n];
        for (int k = 0; k < count; k++) {
            double omega = 2 * Math.PI * k / (FREQUENCIES_A_PERIOD * length);
            for (int i = 0; i < n; i++) {
                double t = series.timeSeconds(i) - series.timeSeconds(0);
                cos[k * n + i] = StrictMath.cos(omega * t);
                sin[k * n + i] = StrictMath.sin(omega * t);
            }
        }
        double[] values = new double[n];
        int step = Math.max(1, series.pixels() / PIXELS);
        for (int p = 0; p < series.pixels(); p += step) {
            detrended(series, p, values);
            for (int k = 0; k < count; k++) {
                double c = 0;
                double s = 0;
                for (int i = 0; i < n; i++) {
                    c += values[i] * cos[k * n + i];
                    s += values[i] * sin[k * n + i];
                }
                power[k] += c * c + s * s;
            }
        }
        return power;
    }

    private static void detrended(PixelSeries series, int pixel, double[] into) {
        int n = into.length;
        double mean = 0;
        double tilt = 0;
        double norm = 0;
        for (int i = 0; i < n; i++) {
            mean += series.sample(pixel, i) / (double) n;
        }
        for (int i = 0; i < n; i++) {
            double x = i - (n - 1) / 2.0;
            tilt += x * series.sample(pixel, i);
            norm += x * x;
        }
        for (int i = 0; i < n; i++) {
            into[i] = series.sample(pixel, i) - mean - tilt / norm * (i - (n - 1) / 2.0);
        }
    }

    /** Stretches in which the change from frame to frame stays below half of its median. */
    private static List<Lull> lulls(PixelSeries series) {
        int n = series.frames();
        double[] change = new double[n - 1];
        for (int i = 0; i + 1 < n; i++) {
            double sum = 0;
            for (int p = 0; p < series.pixels(); p++) {
                double d = series.sample(p, i + 1) - (double) series.sample(p, i);
                sum += d * d;
            }
            change[i] = Math.sqrt(sum / series.pixels());
        }
        double[] smooth = smoothed(change, (int) Rounding.even(SMOOTH_SECONDS / series.spacingSeconds() / 2));
        double[] sorted = smooth.clone();
        // The stillest moment sets what noise alone would show.
        double floor = Quantiles.quantile(sorted, sorted.length, 0);
        double limit = floor + CALM * (Quantiles.median(smooth.clone(), smooth.length) - floor);
        List<Lull> lulls = new ArrayList<>();
        int start = -1;
        for (int i = 0; i <= smooth.length; i++) {
            boolean calm = i < smooth.length && smooth[i] < limit;
            if (calm && start < 0) {
                start = i;
            } else if (!calm && start >= 0) {
                double from = series.timeSeconds(start) - series.timeSeconds(0);
                double to = series.timeSeconds(i) - series.timeSeconds(0);
                if (to - from >= SHORTEST_LULL) {
                    lulls.add(new Lull(from, to));
                }
                start = -1;
            }
        }
        return lulls;
    }

    private static double[] smoothed(double[] values, int radius) {
        double[] smooth = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            int from = Math.max(0, i - radius);
            int to = Math.min(values.length - 1, i + radius);
            for (int k = from; k <= to; k++) {
                smooth[i] += values[k] / (to - from + 1);
            }
        }
        return smooth;
    }
}
