package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Rounding;
import ebblight.core.numeric.Work;

/**
 * Eleven maps that tell how every place of the picture moves, each smoothed over 4 pixels: relative change; change over
 * noise; how much of it is fast (change over 0.1 s against 1 s); how much is slow (0.3 s against 0.45 of the clip);
 * persistence of texture in its least lasting direction; plain persistence; change as pixels of shift of the mean
 * picture; row; excess of green; excess of blue; how far its texture is drawn out one way ({@link Grain}, over 8 pixels).
 */
final class RegionFeatures {

    private static final double SIGMA = 4;
    private static final int PERSISTENCE_FRAMES = 8;

    private final float[][] maps;

    private RegionFeatures(float[][] maps) {
        this.maps = maps;
    }

    /** The maps, {@code [feature][pixel]}. */
    float[][] maps() {
        return maps;
    }

    static RegionFeatures of(LuminanceFrames frames, float[] mean, NoiseModel noise, float[][] meanColour, Work work) {
        int width = frames.width();
        int height = frames.height();
        int n = width * height;
        float[] noiseVariance = new float[n];
        for (int p = 0; p < n; p++) {
            noiseVariance[p] = (float) (noise.at(mean[p]) + 1e-8);
        }
        double spacing = frames.spacingSeconds();
        double length = frames.lengthSeconds();
        double[] lags = {0.1, 1, 0.3, 0.45 * length};
        float[][] structure = new float[lags.length + 1][];
        float[] variance = frames.variance(mean);
        work.forEach(structure.length, k -> {
            float[] work1 = new float[n];
            float[] map = k < lags.length ? structure(frames, lag(lags[k], spacing, frames.count())) : variance.clone();
            for (int p = 0; p < n; p++) {
                map[p] = Math.max(map[p] - noiseVariance[p], 0);
            }
            Blur.gaussian(map, map, work1, width, height, SIGMA);
            structure[k] = map;
        });
        float[] changing = structure[lags.length];
        float[] work1 = new float[n];
        float[] smoothNoise = new float[n];
        Blur.gaussian(noiseVariance, smoothNoise, work1, width, height, SIGMA);
        float[] smoothMean = new float[n];
        Blur.gaussian(mean, smoothMean, work1, width, height, SIGMA);
        Persistence persistence = Persistence.of(frames, mean, SIGMA, PERSISTENCE_FRAMES);
        float[][] maps = new float[RegionModel.FEATURES][n];
        maps[10] = Grain.of(frames, smoothNoise);
        for (int p = 0; p < n; p++) {
            double change = Math.sqrt(changing[p]);
            double small = 0.1 * smoothNoise[p] + 1e-9;
            maps[0][p] = log10(change / (smoothMean[p] + 0.01) + 0.003);
            maps[1][p] = log10(changing[p] / smoothNoise[p] + 0.1);
            maps[2][p] = log10((structure[0][p] + small) / (structure[1][p] + small));
            maps[3][p] = log10((structure[2][p] + small) / (structure[3][p] + small));
            maps[4][p] = persistence.least()[p];
            maps[5][p] = persistence.plain()[p];
            maps[6][p] = Math.max(
                    -1.5f,
                    Math.min(2f, log10((change + 1e-5) / Math.sqrt(persistence.energy()[p] + 1e-10))));
            int row = p / width;
            maps[7][p] = height > 1 ? (float) (row / (height - 1.0)) : 0;
        }
        excess(meanColour, maps[8], maps[9]);
        Blur.gaussian(maps[8], maps[8], work1, width, height, SIGMA);
        Blur.gaussian(maps[9], maps[9], work1, width, height, SIGMA);
        return new RegionFeatures(maps);
    }

    private static float log10(double x) {
        return (float) StrictMath.log10(x);
    }

    private static int lag(double seconds, double spacing, int frames) {
        int n = spacing > 0 ? (int) Rounding.even(seconds / spacing) : 1;
        return Math.max(1, Math.min(frames - 1, n));
    }

    /** Half the mean square difference of frames {@code lag} apart, at every pixel. */
    private static float[] structure(LuminanceFrames frames, int lag) {
        double[] sum = new double[frames.pixels()];
        int pairs = frames.count() - lag;
        for (int i = 0; i < pairs; i++) {
            float[] a = frames.frame(i);
            float[] b = frames.frame(i + lag);
            for (int p = 0; p < sum.length; p++) {
                double d = b[p] - a[p];
                sum[p] += d * d;
            }
        }
        float[] half = new float[sum.length];
        for (int p = 0; p < sum.length; p++) {
            half[p] = (float) (sum[p] / (2 * pairs));
        }
        return half;
    }

    private static void excess(float[][] colour, float[] green, float[] blue) {
        for (int p = 0; p < green.length; p++) {
            double r = colour[0][p];
            double g = colour[1][p];
            double b = colour[2][p];
            double sum = r + g + b + 0.02;
            green[p] = (float) ((g - Math.max(r, b)) / sum);
            blue[p] = (float) ((b - Math.max(r, g)) / sum);
        }
    }
}
