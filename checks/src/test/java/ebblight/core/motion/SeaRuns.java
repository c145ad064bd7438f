package ebblight.core.motion;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.demo.OpenWater;
import ebblight.demo.Sensor;
import ebblight.demo.Weather;
import java.util.ArrayList;
import java.util.List;

/**
 * Minutes of one sea that lie far apart, and what an exposure truly leaves of its texture.
 * The truth is the variance of plain time means over all runs, at each point about the mean of all runs: nothing of
 * the estimators under test is in it.
 */
final class SeaRuns {

    static final double RUN_SECONDS = 60;
    /** From one run to the next: no wave remembers so long, as each has a frequency of its own. */
    private static final double APART_SECONDS = 1000;

    private static final int PICTURE_WIDTH = 480;
    private static final int POINT_STEP = 5;

    private final RgbPicture[][] rows;
    private final float[][][] light;
    private final int perSecond;
    private final int[] at;

    private SeaRuns(RgbPicture[][] rows, float[][][] light, int perSecond, int[] at) {
        this.rows = rows;
        this.light = light;
        this.perSecond = perSecond;
        this.at = at;
    }

    /** {@code runs} minutes of a sea, {@code perSecond} instants a second. */
    static SeaRuns of(Weather weather, int runs, int perSecond, Work work) {
        OpenWater water = new OpenWater(weather, PICTURE_WIDTH, POINT_STEP, work);
        double[] times = new double[((int) RUN_SECONDS) * perSecond + 1];
        RgbPicture[][] rows = new RgbPicture[runs][];
        float[][][] light = new float[runs][times.length][];
        for (int run = 0; run < runs; run++) {
            for (int i = 0; i < times.length; i++) {
                times[i] = run * APART_SECONDS + (double) i / perSecond;
            }
            rows[run] = water.at(times, work);
            for (int i = 0; i < times.length; i++) {
                light[run][i] = luminance(rows[run][i]);
            }
        }
        return new SeaRuns(rows, light, perSecond, water.places());
    }

    private static float[] luminance(RgbPicture row) {
        float[] y = new float[row.width()];
        for (int p = 0; p < y.length; p++) {
            y[p] = (float) (0.2126 * row.red()[p] + 0.7152 * row.green()[p] + 0.0722 * row.blue()[p]);
        }
        return y;
    }

    int points() {
        return light[0][0].length;
    }

    int runs() {
        return light.length;
    }

    /** True R(T). */
    double remaining(double seconds) {
        return Math.sqrt(variance(seconds) / variance(0));
    }

    /** Variance of a mean over {@code seconds}, the mean over all points; 0 is an instant. */
    double variance(double seconds) {
        int steps = (int) Math.rint(seconds * perSecond);
        int windows = Math.max(1, (light[0].length - 1) / Math.max(1, steps));
        double sum = 0;
        double ofRunMeans = 0;
        double[] means = new double[runs()];
        for (int p = 0; p < points(); p++) {
            double mean = 0;
            for (int run = 0; run < runs(); run++) {
                means[run] = mean(run, p, 0, light[0].length - 1);
                mean += means[run] / runs();
            }
            for (int run = 0; run < runs(); run++) {
                ofRunMeans += (means[run] - mean) * (means[run] - mean) / (runs() - 1);
                for (int k = 0; k < windows; k++) {
                    double d = mean(run, p, k * steps, steps) - mean;
                    sum += d * d / (windows * runs());
                }
            }
        }
        // the mean of all runs is not yet the mean of all time: it takes its own share of the variance away
        return (sum + ofRunMeans / runs()) / points();
    }

    /** Mean of the straight lines between instants. */
    private double mean(int run, int point, int from, int steps) {
        if (steps == 0) {
            return light[run][from][point];
        }
        double sum = (light[run][from][point] + (double) light[run][from + steps][point]) / 2;
        for (int i = from + 1; i < from + steps; i++) {
            sum += light[run][i][point];
        }
        return sum / steps;
    }

    /** All clips of {@code seconds} at {@code framesPerSecond} that lie side by side in the runs, through a sensor. */
    List<Filmed> clips(double seconds, int framesPerSecond, Sensor sensor) {
        int step = perSecond / framesPerSecond;
        int frames = (int) Math.rint(seconds * framesPerSecond);
        List<Filmed> clips = new ArrayList<>();
        for (int run = 0; run < runs(); run++) {
            for (int from = 0; from + frames * step < light[run].length; from += frames * step) {
                clips.add(clip(run, from, step, frames, 1.0 / framesPerSecond, sensor));
            }
        }
        return clips;
    }

    /**
     * One clip.
     *
     * @param noise true mean variance of sensor and coding, squared luminance
     * @param at where the points lie in the picture
     */
    record Filmed(PixelSeries series, double noise, int[] at) {
        ClipCurve curve() {
            return ClipCurve.of(Variogram.of(series, noise), false, Crests.of(series, at, PICTURE_WIDTH));
        }
    }

    private Filmed clip(int run, int from, int step, int frames, double spacing, Sensor sensor) {
        double[] times = new double[frames];
        List<byte[]> codes = new ArrayList<>();
        for (int i = 0; i < frames; i++) {
            times[i] = i * spacing;
            codes.add(sensor.srgb8(rows[run][from + i * step], 7919L * run + from + i));
        }
        Clip clip = Clip.of(points(), 1, times, codes, Clip.Coding.SRGB8);
        float[][] planes = new float[frames][points()];
        int[] all = new int[points()];
        double noise = 0;
        for (int i = 0; i < frames; i++) {
            clip.luminance(i, planes[i]);
            for (int p = 0; p < all.length; p++) {
                all[p] = p;
                double d = planes[i][p] - (double) light[run][from + i * step][p];
                noise += d * d / ((double) frames * all.length);
            }
        }
        return new Filmed(PixelSeries.of(planes, times, all), noise, at);
    }
}
