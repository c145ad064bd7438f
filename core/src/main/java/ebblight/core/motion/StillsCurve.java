package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Quantiles;

/**
 * R(T) from frames of different exposure times. In each frame the texture of a region is what changes plus what
 * stands; only what stands is common to two frames, so the variance in space of one less its covariance with another
 * is the variance of what changes at that frame's time. A memory that fades as exp(−s/τ) is fitted to these values
 * (Taylor 1922: V(T) = V(0)·2τ/T·(1 − τ/T·(1 − exp(−T/τ)))).
 *
 * <p>Two frames are two samples of waves that come and go, and the memory of real water has more than one scale: the
 * likely range is wide, and wider away from the times that were taken.
 */
final class StillsCurve implements TextureCurve {

    private static final double COARSE_WIDTHS = 1.0 / 24;
    private static final int NOISE_BLOCK = 16;
    private static final int LEAST_BLOCKS = 8;
    private static final double CALM = 0.1;

    private static final double BASE_WIDENING = 0.3;
    private static final double WIDENING_AN_OCTAVE = 0.12;
    private static final double MOST_OCTAVES = 5;
    private static final double SETTLED = 1.0 / 3;
    private static final double TINY = 1e-15;

    private static final double SHORTEST_MEMORY = 1e-3;
    private static final double LONGEST_MEMORY = 1e4;
    private static final int MEMORIES = 400;

    private final double[] seconds;
    private final double memorySeconds;
    private final double atOnce;
    private final double relativeError;
    private final boolean seen;

    private StillsCurve(double[] seconds, double memorySeconds, double atOnce, double relativeError, boolean seen) {
        this.seconds = seconds;
        this.memorySeconds = memorySeconds;
        this.atOnce = atOnce;
        this.relativeError = relativeError;
        this.seen = seen;
    }

    /** The curve of the pixels that {@code mask} marks. */
    static StillsCurve of(LuminanceFrames frames, Stills stills, float[] mask) {
        int w = frames.width();
        int h = frames.height();
        int n = frames.count();
        float[][] detail = new float[n][];
        double[] noise = new double[n];
        double mean = SoftRegions.meanOver(frames.frame(stills.longest()), mask);
        for (int i = 0; i < n; i++) {
            detail[i] = detail(frames.frame(i), mask, w, h);
            noise[i] = noisePerLight(frames.frame(i), w, h) * mean;
        }
        double[] change = new double[n];
        double[] error = new double[n];
        int shortest = stills.shortest();
        int longest = stills.longest();
        for (int i = 0; i < n; i++) {
            int other = i == longest ? shortest : longest;
            double[] value = change(detail[i], detail[other], mask, w, h, noise[i]);
            change[i] = Math.max(value[0], TINY);
            error[i] = Math.max(0.1, value[1] / change[i]);
        }
        double[] seconds = stills.seconds();
        double best = Double.POSITIVE_INFINITY;
        double memory = SHORTEST_MEMORY;
        double atOnce = change[shortest];
        for (int k = 0; k <= MEMORIES; k++) {
            double tau =
                    SHORTEST_MEMORY * StrictMath.exp(StrictMath.log(LONGEST_MEMORY / SHORTEST_MEMORY) * k / MEMORIES);
            double sum = 0;
            double weights = 0;
            for (int i = 0; i < n; i++) {
                double weight = 1 / (error[i] * error[i]);
                sum += weight * StrictMath.log(change[i] / FadingMemory.share(seconds[i], tau));
                weights += weight;
            }
            double level = sum / weights;
            double misfit = 0;
            for (int i = 0; i < n; i++) {
                double d = StrictMath.log(change[i] / FadingMemory.share(seconds[i], tau)) - level;
                misfit += d * d / (error[i] * error[i]);
            }
            if (misfit < best) {
                best = misfit;
                memory = tau;
                atOnce = StrictMath.exp(level);
            }
        }
        boolean seen = change[shortest] > TINY && error[shortest] < 0.5 && change[shortest] > 0.15 * noise[shortest];
        double relative = Math.min(1, (error[shortest] + error[longest]) / 2);
        return new StillsCurve(seconds, memory, atOnce, relative, seen);
    }

    /** Variance of the texture that the shortest and the longest frame share: what no time removes. */
    static double standingVariance(LuminanceFrames frames, Stills stills, float[] mask) {
        float[] a = detail(frames.frame(stills.shortest()), mask, frames.width(), frames.height());
        float[] b = detail(frames.frame(stills.longest()), mask, frames.width(), frames.height());
        double sum = 0;
        double count = 0;
        for (int p = 0; p < mask.length; p++) {
            sum += a[p] * (double) b[p];
            count += mask[p] * (double) mask[p];
        }
        return count > 0 ? Math.max(0, sum / count) : 0;
    }

    /** Variance of a frame's texture less what it shares with another, and its error from the scatter of cells. */
    private static double[] change(float[] a, float[] b, float[] mask, int w, int h, double noise) {
        CellMean mean = new CellMean(w, h);
        for (int p = 0; p < mask.length; p++) {
            if (mask[p] > 0.5f) {
                mean.add(p, a[p] * ((double) a[p] - b[p]));
            }
        }
        return mean.count() > 0 ? new double[] {mean.mean() - noise, mean.error()} : new double[] {0, 0};
    }

    /** A frame less its broad shading inside the mask. */
    private static float[] detail(float[] frame, float[] mask, int w, int h) {
        float[] value = new float[frame.length];
        float[] weight = new float[frame.length];
        float[] scratch = new float[frame.length];
        for (int p = 0; p < value.length; p++) {
            value[p] = frame[p] * mask[p];
        }
        Blur.gaussian(value, value, scratch, w, h, COARSE_WIDTHS * w);
        Blur.gaussian(mask, weight, scratch, w, h, COARSE_WIDTHS * w);
        for (int p = 0; p < value.length; p++) {
            value[p] = (float) ((frame[p] - value[p] / (weight[p] + 1e-6)) * mask[p]);
        }
        return value;
    }

    /** Variance of the noise over luminance: the calmest tenth of blocks, by what is white in space. */
    private static double noisePerLight(float[] frame, int w, int h) {
        int columns = w / NOISE_BLOCK;
        int rows = h / NOISE_BLOCK;
        if (columns * rows < LEAST_BLOCKS) {
            return 0;
        }
        double[] values = new double[columns * rows];
        for (int b = 0; b < values.length; b++) {
            int top = Math.max(1, b / columns * NOISE_BLOCK);
            int left = Math.max(1, b % columns * NOISE_BLOCK);
            double squares = 0;
            double light = 0;
            int count = 0;
            for (int y = top; y < Math.min(h - 1, top + NOISE_BLOCK); y++) {
                for (int x = left; x < Math.min(w - 1, left + NOISE_BLOCK); x++) {
                    int p = y * w + x;
                    double v = WhitePart.at(frame, p, w);
                    squares += v * v;
                    light += frame[p];
                    count++;
                }
            }
            values[b] = squares / count / Math.max(light / count, 1e-4);
        }
        return Quantiles.quantile(values, values.length, CALM);
    }

    @Override
    public double varianceAtOnce() {
        return atOnce;
    }

    @Override
    public double variance(double time) {
        return time > 0 ? atOnce * FadingMemory.share(time, memorySeconds) : atOnce;
    }

    @Override
    public boolean seen() {
        return seen;
    }

    @Override
    public double measuredToSeconds() {
        double most = 0;
        for (double s : seconds) {
            most = Math.max(most, s);
        }
        return most;
    }

    @Override
    public boolean resolved() {
        return memorySeconds < SETTLED * measuredToSeconds();
    }

    @Override
    public boolean coarse() {
        return false;
    }

    @Override
    public double correlationSeconds() {
        return seen ? memorySeconds : 0;
    }

    @Override
    public Remaining at(double time) {
        if (!seen) {
            return new Remaining(time, Math.sqrt(variance(time) / atOnce), 0, 1, Remaining.Basis.TOO_FAR);
        }
        double octaves = Double.POSITIVE_INFINITY;
        for (double s : seconds) {
            octaves = Math.min(octaves, Math.abs(Powers.log2(Math.max(time, TINY) / s)));
        }
        double widening = 1 + BASE_WIDENING + relativeError / 2 + WIDENING_AN_OCTAVE * Math.min(MOST_OCTAVES, octaves);
        double ratio = Math.sqrt(variance(time) / atOnce);
        double longest = measuredToSeconds();
        double fastest = time > longest ? Math.sqrt(variance(longest) / atOnce * longest / time) : ratio;
        return new Remaining(
                time,
                Math.min(1, ratio),
                Math.min(ratio, fastest / widening),
                Math.max(ratio, Math.min(1, ratio * widening)),
                octaves <= 0.5 ? Remaining.Basis.MEASURED : Remaining.Basis.EXTRAPOLATED);
    }
}
