package ebblight.core.card;

import ebblight.core.numeric.LeastSquares;
import java.util.List;

/** Densities of the filters of a view and the fading of its light, fitted together. */
final class FilterFit {

    /** How fast light fades at most times, in stops a minute: what is believed where the frames do not tell. */
    private static final double LIKELY_DRIFT = 0.15;
    /** How well a level is known, in stops. */
    private static final double LEVEL = 0.1;

    private FilterFit() {}

    /**
     * Stops of each kind of filter against kind 0.
     *
     * @param kind which filter each frame has, −1 for unknown
     * @param kinds how many there are
     */
    static double[] of(List<CardShot> shots, int[] kind, int kinds) {
        int unknowns = kinds + 1; // light without filter, fading, densities of kinds 1 and up
        double[][] normal = new double[unknowns][unknowns];
        double[] right = new double[unknowns];
        double start = Double.NaN;
        for (int i = 0; i < kind.length; i++) {
            if (kind[i] >= 0) {
                double at = shots.get(i).middleSeconds();
                start = Double.isNaN(start) ? at : start;
                double minutes = Double.isNaN(at - start) ? 0 : (at - start) / 60;
                double[] row = new double[unknowns];
                row[0] = 1;
                row[1] = -minutes;
                if (kind[i] > 0) {
                    row[1 + kind[i]] = -1;
                }
                add(normal, right, row, shots.get(i).lightStops());
            }
        }
        normal[1][1] += (LEVEL / LIKELY_DRIFT) * (LEVEL / LIKELY_DRIFT);
        double[] found = LeastSquares.solve(normal, right);
        double[] densities = new double[kinds];
        System.arraycopy(found, 2, densities, 1, kinds - 1);
        return densities;
    }

    private static void add(double[][] normal, double[] right, double[] row, double value) {
        for (int a = 0; a < row.length; a++) {
            right[a] += row[a] * value;
            for (int b = 0; b < row.length; b++) {
                normal[a][b] += row[a] * row[b];
            }
        }
    }
}
