package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.LeastSquares;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Resample;

/**
 * Finds shift and rotation of frames against one reference frame by robust least squares on differences of luminance,
 * coarse to fine, at the most textured places only. Luminance enters as its root, high-passed and scaled, so that
 * changes of light do not matter.
 */
final class FrameAligner {

    private static final double[] SIGMAS = {6, 3, 1.2};
    private static final int STEPS = 6;
    private static final int MOST_POINTS = 12_000;
    private static final int FEWEST_POINTS = 40;
    private static final double HIGH_PASS_SIGMA = 12;
    private static final double FARTHEST = 0.3;
    private static final double AGREES_PIXELS = 0.35;

    /** A quarter of all normal deviates are smaller in size. */
    private static final double QUARTER_OF_NORMAL = 0.3186;

    /**
     * Mean square central difference of white noise after the finest blur, (1 − exp(−1 / σ²)) / 2 of its variance, over
     * the variance of the difference of two such frames, which is twice as large.
     */
    private static final double NOISE_GRADIENT = (1 - StrictMath.exp(-1 / (1.2 * 1.2))) / 4;

    private final int width;
    private final int height;
    private final Level[] levels;

    private FrameAligner(int width, int height, Level[] levels) {
        this.width = width;
        this.height = height;
        this.levels = levels;
    }

    /**
     * Where a frame lies.
     *
     * @param agreement share of the textured weight that agrees
     * @param hold mean square gradient along the direction that has least of it, over what noise alone would show
     */
    record Fit(Placement placement, double agreement, double hold) {}

    /** Places of the reference that are used at one scale, with value, gradients and weight. */
    private record Level(int[] pixels, float[] values, float[] gradientX, float[] gradientY, float[] weight) {}

    /** Room for one thread's work. */
    record Scratch(float[] normal, float[] smooth, float[] work, double[] residual, double[] sample) {}

    Scratch scratch() {
        int n = width * height;
        return new Scratch(
                new float[n], new float[n], new float[n], new double[MOST_POINTS], new double[MOST_POINTS / 8 + 1]);
    }

    static FrameAligner of(float[] frame, int width, int height, float[] weight) {
        int n = width * height;
        float[] normal = new float[n];
        float[] smooth = new float[n];
        float[] work = new float[n];
        normalise(frame, normal, work, smooth, width, height);
        Level[] levels = new Level[SIGMAS.length];
        for (int k = 0; k < levels.length; k++) {
            Blur.gaussian(normal, smooth, work, width, height, SIGMAS[k]);
            levels[k] = level(smooth, width, height, weight);
        }
        return new FrameAligner(width, height, levels);
    }

    private static void normalise(float[] frame, float[] normal, float[] work, float[] low, int width, int height) {
        int n = normal.length;
        for (int p = 0; p < n; p++) {
            normal[p] = (float) Math.sqrt(Math.max(frame[p], 0));
        }
        Blur.gaussian(normal, low, work, width, height, HIGH_PASS_SIGMA);
        double sum = 0;
        double squares = 0;
        for (int p = 0; p < n; p++) {
            double v = normal[p] - low[p];
            normal[p] = (float) v;
            sum += v;
            squares += v * v;
        }
        double deviation = Math.sqrt(Math.max(0, squares / n - sum * sum / n / n));
        double scale = 0.1 / (deviation + 1e-3);
        for (int p = 0; p < n; p++) {
            normal[p] = (float) (normal[p] * scale);
        }
    }

    private static Level level(float[] plane, int width, int height, float[] weight) {
        int border = 4;
        int candidates = 0;
        float[] energy = new float[Math.max(0, width - 2 * border) * Math.max(0, height - 2 * border)];
        int[] at = new int[energy.length];
        for (int y = border; y < height - border; y++) {
            for (int x = border; x < width - border; x++) {
                int p = y * width + x;
                if (weight[p] > 0) {
                    double gx = (plane[p + 1] - (double) plane[p - 1]) / 2;
                    double gy = (plane[p + width] - (double) plane[p - width]) / 2;
                    energy[candidates] = (float) (gx * gx + gy * gy);
                    at[candidates++] = p;
                }
            }
        }
        if (candidates == 0) {
            return new Level(new int[0], new float[0], new float[0], new float[0], new float[0]);
        }
        float limit = (float) Quantiles.median(energy, candidates);
        int chosen = 0;
        for (int k = 0; k < candidates; k++) {
            if (energy[k] > limit) {
                at[chosen++] = at[k];
            }
        }
        int step = Math.max(1, (chosen + MOST_POINTS - 1) / MOST_POINTS);
        int used = (chosen + step - 1) / step;
        Level level = new Level(new int[used], new float[used], new float[used], new float[used], new float[used]);
        for (int k = 0; k < used; k++) {
            int p = at[k * step];
            level.pixels[k] = p;
            level.values[k] = plane[p];
            level.gradientX[k] = (float) ((plane[p + 1] - (double) plane[p - 1]) / 2);
            level.gradientY[k] = (float) ((plane[p + width] - (double) plane[p - width]) / 2);
            level.weight[k] = weight[p];
        }
        return level;
    }

    /** Finds where {@code frame} lies, starting at {@code start}; agreement 0 and {@code start} where it cannot tell. */
    Fit align(float[] frame, Placement start, Scratch scratch) {
        normalise(frame, scratch.normal, scratch.work, scratch.smooth, width, height);
        Placement q = start;
        for (int k = 0; k < levels.length; k++) {
            if (levels[k].pixels.length < FEWEST_POINTS) {
                return new Fit(start, 0, 0);
            }
            Blur.gaussian(scratch.normal, scratch.smooth, scratch.work, width, height, SIGMAS[k]);
            for (int step = 0; step < STEPS; step++) {
                Placement next = step(levels[k], scratch, q);
                if (!(Math.sqrt(next.dx() * next.dx() + next.dy() * next.dy()) < FARTHEST * width)) {
                    return new Fit(start, 0, 0);
                }
                double moved = Math.abs(next.dx() - q.dx())
                        + Math.abs(next.dy() - q.dy())
                        + Math.abs(next.angle() - q.angle()) * width / 2;
                q = next;
                if (moved < 0.005) {
                    break;
                }
            }
        }
        Level finest = levels[levels.length - 1];
        residuals(finest, scratch, q);
        double agreeing = 0;
        double all = 0;
        for (int i = 0; i < finest.pixels.length; i++) {
            double gx = finest.gradientX[i];
            double gy = finest.gradientY[i];
            double energy = (gx * gx + gy * gy) * finest.weight[i];
            if (!Double.isNaN(scratch.residual[i])) {
                all += energy;
                agreeing += Math.abs(scratch.residual[i]) / Math.sqrt(gx * gx + gy * gy + 1e-6) < AGREES_PIXELS
                        ? energy
                        : 0;
            }
        }
        return new Fit(q, agreeing / (all + 1e-12), hold(finest, scratch));
    }

    /** From residuals at the finest level, where a quarter of the places or more stand still. */
    private static double hold(Level level, Scratch scratch) {
        int count = 0;
        for (int i = 0; i < level.pixels.length; i += 8) {
            if (!Double.isNaN(scratch.residual[i])) {
                scratch.sample[count++] = Math.abs(scratch.residual[i]);
            }
        }
        if (count == 0) {
            return 0;
        }
        double deviation = Quantiles.quantile(scratch.sample, count, 0.25) / QUARTER_OF_NORMAL;
        double xx = 0;
        double xy = 0;
        double yy = 0;
        double weight = 1e-30;
        for (int i = 0; i < level.pixels.length; i++) {
            double w = level.weight[i];
            xx += w * level.gradientX[i] * level.gradientX[i];
            xy += w * level.gradientX[i] * level.gradientY[i];
            yy += w * level.gradientY[i] * level.gradientY[i];
            weight += w;
        }
        double least = (xx + yy) / 2 - Math.sqrt((xx - yy) * (xx - yy) / 4 + xy * xy);
        return least / weight / (NOISE_GRADIENT * deviation * deviation + 1e-12);
    }

    /** Differences reference − frame at the level's places; NaN where the place lies outside the frame. */
    private void residuals(Level level, Scratch scratch, Placement q) {
        Placing placing = Placing.of(q, width, height);
        for (int i = 0; i < level.pixels.length; i++) {
            int p = level.pixels[i];
            double x = placing.xAt(p, width);
            double y = placing.yAt(p, width);
            scratch.residual[i] = x < 1 || y < 1 || x > width - 2 || y > height - 2
                    ? Double.NaN
                    : level.values[i] - Resample.mirrored(scratch.smooth, width, height, x, y);
        }
    }

    private Placement step(Level level, Scratch scratch, Placement q) {
        residuals(level, scratch, q);
        int n = level.pixels.length;
        int count = 0;
        for (int i = 0; i < n; i += 8) {
            if (!Double.isNaN(scratch.residual[i])) {
                scratch.sample[count++] = Math.abs(scratch.residual[i]);
            }
        }
        if (count < FEWEST_POINTS / 8) {
            return new Placement(Double.NaN, 0, 0);
        }
        double spread = 1.48 * Quantiles.median(scratch.sample, count) + 1e-4;
        double cx = (width - 1) / 2.0;
        double cy = (height - 1) / 2.0;
        double[][] a = new double[3][3];
        double[] b = new double[3];
        for (int i = 0; i < n; i++) {
            double r = scratch.residual[i];
            if (Double.isNaN(r)) {
                continue;
            }
            double t = r / (2 * spread);
            double robust = 1 + t * t;
            double v = level.weight[i] / (robust * robust);
            double jx = level.gradientX[i];
            double jy = level.gradientY[i];
            int row = level.pixels[i] / width;
            int column = level.pixels[i] - row * width;
            double ja = -jx * (row - cy) + jy * (column - cx);
            a[0][0] += v * jx * jx;
            a[0][1] += v * jx * jy;
            a[0][2] += v * jx * ja;
            a[1][1] += v * jy * jy;
            a[1][2] += v * jy * ja;
            a[2][2] += v * ja * ja;
            b[0] += v * jx * r;
            b[1] += v * jy * r;
            b[2] += v * ja * r;
        }
        double little = 1e-9 * a[0][0] + 1e-30;
        a[0][0] += little;
        a[1][1] += little;
        a[2][2] += little + 1e-6 * a[0][0] * width * width;
        a[1][0] = a[0][1];
        a[2][0] = a[0][2];
        a[2][1] = a[1][2];
        double[] d = LeastSquares.solve(a, b);
        return new Placement(q.dx() + d[0], q.dy() + d[1], q.angle() + d[2]);
    }
}
