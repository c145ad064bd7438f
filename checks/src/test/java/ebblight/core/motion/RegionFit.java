package ebblight.core.motion;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * The fit that the weights of {@link RegionModel} come from: multinomial logistic regression, kinds weighted equally
 * (after prototype/survey/train.py). It is held to an anchor: to 0, or to the weights of the prototype, which were fitted
 * on ten masks of which only three are at hand.
 */
final class RegionFit {

    private static final int SAMPLES_A_VALUE = 400;
    private static final int FEWEST = 200;
    private static final int STEPS = 500;
    private static final double RATE = 0.7;

    private final List<double[]> features = new ArrayList<>();
    private final List<int[]> admitted = new ArrayList<>();
    private final List<Double> weights = new ArrayList<>();
    private final Random random = new Random(0);
    private final Optional<Anchor> anchor;
    private final double ridge;

    /** Weights that a fit is held to, with the mean and deviation that scale the features. */
    record Anchor(double[] mean, double[] deviation, double[][] weights) {}

    /**
     * A fit that is pulled to an anchor, or to 0 with a scale of its own.
     *
     * @param ridge how strongly: half its product with the squared distance is added to the loss
     */
    RegionFit(Optional<Anchor> anchor, double ridge) {
        this.anchor = anchor;
        this.ridge = ridge;
    }

    /**
     * Adds pixels of a clip.
     *
     * @param mask one value a pixel, an index into {@link RealTrial#ADMITS}; others are not judged
     * @param scale weight of the clip
     */
    void add(ViewSurvey.Parts parts, int[] mask, double scale) {
        float[][] maps = RegionFeatures.of(
                        parts.frames(), parts.mean(), parts.noise(), parts.meanColour(), Work.alone())
                .maps();
        for (int value = 0; value < RealTrial.ADMITS.length; value++) {
            List<Integer> at = new ArrayList<>();
            for (int p = 0; p < mask.length; p++) {
                if (mask[p] == value) {
                    at.add(p);
                }
            }
            if (at.size() < FEWEST) {
                continue;
            }
            int n = Math.min(SAMPLES_A_VALUE, at.size());
            int[] kinds = RealTrial.ADMITS[value];
            for (int i = 0; i < n; i++) {
                int p = at.get(random.nextInt(at.size()));
                double[] x = new double[RegionModel.FEATURES];
                for (int k = 0; k < x.length; k++) {
                    x[k] = maps[k][p];
                }
                features.add(x);
                admitted.add(kinds);
                weights.add(scale / kinds.length / n);
            }
        }
    }

    RegionModel fit() {
        int columns = RegionModel.FEATURES;
        Anchor to = anchor.orElseGet(this::ownScale);
        double[] mean = to.mean();
        double[] deviation = to.deviation();
        double[] weight = evened();
        double[][] now = new double[columns + 1][];
        double[][] ahead = new double[columns + 1][];
        for (int r = 0; r <= columns; r++) {
            now[r] = to.weights()[r].clone();
            ahead[r] = to.weights()[r].clone();
        }
        for (int step = 1; step <= STEPS; step++) {
            double[][] slope = slope(ahead, mean, deviation, weight);
            double push = step / (step + 3.0);
            for (int r = 0; r <= columns; r++) {
                for (int c = 0; c < RegionModel.KINDS; c++) {
                    double next = ahead[r][c] - RATE * (slope[r][c] + ridge * (ahead[r][c] - to.weights()[r][c]));
                    ahead[r][c] = next + push * (next - now[r][c]);
                    now[r][c] = next;
                }
            }
        }
        return RegionModel.of(mean, deviation, now);
    }

    private Anchor ownScale() {
        int n = features.size();
        double[] mean = new double[RegionModel.FEATURES];
        double[] deviation = new double[RegionModel.FEATURES];
        for (int k = 0; k < mean.length; k++) {
            for (double[] x : features) {
                mean[k] += x[k] / n;
            }
            for (double[] x : features) {
                deviation[k] += (x[k] - mean[k]) * (x[k] - mean[k]) / n;
            }
            deviation[k] = Math.sqrt(deviation[k]) + 1e-6;
        }
        return new Anchor(mean, deviation, new double[mean.length + 1][RegionModel.KINDS]);
    }

    /** Weights by which every kind counts the same. */
    private double[] evened() {
        double[] ofKind = new double[RegionModel.KINDS];
        for (int i = 0; i < weights.size(); i++) {
            for (int kind : admitted.get(i)) {
                ofKind[kind] += weights.get(i);
            }
        }
        double[] even = new double[weights.size()];
        double sum = 0;
        for (int i = 0; i < even.length; i++) {
            for (int kind : admitted.get(i)) {
                even[i] += weights.get(i) / ofKind[kind] / admitted.get(i).length;
            }
            sum += even[i];
        }
        for (int i = 0; i < even.length; i++) {
            even[i] /= sum;
        }
        return even;
    }

    private double[][] slope(double[][] model, double[] mean, double[] deviation, double[] weight) {
        int columns = RegionModel.FEATURES;
        double[][] slope = new double[columns + 1][RegionModel.KINDS];
        double[] z = new double[columns + 1];
        double[] share = new double[RegionModel.KINDS];
        for (int i = 0; i < weight.length; i++) {
            double[] x = features.get(i);
            for (int k = 0; k < columns; k++) {
                z[k] = Math.max(-4, Math.min(4, (x[k] - mean[k]) / deviation[k]));
            }
            z[columns] = 1;
            double sum = 0;
            for (int c = 0; c < share.length; c++) {
                double logit = 0;
                for (int r = 0; r <= columns; r++) {
                    logit += z[r] * model[r][c];
                }
                share[c] = Math.exp(Math.min(logit, 500));
                sum += share[c];
            }
            double right = 0;
            for (int kind : admitted.get(i)) {
                right += share[kind];
            }
            for (int c = 0; c < share.length; c++) {
                double target = 0;
                for (int kind : admitted.get(i)) {
                    target += kind == c ? share[c] / right : 0;
                }
                double d = weight[i] * (share[c] / sum - target);
                for (int r = 0; r <= columns; r++) {
                    slope[r][c] += d * z[r];
                }
            }
        }
        return slope;
    }
}
