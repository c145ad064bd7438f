package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;
import java.util.Arrays;
import java.util.Optional;

/**
 * What a clip shows before any water is measured: what the camera did, how the light changed, how noisy the frames
 * are, and which parts of the picture move in which way.
 */
public final class ViewSurvey {

    /** Frames tracked to learn whether the camera moved at all. */
    private static final int FRAMES_TO_JUDGE = 24;

    /** A frame darker than this share of the median frame belongs to a fade. */
    private static final double FADED = 0.3;

    private static final float[] UNKNOWN = {};

    private final Clip clip;
    private final Camera camera;
    private final Placement[] placements;
    private final int crop;
    private final int framesLeftOut;
    private final Optional<Parting> parting;
    private final Optional<Parts> parts;

    private ViewSurvey(
            Clip clip,
            Camera camera,
            Placement[] placements,
            int crop,
            int framesLeftOut,
            Optional<Parting> parting,
            Optional<Parts> parts) {
        this.clip = clip;
        this.camera = camera;
        this.placements = placements;
        this.crop = crop;
        this.framesLeftOut = framesLeftOut;
        this.parting = parting;
        this.parts = parts;
    }

    /** What is known of the picture's parts; nothing of it exists when the camera moved too far. */
    record Parts(
            LuminanceFrames frames,
            float[] mean,
            float[][] meanColour,
            NoiseModel noise,
            SoftRegions regions,
            RegionMap map,
            Optional<Horizon> horizon) {}

    /**
     * Surveys a clip of two frames or more.
     *
     * @param strokes corrections by hand, or none
     */
    public static ViewSurvey of(Clip clip, Strokes strokes, RegionModel model, Work work) {
        if (clip.frames() < 2) {
            throw new IllegalArgumentException("a survey needs two frames or more, had " + clip.frames());
        }
        work.progress(0, "looking whether the camera moved");
        float[][] raw = LuminanceFrames.raw(clip, work);
        Clip lit = withoutFades(clip, raw);
        int leftOut = clip.frames() - lit.frames();
        if (leftOut > 0) {
            raw = LuminanceFrames.raw(lit, work);
        }
        int step = Math.max(1, raw.length / FRAMES_TO_JUDGE);
        Camera camera = Camera.judge(CameraTrack.of(raw, lit.width(), lit.height(), step, UNKNOWN, work), lit.width());
        Optional<Parting> parting = Optional.empty();
        float[] stillness = UNKNOWN;
        if (camera.verdict() != Camera.Verdict.STILL) {
            // Try again on what the regions take for fixed: a sky that drifts as one can pass for a moving camera.
            Parting found = parting(lit, model, work);
            parting = Optional.of(found);
            float[] fixed = found.parts(Strokes.none(), model, work).regions().share(Kind.FIXED);
            CameraTrack again = CameraTrack.of(raw, lit.width(), lit.height(), step, fixed, work);
            Camera judged = Camera.judge(again, lit.width());
            if (camera.verdict() == Camera.Verdict.UNSURE || judged.verdict() == Camera.Verdict.STILL) {
                camera = judged;
                stillness = fixed;
            }
        }
        if (camera.verdict() == Camera.Verdict.CORRECTED) {
            work.progress(0.15, "putting the frames back in place");
            CameraTrack track = CameraTrack.of(raw, lit.width(), lit.height(), 1, stillness, work);
            camera = Camera.judge(track, lit.width());
            int crop = SteadyClip.crop(track.placements(), lit.width());
            if (4 * crop >= Math.min(lit.width(), lit.height())) {
                camera = new Camera(Camera.Verdict.REFUSED, camera.rmsPixels(), camera.largestPixels());
            } else if (camera.verdict() == Camera.Verdict.CORRECTED) {
                Clip steady = SteadyClip.of(lit, track.placements(), crop, work);
                return new ViewSurvey(
                                steady,
                                camera,
                                track.placements(),
                                crop,
                                leftOut,
                                Optional.of(parting(steady, model, work)),
                                Optional.empty())
                        .with(strokes, model, work);
            }
        }
        if (camera.verdict() == Camera.Verdict.REFUSED) {
            parting = Optional.empty();
        } else if (parting.isEmpty()) {
            parting = Optional.of(parting(lit, model, work));
        }
        return new ViewSurvey(lit, camera, new Placement[0], 0, leftOut, parting, Optional.empty())
                .with(strokes, model, work);
    }

    /**
     * The same view with other strokes: parts it anew without looking at the frames again. Strokes say how parts move;
     * what the camera did was told without them.
     */
    public ViewSurvey with(Strokes strokes, RegionModel model, Work work) {
        Strokes here = strokes.cropped(crop, clip.width() + 2 * crop, clip.height() + 2 * crop);
        Optional<Parts> drawn = parting.map(found -> found.parts(here, model, work));
        return new ViewSurvey(clip, camera, placements, crop, framesLeftOut, parting, drawn);
    }

    private static Parting parting(Clip clip, RegionModel model, Work work) {
        work.progress(0.3, "telling the parts of the picture apart");
        return Parting.of(clip, model, work);
    }

    private static Clip withoutFades(Clip clip, float[][] raw) {
        double[] means = new double[raw.length];
        for (int i = 0; i < raw.length; i++) {
            double sum = 0;
            for (float v : raw[i]) {
                sum += v;
            }
            means[i] = sum / raw[i].length;
        }
        double limit = FADED * Quantiles.median(means.clone(), means.length);
        boolean[] keep = new boolean[raw.length];
        for (int i = 0; i < raw.length; i++) {
            keep[i] = means[i] > limit || limit == 0;
        }
        return clip.only(keep);
    }

    /** The frames that were used: without fades, put back in place where the camera moved. */
    public Clip clip() {
        return clip;
    }

    public Camera camera() {
        return camera;
    }

    /** Where every used frame lay, in pixels of the survey before cropping; empty unless it was corrected. */
    public Placement[] placements() {
        return Arrays.copyOf(placements, placements.length);
    }

    /** Survey pixels cut at every side by the correction. */
    public int crop() {
        return crop;
    }

    /** Frames of a fade that were not used. */
    public int framesLeftOut() {
        return framesLeftOut;
    }

    /** Whether the parts of the picture could be told: false when the camera moved too far. */
    public boolean hasParts() {
        return parts.isPresent();
    }

    Parts parts() {
        return parts.orElseThrow(() -> new IllegalStateException("the camera moved too far: there are no parts"));
    }

    /** The parts of the picture. */
    public RegionMap map() {
        return parts().map();
    }

    /** Soft shares of the four kinds. */
    public SoftRegions regions() {
        return parts().regions();
    }

    /** Fading in stops per minute, positive when it grows darker. */
    public double fadingStopsPerMinute() {
        return parts().frames().drift().stopsPerMinute();
    }

    /** The line between sky and water where it is clear. */
    public Optional<Horizon> horizon() {
        return parts().horizon();
    }
}
