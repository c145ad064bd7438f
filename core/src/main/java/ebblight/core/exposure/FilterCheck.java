package ebblight.core.exposure;

import ebblight.core.numeric.CieLab;
import ebblight.core.numeric.Powers;
import java.util.Arrays;
import java.util.List;

/**
 * What a filter truly takes, from pairs of one view without and with it. {@link #low()} to {@link #high()} holds the
 * true density 95 times in 100.
 *
 * @param stops light it takes in green, in the middle of the picture
 * @param low lower end of the likely range, stops
 * @param high upper end
 * @param red share of red that passes, against green
 * @param blue share of blue that passes, against green
 * @param labShift what it makes of a grey of L* 50 with its lightness kept: a and b are how far it is off grey
 * @param cornerStops how much more it takes in the corners than in the middle
 * @param cornerRangeStops how far off that may be, either way, 95 times in 100
 * @param perPair stops by each pair alone
 */
public record FilterCheck(
        double stops,
        double low,
        double high,
        double red,
        double blue,
        CieLab labShift,
        double cornerStops,
        double cornerRangeStops,
        List<Double> perPair) {

    /** Half of a 95 % range in standard deviations. */
    private static final double RANGE = 2;
    /** Nothing is known better than this: shutters, and light that no frame saw (common practice: 1 to 2 %). */
    private static final double LEAST_SIGMA = 0.01;
    /** Darker corners below this are no more than chance. */
    private static final double LEAST_CORNER = 0.05;

    /** Distance from grey that a trained eye just sees (CIE 1976: about 2.3, from memory). */
    private static final double SEEN = 2.3;

    private static final int GREEN = 1;
    private static final double GREY = 0.184187; // L* 50

    /** What the pairs say together. */
    public static FilterCheck of(List<FilterPair> pairs) {
        if (pairs.isEmpty()) {
            throw new IllegalArgumentException("a filter is checked by one pair or more");
        }
        int n = pairs.size();
        double[] stops = new double[n];
        double[] sigma = new double[n];
        double[] corner = new double[n];
        double[] cornerSigma = new double[n];
        double[] red = new double[n];
        double[] blue = new double[n];
        for (int k = 0; k < n; k++) {
            FilterPair pair = pairs.get(k);
            FieldFit green = FieldFit.of(pair.ratioStops()[GREEN], pair.radius(), pair.block());
            boolean vignettes = -green.slope() > LEAST_CORNER && -green.slope() > 3 * green.slopeSigma();
            double value = vignettes ? green.middle() : green.level();
            double error = vignettes ? green.middleSigma() : green.levelSigma();
            stops[k] = pair.gainStops() + pair.lightStops() - value;
            sigma[k] = Math.sqrt(error * error
                    + LEAST_SIGMA * LEAST_SIGMA
                    + pair.lightRangeStops() * pair.lightRangeStops()
                    + pair.settingsRangeStops() * pair.settingsRangeStops());
            corner[k] = -green.slope();
            cornerSigma[k] = Math.max(1e-3, green.slopeSigma());
            red[k] = FieldFit.level(difference(pair, 0), pair.block());
            blue[k] = FieldFit.level(difference(pair, 2), pair.block());
        }
        Mean all = Mean.of(stops, sigma);
        Mean corners = Mean.of(corner, cornerSigma);
        double r = Powers.exp2(Mean.of(red, sigma).value);
        double b = Powers.exp2(Mean.of(blue, sigma).value);
        double kept = GREY / (0.2126 * r + 0.7152 + 0.0722 * b);
        return new FilterCheck(
                all.value,
                all.value - RANGE * all.sigma,
                all.value + RANGE * all.sigma,
                r,
                b,
                CieLab.ofLinearSrgb(kept * r, kept, kept * b),
                corners.value,
                RANGE * corners.sigma,
                Arrays.stream(stops).boxed().toList());
    }

    /** Its cast in a word: none, warm (yellow or red), cold (blue), green or magenta. */
    public String castWord() {
        double a = labShift.a();
        double b = labShift.b();
        if (Math.sqrt(a * a + b * b) < SEEN) {
            return "none to see";
        }
        if (Math.abs(a) > Math.abs(b)) {
            return a > 0 ? "magenta" : "green";
        }
        return b > 0 ? "warm" : "cold";
    }

    private static float[] difference(FilterPair pair, int channel) {
        float[] out = new float[pair.parts()];
        for (int i = 0; i < out.length; i++) {
            out[i] = pair.ratioStops()[channel][i] - pair.ratioStops()[GREEN][i];
        }
        return out;
    }

    /**
     * The mean weighted by what is known of each value; where they scatter more than they claim, its error grows by as
     * much (Birge 1932, from memory).
     */
    private record Mean(double value, double sigma) {

        static Mean of(double[] values, double[] sigmas) {
            double weights = 0;
            double sum = 0;
            for (int k = 0; k < values.length; k++) {
                double w = 1 / (sigmas[k] * sigmas[k]);
                weights += w;
                sum += w * values[k];
            }
            double mean = sum / weights;
            double scatter = 0;
            for (int k = 0; k < values.length; k++) {
                double off = (values[k] - mean) / sigmas[k];
                scatter += off * off;
            }
            double birge = values.length < 2 ? 1 : Math.sqrt(scatter / (values.length - 1));
            return new Mean(mean, Math.max(1, birge) / Math.sqrt(weights));
        }
    }
}
