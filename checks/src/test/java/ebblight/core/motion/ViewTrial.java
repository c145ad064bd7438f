package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.demo.Scene;
import ebblight.demo.Sensor;
import ebblight.demo.View;
import ebblight.demo.ViewTruth;
import ebblight.demo.Weather;
import java.util.List;
import java.util.Optional;

/**
 * A whole view of the demo's coast, filmed and surveyed, against what is true of it.
 *
 * @param right share of pixels told rightly, among those of the cores: all round them are of their own kind, and none
 *     shows rock and water in turn
 * @param rightButSwaying the same without those that truly sway
 * @param rightOfKind the same for each kind, by column of the region model; NaN where the view has none
 * @param cover share of the view that the cores cover
 * @param inTurn what is told where rock and water take turns
 * @param noise told variance of the noise over the true one, in eight classes of luminance
 * @param drift error of the clouds' mean drift as a share of it; 1 where none is told
 * @param driftStated relative error that was stated with it
 * @param still whether the camera, which does not move, is called still
 */
record ViewTrial(
        double right,
        double rightButSwaying,
        double[] rightOfKind,
        double cover,
        InTurn inTurn,
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

    /**
     * What is told where rock and water take turns.
     *
     * @param share of the view
     * @param fixed share of it told as fixed
     * @param flowing share of it told as flowing; the rest sways
     */
    record InTurn(double share, double fixed, double flowing) {}

    /** A view, ten seconds of it without noise, and the same as a camera takes them. */
    record Film(View view, RgbPicture[] clean, Clip clip) {}

    /** How each pixel truly moves, as columns of the region model. */
    static int[] columns(Scene scene, Work work) {
        Kind[] kinds = scene.kinds(work);
        int[] columns = new int[kinds.length];
        for (int p = 0; p < columns.length; p++) {
            columns[p] = kinds[p].column();
        }
        return columns;
    }

    static Film film(Weather weather, int width, double iso, Work work) {
        View view = Coast.in(weather).view(width, work);
        RgbPicture[] clean = new RgbPicture[FRAMES];
        work.forEach(FRAMES, i -> clean[i] = view.frame((double) i / PER_SECOND));
        return new Film(view, clean, clip(clean, iso, work));
    }

    /** A scene as a camera takes it. */
    static Clip film(Scene scene, double iso, Work work) {
        RgbPicture[] clean = new RgbPicture[FRAMES];
        work.forEach(FRAMES, i -> clean[i] = scene.frame((double) i / PER_SECOND));
        return clip(clean, iso, work);
    }

    private static Clip clip(RgbPicture[] clean, double iso, Work work) {
        Sensor sensor = new Sensor(iso);
        double[] times = new double[FRAMES];
        byte[][] codes = new byte[FRAMES][];
        work.forEach(FRAMES, i -> {
            times[i] = (double) i / PER_SECOND;
            codes[i] = sensor.srgb8(clean[i], 31L * i + 7);
        });
        return Clip.of(clean[0].width(), clean[0].height(), times, List.of(codes), Clip.Coding.SRGB8);
    }

    static ViewTrial of(Weather weather, int width, double iso, Work work) {
        Film film = film(weather, width, iso, work);
        View view = film.view;
        ViewSurvey survey = ViewSurvey.of(film.clip, Strokes.none(), RegionModel.standard(), work);
        ViewTruth truth = view.truth(work);
        Kind[] kinds = truth.kinds();
        double[] found = new double[RegionModel.KINDS];
        double[] all = new double[RegionModel.KINDS];
        boolean corrected = survey.crop() > 0;
        boolean[] core = core(truth, width, CORE_PIXELS_OF_480 * width / 480);
        double turning = 0;
        double[] turnsTold = new double[RegionModel.KINDS];
        for (int p = 0; p < kinds.length; p++) {
            Optional<Kind> told = told(survey, p, width);
            if (core[p] && told.isPresent()) {
                all[kinds[p].column()]++;
                found[kinds[p].column()] += told.get() == kinds[p] ? 1 : 0;
            } else if (truth.inTurn()[p] && told.isPresent()) {
                turning++;
                turnsTold[told.get().column()]++;
            }
        }
        InTurn inTurn = new InTurn(
                turning / kinds.length,
                turnsTold[Kind.FIXED.column()] / turning,
                turnsTold[Kind.FLOWING.column()] / turning);
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
        View.Drift mean = view.meanDrift(kinds);
        double drift = 1;
        double stated = 1;
        for (RegionMotion region : Measurement.of(survey, work).regions()) {
            if (region.part().kind() == Kind.DRIFTING && region.velocity().isPresent() && drift == 1) {
                RegionMotion.Velocity v = region.velocity().get();
                drift = Math.sqrt(square(v.x() - mean.right()) + square(v.y() - mean.down()))
                        / Math.sqrt(square(mean.right()) + square(mean.down()));
                stated = v.relativeError();
            }
        }
        double[] noise = corrected
                ? new double[0]
                : noise(film.clip, film.clean, survey.parts().noise());
        boolean still = survey.camera().verdict() == Camera.Verdict.STILL;
        return new ViewTrial(
                right / judged,
                (right - swaying) / (judged - sways),
                found,
                judged / kinds.length,
                inTurn,
                noise,
                drift,
                stated,
                still);
    }

    /** What pixel {@code p} of the view is told to be; nothing where the correction of the camera cut it off. */
    private static Optional<Kind> told(ViewSurvey survey, int p, int width) {
        RegionMap map = survey.map();
        int x = p % width - survey.crop();
        int y = p / width - survey.crop();
        boolean inside = x >= 0 && y >= 0 && x < map.width() && y < map.height();
        return inside
                ? Optional.of(map.parts().get(map.partAt(y * map.width() + x)).kind())
                : Optional.empty();
    }

    private static double square(double x) {
        return x * x;
    }

    /** Whatever shows rock and water in turn is a kind of its own here, and no core. */
    private static boolean[] core(ViewTruth truth, int width, int radius) {
        Kind[] kinds = truth.kinds();
        int height = kinds.length / width;
        boolean[] core = new boolean[kinds.length];
        for (int p = 0; p < kinds.length; p++) {
            boolean same = !truth.inTurn()[p];
            for (int dy = -radius; dy <= radius && same; dy++) {
                for (int dx = -radius; dx <= radius && same; dx++) {
                    int x = Math.max(0, Math.min(width - 1, p % width + dx));
                    int y = Math.max(0, Math.min(height - 1, p / width + dy));
                    same = kinds[y * width + x] == kinds[p] && !truth.inTurn()[y * width + x];
                }
            }
            core[p] = same;
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
