package ebblight.core.exposure;

import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Rounding;
import java.util.Arrays;

/**
 * Sky against foreground in one picture: the straight line that parts it best into a brighter and a darker side, by the
 * variance between the two sides of log₂ luminance, and how fast the light falls across it.
 *
 * @param stops log₂ of the light above the line over the light below it: positive where the sky is brighter
 * @param x where the line is: the middle of the picture, as a fraction of its width
 * @param y as a fraction of its height, downwards
 * @param angleDegrees of the line against the horizontal, counter-clockwise
 * @param softness distance across which the light goes from 10 to 90 % of its stops, over the picture's height
 * @param clear share of all variance of log₂ luminance that lies between the two sides, 0 to 1
 */
public record Balance(double stops, double x, double y, double angleDegrees, double softness, double clear) {

    private static final double DARKEST = 1.0 / 65536;
    private static final int STEEPEST_DEGREES = 30;
    private static final int COARSE_DEGREES = 3;
    private static final double FINE_DEGREES = 0.25;

    /** The line stays this share of the height away from the upper and lower edge. */
    private static final double MARGIN = 0.03;

    private static final int MOST_ROUNDS = 8;

    /**
     * Weighs a picture.
     *
     * @param luminance linear light, row by row, 0 or more
     * @throws IllegalArgumentException when it is smaller than 16 × 16
     */
    public static Balance of(float[] luminance, int width, int height) {
        if (width < 16 || height < 16 || luminance.length != width * height) {
            throw new IllegalArgumentException(
                    "need a picture of 16 × 16 pixels or more, had " + width + " × " + height);
        }
        float[] log = new float[luminance.length];
        for (int p = 0; p < log.length; p++) {
            log[p] = (float) Powers.log2(Math.max(luminance[p], DARKEST));
        }
        Sides sides = new Sides(log, width, height);
        Line best = new Line(0, 0, -1);
        for (int a = -STEEPEST_DEGREES; a <= STEEPEST_DEGREES; a += COARSE_DEGREES) {
            best = sides.best(best, a, MARGIN * height, (1 - MARGIN) * height, 4);
        }
        Line coarse = best;
        for (double a = coarse.degrees - COARSE_DEGREES; a <= coarse.degrees + COARSE_DEGREES; a += FINE_DEGREES) {
            best = sides.best(best, a, coarse.row - 8, coarse.row + 8, 1);
        }
        return profile(log, width, height, best, sides.variance());
    }

    /** A line through the picture's middle column at {@code row}, falling to the right by {@code degrees}. */
    private record Line(double degrees, double row, double between) {}

    /** Sums of log luminance above any line, column by column. */
    private static final class Sides {
        private final int width;
        private final int height;
        private final double[] above;
        private final double total;
        private final double squares;

        Sides(float[] log, int width, int height) {
            this.width = width;
            this.height = height;
            above = new double[width * (height + 1)];
            double sum = 0;
            double square = 0;
            for (int x = 0; x < width; x++) {
                for (int y = 0; y < height; y++) {
                    double v = log[y * width + x];
                    above[x * (height + 1) + y + 1] = above[x * (height + 1) + y] + v;
                    sum += v;
                    square += v * v;
                }
            }
            total = sum;
            squares = square;
        }

        double variance() {
            double n = (double) width * height;
            return squares / n - total * total / n / n;
        }

        Line best(Line sofar, double degrees, double from, double to, double step) {
            double slope = StrictMath.tan(degrees * Math.PI / 180);
            Line best = sofar;
            for (double row = Math.max(1, from); row <= Math.min(height - 1, to); row += step) {
                double sum = 0;
                double count = 0;
                for (int x = 0; x < width; x++) {
                    int y = (int) Rounding.even(row + slope * (x - (width - 1) / 2.0));
                    int cut = Math.max(0, Math.min(height, y));
                    sum += above[x * (height + 1) + cut];
                    count += cut;
                }
                double rest = (double) width * height - count;
                if (count > 0 && rest > 0) {
                    double d = sum / count - (total - sum) / rest;
                    double between = count * rest * d * d / ((count + rest) * (count + rest));
                    if (between > best.between) {
                        best = new Line(degrees, row, between);
                    }
                }
            }
            return best;
        }
    }

    /**
     * Medians of both sides, and where between them the light passes 10, 50 and 90 % of the step. A soft transition
     * takes up much of a side and pulls its median in, so the medians are taken again beyond the 10 and 90 % found, until
     * they no longer move.
     */
    private static Balance profile(float[] log, int width, int height, Line line, double variance) {
        double radians = line.degrees * Math.PI / 180;
        double cos = StrictMath.cos(radians);
        double sin = StrictMath.sin(radians);
        int reach = width + height;
        double[] sum = new double[2 * reach];
        int[] count = new int[2 * reach];
        double[] distance = new double[log.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int p = y * width + x;
                distance[p] = (y + 0.5 - line.row) * cos - (x + 0.5 - width / 2.0) * sin;
                int bin = (int) Math.floor(distance[p]) + reach;
                sum[bin] += log[p];
                count[bin]++;
            }
        }
        int full = width / 2;
        double[] values = new double[log.length];
        double ten = 0;
        double middle = 0;
        double ninety = 0;
        double stops = 0;
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double above = medianWithin(log, distance, -Double.MAX_VALUE, Math.min(ten, middle), values);
            double below = medianWithin(log, distance, Math.max(ninety, middle), Double.MAX_VALUE, values);
            if (Double.isNaN(above) || Double.isNaN(below)) {
                break;
            }
            boolean settled = round > 0 && Math.abs(above - below - stops) < 0.005;
            stops = above - below;
            middle = crossing(sum, count, reach, full, above, below, 0.5, reach);
            int start = (int) Rounding.even(middle) + reach;
            ten = crossing(sum, count, reach, full, above, below, 0.1, start);
            ninety = crossing(sum, count, reach, full, above, below, 0.9, start);
            if (settled) {
                break;
            }
        }
        double row = line.row + middle / cos;
        double clear = variance > 0 ? Math.min(1, line.between / variance) : 0;
        return new Balance(
                stops,
                0.5,
                Math.max(0, Math.min(1, row / height)),
                -line.degrees,
                Math.max(0, ninety - ten) * cos / height,
                clear);
    }

    /** Median of the pixels from one distance up to another, NaN where that is less than a fiftieth of all. */
    private static double medianWithin(float[] log, double[] distance, double from, double to, double[] values) {
        int n = 0;
        for (int p = 0; p < log.length; p++) {
            if (distance[p] >= from && distance[p] < to) {
                values[n++] = log[p];
            }
        }
        return n * 50 < log.length ? Double.NaN : Quantiles.median(Arrays.copyOf(values, n), n);
    }

    /**
     * Signed distance from the line at which {@code share} of the step from the upper to the lower light is done, in
     * pixels, searched outward from {@code start}; bins with fewer pixels than half a row do not count.
     */
    private static double crossing(
            double[] sum, int[] count, int zero, int full, double above, double below, double share, int start) {
        double step = below - above;
        if (step == 0) {
            return 0;
        }
        for (int k = 0; k < zero - 1; k++) {
            for (int sign = -1; sign <= 1; sign += 2) {
                int b = start + sign * k;
                if (b >= 1 && b < sum.length && count[b] >= full && count[b - 1] >= full) {
                    double before = (sum[b - 1] / count[b - 1] - above) / step - share;
                    double after = (sum[b] / count[b] - above) / step - share;
                    if (before <= 0 && after > 0) {
                        return b - zero - 0.5 + before / (before - after);
                    }
                }
            }
        }
        return start - zero;
    }
}
