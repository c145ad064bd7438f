package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Guided;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Resample;
import ebblight.core.numeric.Work;
import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * The drifting sky as a layer of its own: what it looks like in the middle of the clip where nothing stands before it,
 * and for which share of the time each place shows it. This is what parts posts and branches from the cloud behind.
 */
final class SkyLayer {

    private static final int SAMPLES = 15;
    private static final double DENSEST = 0.45;

    private final Flow flow;
    private final float[][] colour;
    private final float[] seen;
    private final double middleSeconds;

    /** {@code colour} is only what the drift carries along. */
    private SkyLayer(Flow flow, float[][] colour, float[] seen, double middleSeconds) {
        this.flow = flow;
        this.colour = colour;
        this.seen = seen;
        this.middleSeconds = middleSeconds;
    }

    /** Share of the time each place shows the layer, 0 to 1. */
    float[] seen() {
        return seen;
    }

    static SkyLayer of(LuminanceFrames frames, Clip clip, SoftRegions regions, Flow flow, float[] mean, Work work) {
        int w = frames.width();
        int h = frames.height();
        int n = w * h;
        int[] used = IntStream.range(0, Math.min(SAMPLES, frames.count()))
                .map(k -> k * (frames.count() - 1) / Math.max(1, Math.min(SAMPLES, frames.count()) - 1))
                .distinct()
                .toArray();
        double[] times = frames.timesSeconds();
        double middle = (times[0] + times[times.length - 1]) / 2;
        float[] cloud = regions.share(Kind.DRIFTING);
        float[][] light = new float[used.length][];
        float[][][] moved = new float[3][used.length][];
        work.forEach(used.length, k -> {
            double dt = times[used[k]] - middle;
            light[k] = shifted(frames.frame(used[k]), flow, dt);
            float[] plane = new float[n];
            double gain = 1.0 / frames.drift().gain()[used[k]];
            for (int c = 0; c < 3; c++) {
                clip.channel(used[k], c, plane);
                for (int p = 0; p < n; p++) {
                    plane[p] = (float) (plane[p] * gain);
                }
                moved[c][k] = shifted(plane, flow, dt);
            }
        });
        float[] layer = new float[n];
        float[] spread = new float[n];
        float[][] colour = new float[3][n];
        int dense = Math.max(Math.min(2, used.length), (int) (DENSEST * used.length));
        work.forEach(h, y -> densest(light, moved, y * w, (y + 1) * w, dense, layer, spread, colour));
        float[] still = deviation(frames, used);
        float noise = noiseOfLayer(spread, cloud);
        float[] trust = new float[n];
        for (int p = 0; p < n; p++) {
            double core = clip01(2 * cloud[p] - 0.6);
            trust[p] = (float) (core * clip01(2.2 - 1.2 * spread[p] / Math.max(still[p], noise)));
        }
        float[] filled = fill(layer, trust, w, h);
        float[] room = skyRange(layer, filled, trust, w, h);
        float[] tolerance = tolerance(spread, trust, filled, w, h);
        addGlimpses(regions, layer, filled, room, tolerance, spread, trust, w, h);
        float[] whole = fill(layer, trust, w, h);
        work.forEach(3, c -> colour[c] = fill(colour[c], trust, w, h));
        float[] seen = seen(frames, used, times, middle, whole, tolerance, flow, work);
        float[] sway = regions.share(Kind.SWAYING);
        float[] guide = new float[n];
        for (int p = 0; p < n; p++) {
            double near = clip01((Math.max(cloud[p], sway[p]) - 0.15) / 0.35);
            seen[p] = (float) (clip01((seen[p] - 0.1) / 0.75) * near);
            guide[p] = (float) Math.sqrt(Math.max(mean[p], 0));
        }
        Guided.filter(seen, guide, seen, w, h, 4, 0.02 * 0.02);
        for (int p = 0; p < n; p++) {
            seen[p] = (float) clip01(seen[p]);
        }
        CarriedLight goes = carriedLight(frames, whole, seen, middle, flow, work);
        work.forEach(3, c -> colour[c] = goes.carried(colour[c], w, h));
        return new SkyLayer(flow, colour, seen, (times[times.length - 1] - times[0]) / 2);
    }

    /** What of the layer goes with the drift, from the first and the last third of the clip. */
    private static CarriedLight carriedLight(
            LuminanceFrames frames, float[] layer, float[] seen, double middle, Flow flow, Work work) {
        double[] times = frames.timesSeconds();
        int third = Math.max(1, times.length / 3);
        int last = times.length - third;
        float[] happened = frames.mean(last, times.length);
        float[] before = frames.mean(0, third);
        float[] carried = DriftBlur.mean(layer, flow, times[last] - middle, times[times.length - 1] - middle, work);
        float[] carriedBefore = DriftBlur.mean(layer, flow, times[0] - middle, times[third - 1] - middle, work);
        for (int p = 0; p < happened.length; p++) {
            happened[p] -= before[p];
            carried[p] -= carriedBefore[p];
        }
        return CarriedLight.of(seen, happened, carried, flow.width(), flow.height(), work);
    }

    private static double clip01(double v) {
        return Math.max(0, Math.min(1, v));
    }

    private static float[] shifted(float[] plane, Flow flow, double seconds) {
        int w = flow.width();
        int h = flow.height();
        float[] out = new float[plane.length];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                out[y * w + x] =
                        (float) Resample.mirrored(plane, w, h, x + flow.u(x, y) * seconds, y + flow.v(x, y) * seconds);
            }
        }
        return out;
    }

    /** Mean of the densest part of the samples of each pixel: what is there most of the time. */
    private static void densest(
            float[][] light,
            float[][][] moved,
            int from,
            int to,
            int dense,
            float[] layer,
            float[] spread,
            float[][] colour) {
        int n = light.length;
        long[] order = new long[n];
        for (int p = from; p < to; p++) {
            for (int k = 0; k < n; k++) {
                // luminance is 0 or more, so its bits sort like its values
                order[k] = (long) Float.floatToIntBits(Math.max(0, light[k][p])) << 8 | k;
            }
            Arrays.sort(order);
            int best = 0;
            double width = Double.POSITIVE_INFINITY;
            for (int j = 0; j + dense <= n; j++) {
                double d = value(order[j + dense - 1]) - (double) value(order[j]);
                if (d < width) {
                    width = d;
                    best = j;
                }
            }
            double sum = 0;
            double r = 0;
            double g = 0;
            double b = 0;
            for (int j = best; j < best + dense; j++) {
                int k = (int) (order[j] & 0xFF);
                sum += light[k][p];
                r += moved[0][k][p];
                g += moved[1][k][p];
                b += moved[2][k][p];
            }
            layer[p] = (float) (sum / dense);
            colour[0][p] = (float) (r / dense);
            colour[1][p] = (float) (g / dense);
            colour[2][p] = (float) (b / dense);
            spread[p] = (float) (width / 0.9 + 1e-5);
        }
    }

    private static float value(long key) {
        return Float.intBitsToFloat((int) (key >> 8));
    }

    private static float[] deviation(LuminanceFrames frames, int[] used) {
        int n = frames.pixels();
        float[] out = new float[n];
        for (int p = 0; p < n; p++) {
            double sum = 0;
            double squares = 0;
            for (int i : used) {
                double v = frames.frame(i)[p];
                sum += v;
                squares += v * v;
            }
            out[p] = (float) Math.sqrt(Math.max(0, squares / used.length - sum * sum / used.length / used.length));
        }
        return out;
    }

    private static float noiseOfLayer(float[] spread, float[] cloud) {
        float[] values = new float[spread.length];
        int count = 0;
        for (int p = 0; p < spread.length; p++) {
            if (cloud[p] > 0.6f) {
                values[count++] = spread[p];
            }
        }
        return count == 0 ? 0 : (float) Quantiles.median(values, count);
    }

    /** Fills what is not trusted from the trusted places around, ever wider. */
    private static float[] fill(float[] plane, float[] trust, int w, int h) {
        int n = plane.length;
        float[] out = new float[n];
        float[] weight = trust.clone();
        float[] known = new float[n];
        float[] blurredTrust = new float[n];
        float[] blurred = new float[n];
        float[] work = new float[n];
        for (int p = 0; p < n; p++) {
            known[p] = plane[p] * trust[p];
            out[p] = known[p];
        }
        for (double r = 2; r < w; r *= 2) {
            Blur.gaussian(trust, blurredTrust, work, w, h, r);
            Blur.gaussian(known, blurred, work, w, h, r);
            for (int p = 0; p < n; p++) {
                double k = clip01(8.0 * blurredTrust[p]) * (1 - Math.min(weight[p], 1));
                out[p] += (float) (k * blurred[p] / (blurredTrust[p] + 1e-4));
                weight[p] += (float) k;
            }
        }
        for (int p = 0; p < n; p++) {
            out[p] = (float) (out[p] / Math.max(weight[p], 1e-3));
        }
        return out;
    }

    /** How far the sky's luminance may lie from the filled layer round here. */
    private static float[] skyRange(float[] layer, float[] filled, float[] trust, int w, int h) {
        int n = layer.length;
        float[] work = new float[n];
        float[] square = new float[n];
        for (int p = 0; p < n; p++) {
            double d = layer[p] - (double) filled[p];
            square[p] = (float) (d * d);
        }
        float[] range = fill(square, trust, w, h);
        float[] low = new float[n];
        Blur.gaussian(filled, low, work, w, h, 25);
        for (int p = 0; p < n; p++) {
            double d = filled[p] - (double) low[p];
            square[p] = (float) (d * d);
        }
        Blur.gaussian(square, square, work, w, h, 25);
        for (int p = 0; p < n; p++) {
            range[p] = (float) (Math.sqrt(Math.max(range[p] + (double) square[p], 0)) + 0.03 * filled[p]);
        }
        return range;
    }

    private static float[] tolerance(float[] spread, float[] trust, float[] filled, int w, int h) {
        int n = spread.length;
        float[] work = new float[n];
        float[] a = new float[n];
        float[] b = new float[n];
        for (int p = 0; p < n; p++) {
            a[p] = (float) ((double) spread[p] * spread[p] * trust[p]);
        }
        Blur.gaussian(a, a, work, w, h, 10);
        Blur.gaussian(trust, b, work, w, h, 10);
        for (int p = 0; p < n; p++) {
            double usual = 3 * Math.sqrt(Math.max(a[p], 0) / (Math.max(b[p], 0) + 1e-3));
            a[p] = (float) (Math.max(usual, 0.04 * filled[p]) + 0.004);
        }
        return a;
    }

    /** Trusts what is seen of the sky between swaying branches. */
    private static void addGlimpses(
            SoftRegions regions,
            float[] layer,
            float[] filled,
            float[] room,
            float[] tolerance,
            float[] spread,
            float[] trust,
            int w,
            int h) {
        float[] near = new float[layer.length];
        Blur.gaussian(regions.share(Kind.DRIFTING), near, new float[layer.length], w, h, 25);
        float[] sway = regions.share(Kind.SWAYING);
        for (int p = 0; p < layer.length; p++) {
            double d = (layer[p] - (double) filled[p]) / (2.0 * room[p] + 1e-6);
            double glimpse = sway[p]
                    * clip01(4.0 * near[p])
                    * clip01(2 - (double) spread[p] / tolerance[p])
                    * StrictMath.exp(-0.5 * d * d);
            trust[p] = (float) Math.max(trust[p], glimpse);
        }
    }

    private static float[] seen(
            LuminanceFrames frames,
            int[] used,
            double[] times,
            double middle,
            float[] layer,
            float[] tolerance,
            Flow flow,
            Work work) {
        float[][] each = new float[used.length][];
        work.forEach(used.length, k -> {
            float[] there = shifted(layer, flow, middle - times[used[k]]);
            float[] frame = frames.frame(used[k]);
            for (int p = 0; p < there.length; p++) {
                double e = (frame[p] - (double) there[p]) / tolerance[p];
                there[p] = (float) StrictMath.exp(-0.5 * e * e);
            }
            each[k] = there;
        });
        float[] seen = new float[layer.length];
        for (int p = 0; p < seen.length; p++) {
            double sum = 0;
            for (float[] one : each) {
                sum += one[p];
            }
            seen[p] = (float) (sum / used.length);
        }
        return seen;
    }

    /** What the drift carries along of channel {@code c}, averaged from the clip's start over {@code seconds}. */
    float[] blurred(int c, double seconds, Work work) {
        return DriftBlur.mean(colour[c], flow, -middleSeconds, seconds - middleSeconds, work);
    }

    /** Share of the layer's streaks over {@code seconds} that start inside the picture: the rest is invented. */
    double known(double seconds) {
        int w = flow.width();
        int h = flow.height();
        double sum = 0;
        double all = 0;
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                double u = flow.u(x, y);
                double v = flow.v(x, y);
                double t = seconds;
                t = Math.min(t, (u > 0 ? x : w - 1 - x) / Math.max(Math.abs(u), 1e-6));
                t = Math.min(t, (v > 0 ? y : h - 1 - y) / Math.max(Math.abs(v), 1e-6));
                sum += seen[y * w + x] * t / seconds;
                all += seen[y * w + x];
            }
        }
        return all > 0 ? sum / all : 1;
    }
}
