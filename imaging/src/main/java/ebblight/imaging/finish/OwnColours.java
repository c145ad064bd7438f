package ebblight.imaging.finish;

import ebblight.core.numeric.LeastSquares;
import ebblight.core.numeric.Resample;
import ebblight.core.numeric.RgbPicture;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * The colours that a picture is made of, as many as it has: its pixels grouped in L*a*b* (k-means), groups that the eye
 * would call one colour joined, crumbs given to their neighbours. Lightness counts a quarter, so that the lit and the
 * shaded side of one thing stay one colour.
 */
final class OwnColours {

    private static final int SAMPLE_WIDTH = 240;
    private static final int MOST = 9;
    private static final int ROUNDS = 30;
    static final double LIGHTNESS_COUNTS = 0.25;
    /** Nearer than so many units of L*a*b* two groups are one colour. */
    private static final double ALIKE = 8;

    private static final double CRUMB = 0.01;

    /** L* between neighbouring stops round the middle: from 18 % to 36 % it rises from 49.5 to 66.5, down to 9 % it falls
     * to 36. */
    private static final double LIGHTNESS_OF_STOP = 15;

    /** How much a stop of change weighs against a stop of separation won. */
    private static final double RESTRAINT = 0.3;

    private OwnColours() {}

    /** Colours with the largest first, none lighter or darker. */
    static List<OwnColour> of(RgbPicture picture, Colours colours) {
        double[][] points = points(picture, colours);
        double[][] middles = begun(points);
        int[] of = new int[points.length];
        for (int round = 0; round < ROUNDS; round++) {
            assign(points, middles, of);
            middles = means(points, of, middles);
        }
        assign(points, middles, of);
        double[] shares = shares(of, middles.length);
        join(middles, shares);
        List<OwnColour> found = new ArrayList<>();
        for (int k = 0; k < middles.length; k++) {
            if (shares[k] > 0) {
                found.add(new OwnColour(middles[k][0] / LIGHTNESS_COUNTS, middles[k][1], middles[k][2], shares[k], 0));
            }
        }
        found.sort(Comparator.comparingDouble(OwnColour::share).reversed());
        return List.copyOf(found);
    }

    private static double[][] points(RgbPicture picture, Colours colours) {
        int w = Math.min(SAMPLE_WIDTH, picture.width());
        int h = Math.max(1, Math.min(picture.height(), (int) ((long) picture.height() * w / picture.width())));
        float[][] small = new float[3][w * h];
        for (int c = 0; c < 3; c++) {
            Resample.area(picture.plane(c), picture.width(), picture.height(), small[c], w, h);
        }
        double[][] points = new double[w * h][3];
        for (int p = 0; p < points.length; p++) {
            colours.toLab(small[0][p], small[1][p], small[2][p], points[p]);
            points[p][0] *= LIGHTNESS_COUNTS;
        }
        return points;
    }

    /** First middles: the mean, then whatever lies farthest from all chosen so far. */
    private static double[][] begun(double[][] points) {
        double[][] middles = new double[Math.min(MOST, points.length)][3];
        for (double[] p : points) {
            for (int i = 0; i < 3; i++) {
                middles[0][i] += p[i] / points.length;
            }
        }
        double[] away = new double[points.length];
        Arrays.fill(away, Double.MAX_VALUE);
        for (int k = 1; k < middles.length; k++) {
            int farthest = 0;
            for (int p = 0; p < points.length; p++) {
                away[p] = Math.min(away[p], squared(points[p], middles[k - 1]));
                farthest = away[p] > away[farthest] ? p : farthest;
            }
            middles[k] = points[farthest].clone();
        }
        return middles;
    }

    private static void assign(double[][] points, double[][] middles, int[] of) {
        for (int p = 0; p < points.length; p++) {
            int nearest = 0;
            double best = Double.MAX_VALUE;
            for (int k = 0; k < middles.length; k++) {
                double d = squared(points[p], middles[k]);
                if (d < best) {
                    best = d;
                    nearest = k;
                }
            }
            of[p] = nearest;
        }
    }

    private static double[][] means(double[][] points, int[] of, double[][] before) {
        double[][] sums = new double[before.length][4];
        for (int p = 0; p < points.length; p++) {
            double[] sum = sums[of[p]];
            for (int i = 0; i < 3; i++) {
                sum[i] += points[p][i];
            }
            sum[3]++;
        }
        double[][] means = new double[before.length][];
        for (int k = 0; k < means.length; k++) {
            double n = sums[k][3];
            means[k] = n == 0 ? before[k] : new double[] {sums[k][0] / n, sums[k][1] / n, sums[k][2] / n};
        }
        return means;
    }

    private static double[] shares(int[] of, int groups) {
        double[] shares = new double[groups];
        for (int k : of) {
            shares[k] += 1.0 / of.length;
        }
        return shares;
    }

    /** Joins groups until all that are left are apart and large enough; a joined group has share 0. */
    private static void join(double[][] middles, double[] shares) {
        while (true) {
            int one = -1;
            int other = -1;
            double best = Double.MAX_VALUE;
            for (int i = 0; i < middles.length; i++) {
                for (int j = 0; j < middles.length; j++) {
                    if (i == j || shares[i] == 0 || shares[j] == 0) {
                        continue;
                    }
                    double d = Math.sqrt(squared(middles[i], middles[j]));
                    boolean joins = d < ALIKE || shares[i] < CRUMB;
                    if (joins && d < best) {
                        best = d;
                        one = i;
                        other = j;
                    }
                }
            }
            if (one < 0) {
                return;
            }
            double all = shares[one] + shares[other];
            for (int c = 0; c < 3; c++) {
                middles[other][c] = (shares[one] * middles[one][c] + shares[other] * middles[other][c]) / all;
            }
            shares[other] = all;
            shares[one] = 0;
        }
    }

    static double squared(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < 3; i++) {
            sum += (a[i] - b[i]) * (a[i] - b[i]);
        }
        return sum;
    }

    /**
     * A start for black and white: colours that differ to the eye should differ in tone. Least squares over all pairs,
     * weighted by what both cover: the difference in stops between two colours should be their distance in L*a*b*, in
     * the order of their own lightness, the warmer lighter where that is alike. At most one stop, in sixths.
     */
    static List<OwnColour> separated(List<OwnColour> colours) {
        int n = colours.size();
        double[][] a = new double[n][n];
        double[] b = new double[n];
        for (int i = 0; i < n; i++) {
            a[i][i] += RESTRAINT * colours.get(i).share();
            for (int j = 0; j < n; j++) {
                if (i != j) {
                    double weight = colours.get(i).share() * colours.get(j).share();
                    a[i][i] += weight;
                    a[i][j] -= weight;
                    b[i] += weight * missing(colours.get(i), colours.get(j));
                }
            }
        }
        double[] stops = LeastSquares.solve(a, b);
        List<OwnColour> made = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double sixths = Math.rint(6 * Math.max(-1, Math.min(1, stops[i])));
            made.add(colours.get(i).with(colours.get(i).share(), (sixths + 0.0) / 6));
        }
        return List.copyOf(made);
    }

    /** Stops by which {@code one} lacks distance from {@code other}. */
    private static double missing(OwnColour one, OwnColour other) {
        double dl = one.lightness() - other.lightness();
        double da = one.a() - other.a();
        double db = one.b() - other.b();
        double whole = Math.sqrt(dl * dl + da * da + db * db);
        double order = Math.abs(dl) > 3 ? dl : da + db;
        return (Math.copySign(whole, order) - dl) / LIGHTNESS_OF_STOP;
    }
}
