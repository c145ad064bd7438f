package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.demo.Sensor;
import ebblight.demo.View;
import ebblight.demo.Weather;
import java.util.ArrayList;
import java.util.List;

/**
 * A whole view of the demo's coast, filmed and surveyed, against what is true of it.
 *
 * @param right share of pixels told rightly, among those whose surroundings are all of their own kind
 * @param rightButSwaying the same without those that truly sway
 * @param rightOfKind the same for each kind, by column of the region model; NaN where the view has none
 * @param noise told variance of the noise over the true one, in eight classes of luminance
 * @param drift error of the clouds' mean drift as a share of it; 1 where none is told
 * @param driftStated relative error that was stated with it
 * @param still whether the camera, which does not move, is called still
 */
record ViewTrial(
        double right,
        double rightButSwaying,
        double[] rightOfKind,
        double[] noise,
        double drift,
        double driftStated,
        boolean still) {

    private static final int FRAMES = 100;
    private static final int PER_SECOND = 10;
    private static final int CLASSES = 8;

    /** Brighter than this the sensor cuts off some of the noise. */
    private static final double WHITE = 0.9;

    /** Pixels of a core are this far from any other kind, at 480 px width. */
    static final int CORE_PIXELS_OF_480 = 6;

    /** A view, ten seconds of it without noise, and the same as a camera takes them. */
    record Film(View view, RgbPicture[] clean, Clip clip) {
        /** How each pixel truly moves, as columns of the region model. */
        int[] columns(Work work) {
            Kind[] kinds = view.kinds(work);
            int[] columns = new int[kinds.length];
            for (int p = 0; p < columns.length; p++) {
                columns[p] = kinds[p].column();
            }
            return columns;
        }
    }

    static Film film(Weather weather, int width, double iso, Work work) {
        View view = Coast.in(weather).view(width, work);
        Sensor sensor = new Sensor(iso);
        double[] times = new double[FRAMES];
        RgbPicture[] clean = new RgbPicture[FRAMES];
        byte[][] codes = new byte[FRAMES][];
        work.forEach(FRAMES, i -> {
            times[i] = (double) i / PER_SECOND;
            clean[i] = view.frame(times[i]);
            codes[i] = sensor.srgb8(clean[i], 31L * i + 7);
        });
        return new Film(view, clean, Clip.of(width, view.height(), times, List.of(codes), Clip.Coding.SRGB8));
    }

    static ViewTrial of(Weather weather, int width, double iso, Work work) {
        Film film = film(weather, width, iso, work);
        View view = film.view;
        ViewSurvey survey = ViewSurvey.of(film.clip, Strokes.none(), RegionModel.standard(), work);
        Kind[] kinds = view.kinds(work);
        double[] found = new double[RegionModel.KINDS];
        double[] all = new double[RegionModel.KINDS];
        boolean corrected = survey.crop() > 0;
        for (int p : core(kinds, width, CORE_PIXELS_OF_480 * width / 480)) {
            int x = p % width - survey.crop();
            int y = p / width - survey.crop();
            if (x >= 0 && y >= 0 && x < survey.map().width() && y < survey.map().height()) {
                int part = survey.map().partAt(y * survey.map().width() + x);
                all[kinds[p].column()]++;
                found[kinds[p].column()] += survey.map().parts().get(part).kind() == kinds[p] ? 1 : 0;
            }
        }
        double right = 0;
        double judged = 0;
        int sway = Kind.SWAYING.column();
        double swaying = found[sway];
        double sways = all[sway];
        for (int k = 0; k < all.length; k++) {
            right += found[k];
            judged += all[k];
            found[k] /= all[k];
        }
        View.Drift truth = view.meanDrift(kinds);
        double drift = 1;
        double stated = 1;
        for (RegionMotion region : Measurement.of(survey, work).regions()) {
            if (region.part().kind() == Kind.DRIFTING && region.velocity().isPresent() && drift == 1) {
                RegionMotion.Velocity v = region.velocity().get();
                drift = Math.sqrt(square(v.x() - truth.right()) + square(v.y() - truth.down()))
                        / Math.sqrt(square(truth.right()) + square(truth.down()));
                stated = v.relativeError();
            }
        }
        double[] noise = corrected
                ? new double[0]
                : noise(film.clip, film.clean, survey.parts().noise());
        boolean still = survey.camera().verdict() == Camera.Verdict.STILL;
        return new ViewTrial(right / judged, (right - swaying) / (judged - sways), found, noise, drift, stated, still);
    }

    private static double square(double x) {
        return x * x;
    }

    private static List<Integer> core(Kind[] kinds, int width, int radius) {
        int height = kinds.length / width;
        List<Integer> core = new ArrayList<>();
        for (int p = 0; p < kinds.length; p++) {
            boolean same = true;
            for (int dy = -radius; dy <= radius && same; dy++) {
                for (int dx = -radius; dx <= radius && same; dx++) {
                    int x = Math.max(0, Math.min(width - 1, p % width + dx));
                    int y = Math.max(0, Math.min(height - 1, p / width + dy));
                    same = kinds[y * width + x] == kinds[p];
                }
            }
            if (same) {
                core.add(p);
            }
        }
        return core;
    }

    /** Told over true variance; true is what sensor and coding did to the frames, pixel by pixel. */
    private static double[] noise(Clip clip, RgbPicture[] clean, NoiseModel model) {
        int n = clip.width() * clip.height();
        float[] filmed = new float[n];
        float[] light = new float[n];
        double[] limits = new double[CLASSES + 1];
        double[] sum = new double[CLASSES];
        double[] told = new double[CLASSES];
        for (int i = 0; i < clean.length; i += 10) {
            clip.luminance(i, filmed);
            double[] sorted = new double[n];
            for (int p = 0; p < n; p++) {
                light[p] = (float)
                        (0.2126 * clean[i].red()[p] + 0.7152 * clean[i].green()[p] + 0.0722 * clean[i].blue()[p]);
                sorted[p] = light[p];
            }
            for (int k = 0; k <= CLASSES && i == 0; k++) {
                limits[k] = Quantiles.quantile(sorted, n, (double) k / CLASSES);
            }
            for (int p = 0; p < n; p++) {
                boolean clipped =
                        Math.max(clean[i].red()[p], Math.max(clean[i].green()[p], clean[i].blue()[p])) > WHITE;
                for (int k = 0; k < CLASSES && !clipped; k++) {
                    if (light[p] >= limits[k] && light[p] < limits[k + 1]) {
                        sum[k] += square(filmed[p] - (double) light[p]);
                        told[k] += model.at(light[p]);
                    }
                }
            }
        }
        for (int k = 0; k < CLASSES; k++) {
            told[k] /= sum[k];
        }
        return told;
    }
}
