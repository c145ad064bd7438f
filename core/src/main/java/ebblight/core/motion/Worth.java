package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Rounding;
import java.util.ArrayList;
import java.util.List;

/**
 * What a shutter time gains against a single frame.
 *
 * @param seconds exposure time
 * @param changedFraction share of pixels that differ from one frame by more than three times the noise and 5 %
 * @param separation how the standing subject stands off what moves round it: E/(E + t), E the median step of ln Y
 *     across its edge, t the contrast left in a ring round it; 0 to 1
 * @param colour mean chroma (CIE 1976 L*a*b*, D65) against that of one frame
 */
public record Worth(double seconds, double changedFraction, double separation, double colour) {

    private static final double LEAST_CHANGE = 0.05;
    private static final double NOISE_DEVIATIONS = 3;
    private static final int EDGE_PIXELS = 2;
    private static final double RING = 0.03;
    private static final double DARKEST = 1e-4;

    /** The gain of every exposure that a preview can show. */
    public static final class Meter {
        private final Preview preview;
        private final RgbPicture one;
        private final float[] oneLight;
        private final float[] limit;
        private final int[][] edge;
        private final float[] ring;
        private final double oneChroma;

        /** A meter for the pictures of {@code preview}, against the middle frame of its clip. */
        public Meter(Measurement measurement, Preview preview) {
            this.preview = preview;
            Clip clip = measurement.survey().clip();
            int w = clip.width();
            int h = clip.height();
            int n = w * h;
            one = RgbPicture.black(w, h);
            for (int c = 0; c < 3; c++) {
                clip.channel(clip.frames() / 2, c, one.plane(c));
            }
            oneLight = luminance(one);
            float[] mean = measurement.survey().parts().mean();
            limit = new float[n];
            for (int p = 0; p < n; p++) {
                limit[p] = (float)
                        Math.max(NOISE_DEVIATIONS * Math.sqrt(measurement.noiseAt(mean[p])), LEAST_CHANGE * mean[p]);
            }
            byte[] labels = measurement.survey().regions().labels();
            edge = edge(labels, w, h);
            ring = ring(labels, w, h);
            oneChroma = chroma(one);
        }

        /** What {@code seconds} gain. */
        public Worth at(double seconds) {
            RgbPicture picture = preview.render(seconds).picture();
            float[] light = luminance(picture);
            int changed = 0;
            for (int p = 0; p < light.length; p++) {
                changed += Math.abs(light[p] - (double) oneLight[p]) > limit[p] ? 1 : 0;
            }
            return new Worth(
                    seconds,
                    changed / (double) light.length,
                    separation(light, picture.width(), picture.height()),
                    chroma(picture) / Math.max(oneChroma, 1e-6));
        }

        private double separation(float[] light, int w, int h) {
            if (edge.length == 0) {
                return 0;
            }
            double[] steps = new double[edge.length];
            for (int k = 0; k < steps.length; k++) {
                steps[k] = Math.abs(StrictMath.log(Math.max(light[edge[k][0]], DARKEST))
                        - StrictMath.log(Math.max(light[edge[k][1]], DARKEST)));
            }
            double step = Quantiles.median(steps, steps.length);
            float[] log = new float[light.length];
            float[] low = new float[light.length];
            float[] weight = new float[light.length];
            float[] work = new float[light.length];
            for (int p = 0; p < light.length; p++) {
                log[p] = (float) (StrictMath.log(Math.max(light[p], DARKEST)) * ring[p]);
            }
            Blur.gaussian(log, low, work, w, h, RING * w / 2);
            Blur.gaussian(ring, weight, work, w, h, RING * w / 2);
            double sum = 0;
            double count = 0;
            for (int p = 0; p < light.length; p++) {
                if (ring[p] > 0.5f) {
                    double d = log[p] - low[p] / (weight[p] + 1e-6);
                    sum += d * d;
                    count++;
                }
            }
            double left = count > 0 ? Math.sqrt(sum / count) : 0;
            return step + left > 0 ? step / (step + left) : 0;
        }
    }

    private static float[] luminance(RgbPicture picture) {
        float[] light = new float[picture.red().length];
        for (int p = 0; p < light.length; p++) {
            light[p] = (float) (0.2126 * picture.red()[p] + 0.7152 * picture.green()[p] + 0.0722 * picture.blue()[p]);
        }
        return light;
    }

    /** Pairs of pixels two inside and two outside the edge of what stands against what moves. */
    private static int[][] edge(byte[] labels, int w, int h) {
        int fixed = Kind.FIXED.column();
        int reach = Math.max(1, (int) Rounding.even(EDGE_PIXELS * w / 480.0));
        List<int[]> pairs = new ArrayList<>();
        for (int y = reach; y < h - reach; y++) {
            for (int x = reach; x < w - reach; x++) {
                int p = y * w + x;
                if (labels[p] == fixed) {
                    add(pairs, labels, p, 1, reach);
                    add(pairs, labels, p, -1, reach);
                    add(pairs, labels, p, w, reach);
                    add(pairs, labels, p, -w, reach);
                }
            }
        }
        return pairs.toArray(new int[0][]);
    }

    private static void add(List<int[]> pairs, byte[] labels, int p, int step, int reach) {
        int fixed = Kind.FIXED.column();
        int outside = p + reach * step;
        int inside = p - (reach - 1) * step;
        if (labels[p + step] != fixed && labels[outside] != fixed && labels[inside] == fixed) {
            pairs.add(new int[] {inside, outside});
        }
    }

    /** 1 where something moves within 3 % of the width from what stands. */
    private static float[] ring(byte[] labels, int w, int h) {
        int fixed = Kind.FIXED.column();
        float[] stands = new float[labels.length];
        for (int p = 0; p < labels.length; p++) {
            stands[p] = labels[p] == fixed ? 1 : 0;
        }
        float[] near = new float[labels.length];
        int radius = Math.max(1, (int) (RING * w));
        Blur.box(stands, near, new float[labels.length], w, h, radius);
        for (int p = 0; p < labels.length; p++) {
            near[p] = stands[p] == 0 && near[p] > 1e-6f ? 1 : 0;
        }
        return near;
    }

    /** Mean chroma C*ab over every third pixel. */
    private static double chroma(RgbPicture picture) {
        double sum = 0;
        int count = 0;
        for (int p = 0; p < picture.red().length; p += 3) {
            double r = Math.max(0, picture.red()[p]);
            double g = Math.max(0, picture.green()[p]);
            double b = Math.max(0, picture.blue()[p]);
            double fx = root((0.4124564 * r + 0.3575761 * g + 0.1804375 * b) / 0.95047);
            double fy = root(0.2126729 * r + 0.7151522 * g + 0.0721750 * b);
            double fz = root((0.0193339 * r + 0.1191920 * g + 0.9503041 * b) / 1.08883);
            double a = 500 * (fx - fy);
            double blueYellow = 200 * (fy - fz);
            sum += Math.sqrt(a * a + blueYellow * blueYellow);
            count++;
        }
        return count == 0 ? 0 : sum / count;
    }

    private static double root(double t) {
        return t > 216.0 / 24389 ? Powers.pow(t, 1.0 / 3) : (24389.0 / 27 * t + 16) / 116;
    }
}
