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
    private final Optional<Stills> stills;
    private final KindCurves curves;
    private final Drift drift;
    private final Repeats repeats;
    private final List<RegionMotion> regions;

    private Measurement(
            ViewSurvey survey,
            Optional<Stills> stills,
            KindCurves curves,
            Drift drift,
            Repeats repeats,
            List<RegionMotion> regions) {
        this.survey = survey;
        this.stills = stills;
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
        ClipCurves maker = new ClipCurves(parts);
        boolean breakers = maker.breakers();
        // Frames over minutes hold the sets themselves; a clip of seconds does not.
        boolean spaced = Clip.spaced(survey.clip().spacingSeconds());
        boolean setsUnknown = breakers && !spaced;
        KindCurves curves = KindCurves.of(parts, maker, setsUnknown);
        work.check();
        Drift drift = drift(parts, work);
        work.check();
        Repeats repeats = Repeats.of(parts.frames(), moving(soft));
        Standing.Meter standing = mask -> Standing.of(parts.frames(), mask);
        List<RegionMotion> measured =
                regions(parts, new Ways(maker, curves, drift, standing, breakers, setsUnknown, spaced), work);
        return new Measurement(survey, Optional.empty(), curves, drift, repeats, measured);
    }

    /** Measures the parts of a survey of levelled stills that has any. */
    public static Measurement of(ViewSurvey survey, Stills stills, Work work) {
        work.progress(0.5, "measuring what each exposure time left");
        ViewSurvey.Parts parts = survey.parts();
        KindCurves.Maker maker = (share, unknown) -> StillsCurve.of(parts.frames(), stills, share);
        KindCurves curves = KindCurves.of(parts, maker, false);
        Drift drift = drift(parts, work);
        float[] shortest = parts.frames().frame(stills.shortest());
        float[] longest = parts.frames().frame(stills.longest());
        Standing.Meter standing = mask -> Standing.between(parts.frames(), shortest, longest, mask);
        List<RegionMotion> measured =
                regions(parts, new Ways(maker, curves, drift, standing, false, false, true), work);
        return new Measurement(survey, Optional.of(stills), curves, drift, new Repeats(0), measured);
    }

    /** How everything that a region is asked for is found. */
    private record Ways(
            KindCurves.Maker maker,
            KindCurves curves,
            Drift drift,
            Standing.Meter standing,
            boolean breakers,
            boolean setsUnknown,
            boolean spaced) {}

    private static List<RegionMotion> regions(ViewSurvey.Parts parts, Ways ways, Work work) {
        List<RegionMap.Part> list = parts.map().parts();
        FlowLines[] lines = new FlowLines[list.size()];
        for (int k = 0; k < lines.length; k++) {
            boolean draws = list.get(k).kind() == Kind.FLOWING && !ways.spaced;
            lines[k] = draws ? FlowLines.of(parts.frames(), parts.map().mask(k), work) : FlowLines.NONE;
        }
        RegionMotion[] measured = new RegionMotion[list.size()];
        work.forEach(
                measured.length,
                k -> measured[k] = region(parts, list.get(k), parts.map().mask(k), ways, lines[k]));
        return List.of(measured);
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
            ViewSurvey.Parts parts, RegionMap.Part part, float[] mask, Ways ways, FlowLines lines) {
        boolean wet = part.kind() == Kind.FLOWING;
        boolean breaking = ways.breakers && wet;
        Optional<TextureCurve> own = ways.maker.ifEnough(mask, ways.setsUnknown && wet);
        Optional<TextureCurve> ofKind =
                switch (part.kind()) {
                    case FLOWING -> ways.curves.flowing();
                    case SWAYING -> ways.curves.swaying();
                    case FIXED, DRIFTING -> Optional.empty();
                };
        boolean borrowed = own.isEmpty() && ofKind.isPresent();
        TextureCurve curve = own.or(() -> ofKind).orElseGet(() -> ways.maker.make(mask, false));
        double mean = SoftRegions.meanOver(parts.mean(), mask);
        double texture = mean > 0 ? Math.sqrt(curve.varianceAtOnce()) / mean : 0;
        boolean listed = wet || part.kind() == Kind.SWAYING;
        List<Remaining> remaining = new ArrayList<>();
        if (listed) {
            for (double seconds : listedSeconds()) {
                remaining.add(curve.at(seconds));
            }
        }
        Optional<RegionMotion.Velocity> velocity = Optional.empty();
        if (part.kind() == Kind.DRIFTING && ways.drift.told()) {
            double[] v = ways.drift.meanVelocity(mask);
            velocity = Optional.of(new RegionMotion.Velocity(v[0], v[1], ways.drift.relativeError()));
        }
        boolean seen = listed && curve.seen();
        boolean clip = seen && !ways.spaced;
        Swing swing = Swing.of(parts.frames(), mask, curve, parts.noise());
        return new RegionMotion(
                part,
                texture,
                // Foam that outlasts the clip would count as standing: for breaking waves nothing is known of it.
                breaking ? 0 : ways.standing.of(mask),
                listed ? curve.correlationSeconds() : 0,
                velocity,
                List.copyOf(remaining),
                new RegionMotion.Flags(curve.seen(), curve.resolved(), breaking, borrowed, listed && curve.coarse()),
                clip ? Rhythm.of(parts.frames(), mask) : Rhythm.NONE,
                seen ? lines : FlowLines.NONE,
                seen ? Passing.of(parts.frames(), mask, parts.noise()) : Passing.NONE,
                curve::at,
                swing::pixels);
    }

    public ViewSurvey survey() {
        return survey;
    }

    /** The parts, largest first. */
    public List<RegionMotion> regions() {
        return regions;
    }

    /** Whether it rests on stills of different exposure times. */
    public boolean ofStills() {
        return stills.isPresent();
    }

    /** Time after which the clip repeats itself, in seconds; 0 when it does not. */
    public double repeatsAfterSeconds() {
        return repeats.periodSeconds();
    }

    /** The preview of any exposure time; {@code work} serves all its pictures. */
    public Preview preview(Work work) {
        work.progress(0.7, "preparing the preview");
        return stills.isPresent()
                ? new StillsPreview(survey, stills.get(), curves, work)
                : ClipPreview.of(survey, curves, drift, work);
    }

    /** Variance of sensor noise of one frame at a luminance, squared linear luminance. */
    double noiseAt(double luminance) {
        return survey.parts().noise().at(luminance);
    }
}
