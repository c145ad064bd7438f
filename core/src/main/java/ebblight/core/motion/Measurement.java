package ebblight.core.motion;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All that a clip tells about how its parts move; the statistics behind every answer of the program. */
public final class Measurement {

    /** Exposure times at which what is left is listed: whole stops from 1/8 s, the last one 960 s. */
    private static final double FIRST_SECONDS = 0.125;

    private static final double LAST_SECONDS = 960;
    private static final double LEAST_CLOUD = 0.01;

    private final ViewSurvey survey;
    private final KindCurves curves;
    private final Drift drift;
    private final Repeats repeats;
    private final List<RegionMotion> regions;

    private Measurement(
            ViewSurvey survey, KindCurves curves, Drift drift, Repeats repeats, List<RegionMotion> regions) {
        this.survey = survey;
        this.curves = curves;
        this.drift = drift;
        this.repeats = repeats;
        this.regions = regions;
    }

    /** Whole stops from 1/8 s to 512 s, and 960 s. */
    public static double[] listedSeconds() {
        double[] seconds = new double[14];
        for (int k = 0; k < 13; k++) {
            seconds[k] = FIRST_SECONDS * (1 << k);
        }
        seconds[13] = LAST_SECONDS;
        return seconds;
    }

    /** Measures the parts of a survey that has any. */
    public static Measurement of(ViewSurvey survey, Work work) {
        work.progress(0.5, "measuring how the parts move");
        ViewSurvey.Parts parts = survey.parts();
        SoftRegions soft = parts.regions();
        boolean breakers = breakers(parts, soft.share(Kind.FLOWING));
        // Frames over minutes hold the sets themselves; a clip of seconds does not.
        boolean setsUnknown = breakers && survey.clip().spacingSeconds() < SlowChange.SPACED_SECONDS;
        KindCurves curves = KindCurves.of(parts, setsUnknown);
        work.check();
        Drift drift = drift(parts, work);
        work.check();
        Repeats repeats = Repeats.of(parts.frames(), moving(soft));
        List<RegionMap.Part> list = parts.map().parts();
        RegionMotion[] measured = new RegionMotion[list.size()];
        work.forEach(measured.length, k -> {
            measured[k] = region(parts, list.get(k), parts.map().mask(k), curves, drift, breakers, setsUnknown);
        });
        return new Measurement(survey, curves, drift, repeats, List.of(measured));
    }

    private static boolean breakers(ViewSurvey.Parts parts, float[] share) {
        int[] at = PixelSeries.thinned(share);
        if (at.length < 100) {
            return false;
        }
        PixelSeries series = PixelSeries.of(parts.frames().all(), parts.frames().timesSeconds(), at);
        TextureCurve curve = TextureCurve.of(Variogram.of(series, parts.noise().at(series.mean())), false);
        return Breakers.look(series, curve);
    }

    private static Drift drift(ViewSurvey.Parts parts, Work work) {
        float[] cloud = parts.regions().share(Kind.DRIFTING);
        float[] weight = new float[cloud.length];
        int count = 0;
        for (int p = 0; p < cloud.length; p++) {
            if (cloud[p] > 0.5f) {
                weight[p] = cloud[p];
                count++;
            }
        }
        return count > LEAST_CLOUD * cloud.length
                ? Drift.of(parts.frames(), weight, work)
                : Drift.none(parts.frames().width(), parts.frames().height());
    }

    private static float[] moving(SoftRegions soft) {
        float[] fixed = soft.share(Kind.FIXED);
        float[] moving = new float[fixed.length];
        for (int p = 0; p < moving.length; p++) {
            moving[p] = 1 - fixed[p];
        }
        return moving;
    }

    private static RegionMotion region(
            ViewSurvey.Parts parts,
            RegionMap.Part part,
            float[] mask,
            KindCurves curves,
            Drift drift,
            boolean breakers,
            boolean setsUnknown) {
        LuminanceFrames frames = parts.frames();
        boolean wet = part.kind() == Kind.FLOWING;
        Optional<TextureCurve> own = KindCurves.curve(parts, mask, setsUnknown && wet);
        Optional<TextureCurve> ofKind =
                switch (part.kind()) {
                    case FLOWING -> curves.flowing();
                    case SWAYING -> curves.swaying();
                    case FIXED, DRIFTING -> Optional.empty();
                };
        boolean borrowed = own.isEmpty() && ofKind.isPresent();
        TextureCurve curve = own.or(() -> ofKind).orElseGet(() -> smallCurve(parts, mask));
        double mean = meanOver(parts.mean(), mask);
        double texture = mean > 0 ? Math.sqrt(curve.varianceAtOnce()) / mean : 0;
        boolean listed = wet || part.kind() == Kind.SWAYING;
        List<Remaining> remaining = new ArrayList<>();
        if (listed) {
            for (double seconds : listedSeconds()) {
                remaining.add(curve.at(seconds));
            }
        }
        Optional<RegionMotion.Velocity> velocity = Optional.empty();
        if (part.kind() == Kind.DRIFTING && drift.told()) {
            double[] v = drift.meanVelocity(mask);
            velocity = Optional.of(new RegionMotion.Velocity(v[0], v[1], drift.relativeError()));
        }
        Swing swing = Swing.of(frames, mask, curve, parts.noise());
        return new RegionMotion(
                part,
                texture,
                standing(frames, mask, breakers && wet),
                listed ? curve.correlationSeconds() : 0,
                velocity,
                List.copyOf(remaining),
                new RegionMotion.Flags(
                        curve.seen(), curve.resolved(), breakers && wet, borrowed, listed && curve.coarse()),
                curve::at,
                swing::pixels);
    }

    /** Foam that outlasts the clip would count as standing: for breaking waves nothing is known of it. */
    private static double standing(LuminanceFrames frames, float[] mask, boolean breaking) {
        return breaking ? 0 : Standing.of(frames, mask);
    }

    private static TextureCurve smallCurve(ViewSurvey.Parts parts, float[] mask) {
        PixelSeries series =
                PixelSeries.where(mask, parts.frames().all(), parts.frames().timesSeconds());
        return TextureCurve.of(Variogram.of(series, parts.noise().at(series.mean())), false);
    }

    private static double meanOver(float[] plane, float[] mask) {
        double sum = 0;
        double count = 0;
        for (int p = 0; p < plane.length; p++) {
            sum += plane[p] * (double) mask[p];
            count += mask[p];
        }
        return count > 0 ? sum / count : 0;
    }

    public ViewSurvey survey() {
        return survey;
    }

    /** The parts, largest first. */
    public List<RegionMotion> regions() {
        return regions;
    }

    /** Time after which the clip repeats itself, in seconds; 0 when it does not. */
    public double repeatsAfterSeconds() {
        return repeats.periodSeconds();
    }

    /** The preview of any exposure time; {@code work} serves all its pictures. */
    public Preview preview(Work work) {
        work.progress(0.7, "preparing the preview");
        return Preview.of(survey, curves, drift, work);
    }

    /** Variance of sensor noise of one frame at a luminance, squared linear luminance. */
    double noiseAt(double luminance) {
        return survey.parts().noise().at(luminance);
    }
}
