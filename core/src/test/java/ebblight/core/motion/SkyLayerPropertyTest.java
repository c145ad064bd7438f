package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.Arrays;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** The layer of the sky step by step in double, pixel by pixel, on clouds that drift behind a post and a branch. */
class SkyLayerPropertyTest {

    private static final int W = 37;
    private static final int H = 26;
    private static final int N = W * H;
    private static final double SPACING = 0.25;

    private final float[][] share = new float[4][N];

    private Clip clip(int count, double u, double v, long seed) {
        double[] field = Plain.noise(W + 40, H + 40, 2, seed);
        return Plain.clip(W, H, count, SPACING, (x, y, t) -> {
            boolean post = x >= 8 && x < 11;
            boolean branch = Math.abs(x - 24 - 2 * Math.sin(3 * t + 0.3 * y)) < 1.5 && y < 16;
            double cloud = 0.5 + 1.5 * (Plain.between(field, W + 40, H + 40, x + 20 - u * t, y + 20 - v * t) - 0.5);
            double chance = 0.01 * (Plain.noise(1, 1, 0, seed + x + 977L * y + Math.round(1e6 * t))[0] - 0.5);
            return (post ? 0.12 : branch ? 0.15 : cloud) + chance;
        });
    }

    private SoftRegions regions() {
        for (int p = 0; p < N; p++) {
            int x = p % W;
            double fixed = Math.max(0, 1 - Math.abs(x - 9) / 2.5);
            double sways = Math.max(0, 0.8 - Math.abs(x - 24) / 6.0);
            double ground = Math.max(0, (p / W - 19) / 7.0);
            double left = Math.max(0.02, 1 - fixed - sways - ground);
            double all = fixed + sways + ground + left;
            share[Kind.FIXED.column()][p] = (float) (fixed / all);
            share[Kind.SWAYING.column()][p] = (float) (sways / all);
            share[Kind.FLOWING.column()][p] = (float) (ground / all);
            share[Kind.DRIFTING.column()][p] = (float) (left / all);
        }
        return new SoftRegions(W, H, share);
    }

    @Property(tries = 4)
    void theLayerIsItsDefinition(
            @ForAll @IntRange(min = 6, max = 24) int count,
            @ForAll @DoubleRange(min = -3, max = 3) double u,
            @ForAll @DoubleRange(min = -1, max = 1) double v,
            @ForAll @IntRange(min = 0, max = 99) int seed) {
        Clip clip = clip(count, u, v, seed);
        LuminanceFrames frames = LuminanceFrames.of(clip, Work.alone());
        Flow flow = new Flow(u, 0.05, -0.02, v, 0.03, 0.04, W, H);
        float[] mean = frames.mean(0, count);
        SkyLayer fast = SkyLayer.of(frames, clip, regions(), flow, mean, Work.alone());

        int samples = Math.min(15, count);
        int[] used = IntStream.range(0, samples)
                .map(k -> k * (count - 1) / (samples - 1))
                .toArray();
        double middle = SPACING * (count - 1) / 2;
        double[] cloud = Plain.wide(share[Kind.DRIFTING.column()]);
        double[] sway = Plain.wide(share[Kind.SWAYING.column()]);
        double[] layer = new double[N];
        double[] spread = new double[N];
        double[] deviation = new double[N];
        densest(frames, used, middle, flow, layer, spread, deviation);
        double noise = median(spread, cloud);
        double[] trust =
                plane(p -> clip(2 * cloud[p] - 0.6) * clip(2.2 - 1.2 * spread[p] / Math.max(deviation[p], noise)));
        double[] filled = fill(layer, trust);
        double[] rough = fill(plane(p -> Math.pow(layer[p] - filled[p], 2)), trust);
        double[] low = Plain.gaussian(filled, W, H, 25);
        double[] broad = Plain.gaussian(plane(p -> Math.pow(filled[p] - low[p], 2)), W, H, 25);
        double[] squares = Plain.gaussian(plane(p -> spread[p] * spread[p] * trust[p]), W, H, 10);
        double[] trusted = Plain.gaussian(trust, W, H, 10);
        double[] tolerance =
                plane(p -> Math.max(3 * Math.sqrt(squares[p] / (trusted[p] + 1e-3)), 0.04 * filled[p]) + 0.004);
        double[] near = Plain.gaussian(cloud, W, H, 25);
        double[] more = plane(p -> {
            double room = Math.sqrt(rough[p] + broad[p]) + 0.03 * filled[p];
            double off = (layer[p] - filled[p]) / (2 * room + 1e-6);
            double glimpse =
                    sway[p] * clip(4 * near[p]) * clip(2 - spread[p] / tolerance[p]) * Math.exp(-off * off / 2);
            return Math.max(trust[p], glimpse);
        });
        double[] whole = fill(layer, more);
        double[] raw = new double[N];
        for (int i : used) {
            for (int p = 0; p < N; p++) {
                double t = middle - SPACING * i;
                double there = Plain.between(whole, W, H, p % W + t * u(flow, p), Math.floorDiv(p, W) + t * v(flow, p));
                double e = (frames.frame(i)[p] - there) / tolerance[p];
                raw[p] += Math.exp(-e * e / 2) / samples;
            }
        }
        double[] seen = plane(p -> clip((raw[p] - 0.1) / 0.75) * clip((Math.max(cloud[p], sway[p]) - 0.15) / 0.35));
        seen = guided(seen, plane(p -> Math.sqrt(mean[p])));
        for (int p = 0; p < N; p++) {
            seen[p] = clip(seen[p]);
            assertThat((double) fast.seen()[p]).as("pixel %d", p).isCloseTo(seen[p], within(2e-3));
        }
        assertThat(fast.known(5)).isCloseTo(known(flow, seen, 5), within(2e-3));
        float[] goes = carried(frames, Plain.narrow(whole), Plain.narrow(seen), middle, flow);
        float[] expected = DriftBlur.mean(goes, flow, -middle, 5 - middle, Work.alone());
        float[] blurred = fast.blurred(1, 5, Work.alone());
        for (int p = 0; p < N; p++) {
            assertThat((double) blurred[p]).isCloseTo(expected[p], within(2e-3));
        }
    }

    /** Behind a post that stands the sky is not seen, in the open it is. */
    @Property(tries = 3)
    void thePostIsNoSky(@ForAll @IntRange(min = 0, max = 99) int seed) {
        Clip clip = clip(20, 2.5, 0.3, seed);
        LuminanceFrames frames = LuminanceFrames.of(clip, Work.alone());
        Flow flow = new Flow(2.5, 0, 0, 0.3, 0, 0, W, H);
        float[] seen = SkyLayer.of(frames, clip, regions(), flow, frames.mean(0, 20), Work.alone())
                .seen();
        double post = 0;
        double open = 0;
        for (int y = 3; y < 15; y++) {
            post += seen[y * W + 9] / 12;
            open += seen[y * W + 16] / 12;
        }
        assertThat(post).isLessThan(0.25);
        assertThat(open).isGreaterThan(0.75);
    }

    private interface Value {
        double at(int p);
    }

    private static double[] plane(Value value) {
        return IntStream.range(0, N).mapToDouble(value::at).toArray();
    }

    private static double clip(double v) {
        return v < 0 ? 0 : v > 1 ? 1 : v;
    }

    private static double u(Flow flow, int p) {
        return flow.u(p % W, Math.floorDiv(p, W));
    }

    private static double v(Flow flow, int p) {
        return flow.v(p % W, Math.floorDiv(p, W));
    }

    /** Of the samples brought to the middle, those 45 % (two at least) that lie closest together. */
    private static void densest(
            LuminanceFrames frames,
            int[] used,
            double middle,
            Flow flow,
            double[] layer,
            double[] spread,
            double[] deviation) {
        int dense = Math.max(2, (int) (0.45 * used.length));
        double[][] frame =
                Arrays.stream(used).mapToObj(i -> Plain.wide(frames.frame(i))).toArray(double[][]::new);
        for (int p = 0; p < N; p++) {
            double[] values = new double[used.length];
            double[] still = new double[used.length];
            for (int k = 0; k < used.length; k++) {
                double t = SPACING * used[k] - middle;
                values[k] = Plain.between(frame[k], W, H, p % W + t * u(flow, p), Math.floorDiv(p, W) + t * v(flow, p));
                still[k] = frame[k][p];
            }
            Arrays.sort(values);
            double width = Double.POSITIVE_INFINITY;
            for (int from = 0; from + dense <= values.length; from++) {
                double[] part = Arrays.copyOfRange(values, from, from + dense);
                if (part[dense - 1] - part[0] < width) {
                    width = part[dense - 1] - part[0];
                    layer[p] = Arrays.stream(part).average().orElseThrow();
                }
            }
            spread[p] = width / 0.9 + 1e-5;
            double mean = Arrays.stream(still).average().orElseThrow();
            deviation[p] = Math.sqrt(Arrays.stream(still)
                    .map(s -> (s - mean) * (s - mean))
                    .average()
                    .orElseThrow());
        }
    }

    private static double median(double[] spread, double[] cloud) {
        double[] values = IntStream.range(0, N)
                .filter(p -> cloud[p] > 0.6)
                .mapToDouble(p -> spread[p])
                .sorted()
                .toArray();
        return (values[(values.length - 1) / 2] + values[values.length / 2]) / 2;
    }

    /** Means of the trusted, weighted, over 2, 4, 8 … px, each where what is known so far leaves room. */
    private static double[] fill(double[] plane, double[] trust) {
        double[] out = plane(p -> plane[p] * trust[p]);
        double[] weight = trust.clone();
        for (int r = 2; r < W; r *= 2) {
            double[] bold = Plain.gaussian(trust, W, H, r);
            double[] known = Plain.gaussian(plane(p -> plane[p] * trust[p]), W, H, r);
            for (int p = 0; p < N; p++) {
                double room = clip(8 * bold[p]) * (1 - clip(weight[p]));
                out[p] += room * known[p] / (bold[p] + 1e-4);
                weight[p] += room;
            }
        }
        return plane(p -> out[p] / Math.max(weight[p], 1e-3));
    }

    /** He, Sun, Tang 2010, equations 5, 6 and 8, in boxes of 9 px. */
    private static double[] guided(double[] plane, double[] guide) {
        double[] mg = box(guide);
        double[] mp = box(plane);
        double[] both = box(plane(p -> guide[p] * plane[p]));
        double[] square = box(plane(p -> guide[p] * guide[p]));
        double[] a = plane(p -> (both[p] - mg[p] * mp[p]) / (square[p] - mg[p] * mg[p] + 4e-4));
        double[] b = plane(p -> mp[p] - a[p] * mg[p]);
        double[] ma = box(a);
        double[] mb = box(b);
        return plane(p -> ma[p] * guide[p] + mb[p]);
    }

    private static double[] box(double[] plane) {
        return plane(p -> {
            double sum = 0;
            for (int dy = -4; dy <= 4; dy++) {
                for (int dx = -4; dx <= 4; dx++) {
                    sum += plane[Plain.mirrored(p / W + dy, H) * W + Plain.mirrored(p % W + dx, W)] / 81;
                }
            }
            return sum;
        });
    }

    /** Each streak followed back in small steps: how much of it comes from inside the picture. */
    private static double known(Flow flow, double[] seen, double seconds) {
        int steps = 4000;
        double inside = 0;
        double all = 0;
        for (int p = 0; p < N; p++) {
            int count = 0;
            for (int k = 0; k < steps; k++) {
                double t = seconds * (k + 0.5) / steps;
                double x = p % W - u(flow, p) * t;
                double y = Math.floorDiv(p, W) - v(flow, p) * t;
                count += x >= 0 && y >= 0 && x <= W - 1 && y <= H - 1 ? 1 : 0;
            }
            inside += seen[p] * count / steps;
            all += seen[p];
        }
        return inside / all;
    }

    /** What goes with the drift, by the two ends of the clip; {@link CarriedLight} and {@link DriftBlur} have tests. */
    private static float[] carried(LuminanceFrames frames, float[] whole, float[] seen, double middle, Flow flow) {
        int third = frames.count() / 3;
        int last = frames.count() - third;
        float[] late = DriftBlur.mean(whole, flow, SPACING * last - middle, middle, Work.alone());
        float[] early = DriftBlur.mean(whole, flow, -middle, SPACING * (third - 1) - middle, Work.alone());
        double[] first = Plain.mean(frames, 0, third);
        double[] end = Plain.mean(frames, last, frames.count());
        float[] happened = Plain.narrow(plane(p -> end[p] - first[p]));
        float[] went = Plain.narrow(plane(p -> late[p] - (double) early[p]));
        return CarriedLight.of(seen, happened, went, W, H, Work.alone()).carried(whole, W, H);
    }
}
