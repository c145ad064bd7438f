package ebblight.core.motion;

import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Quantiles;
import ebblight.demo.Sensor;
import java.util.List;

/**
 * What is left at 2 to 60 s, predicted from clips of one sea, against the truth.
 *
 * @param clips number of clips
 * @param seconds exposure times
 * @param truth R at those times
 * @param median of the error of R as a share of the truth, with its sign
 * @param p90 of the error's size as a share of the truth
 * @param p90Stops of the error's size in stops of shutter time: 2 log₂ of the ratio, as R falls with T^(−1/2)
 * @param covered share of clips whose likely range holds the truth
 * @param tooFar share of clips that refuse to tell that time
 * @param resolved share of clips that call the sea resolved
 */
record SeaTrial(
        int clips,
        double[] seconds,
        double[] truth,
        double[] median,
        double[] p90,
        double[] p90Stops,
        double[] covered,
        double[] tooFar,
        double resolved) {

    static final double[] SECONDS = {2, 4, 8, 15, 30, 60};

    static SeaTrial of(SeaRuns runs, double clipSeconds, double iso) {
        List<SeaRuns.Filmed> clips = runs.clips(clipSeconds, 10, new Sensor(iso));
        int n = clips.size();
        int k = SECONDS.length;
        SeaTrial trial = new SeaTrial(
                n,
                SECONDS,
                new double[k],
                new double[k],
                new double[k],
                new double[k],
                new double[k],
                new double[k],
                share(clips));
        double[][] errors = new double[k][n];
        for (int t = 0; t < k; t++) {
            trial.truth[t] = runs.remaining(SECONDS[t]);
        }
        for (int i = 0; i < n; i++) {
            ClipCurve curve = clips.get(i).curve();
            for (int t = 0; t < k; t++) {
                Remaining at = curve.at(SECONDS[t]);
                errors[t][i] = at.ratio() / trial.truth[t];
                trial.covered[t] += at.low() <= trial.truth[t] && trial.truth[t] <= at.high() ? 1 : 0;
                trial.tooFar[t] += at.basis() == Remaining.Basis.TOO_FAR ? 1 : 0;
            }
        }
        for (int t = 0; t < k; t++) {
            trial.covered[t] /= n;
            trial.tooFar[t] /= n;
            trial.median[t] = Quantiles.median(errors[t].clone(), n) - 1;
            double[] size = new double[n];
            double[] stops = new double[n];
            for (int i = 0; i < n; i++) {
                size[i] = Math.abs(errors[t][i] - 1);
                stops[i] = 2 * Math.abs(Powers.log2(errors[t][i]));
            }
            trial.p90[t] = Quantiles.quantile(size, n, 0.9);
            trial.p90Stops[t] = Quantiles.quantile(stops, n, 0.9);
        }
        return trial;
    }

    private static double share(List<SeaRuns.Filmed> clips) {
        double resolved = 0;
        for (SeaRuns.Filmed clip : clips) {
            resolved += clip.curve().resolved() ? 1.0 / clips.size() : 0;
        }
        return resolved;
    }

    /** Over all times: the share of truths that the likely range holds. */
    double coveredInAll() {
        double sum = 0;
        for (double share : covered) {
            sum += share / covered.length;
        }
        return sum;
    }
}
