package ebblight.core.motion;

import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Figures of the real clips, none of which belong to this project. */
final class RealTrial {

    static final List<String> MASKED = List.of("waterfall", "foliage", "beach");

    /** Which kinds (columns of the region model) each value of a mask admits. */
    static final int[][] ADMITS = {{0}, {1}, {2}, {3}, {0, 1}, {0, 3}};

    /** Ridge of fits that are held to no other weights. */
    private static final double LOOSE = 0.1;

    private static final int WATER = Kind.FLOWING.column();

    private RealTrial() {}

    /** Share of judged pixels of a clip whose kind is right, without strokes and with one for each kind of the mask. */
    record Regions(double plain, double stroked) {}

    static Regions regions(String name, RegionModel model) throws IOException {
        Clip clip = RealClips.masked(name);
        ViewSurvey plain = ViewSurvey.of(clip, Strokes.none(), model, Work.alone());
        int w = plain.map().width();
        int h = plain.map().height();
        int[] mask = RealClips.mask(name, w, h);
        List<Strokes.Stroke> strokes = new ArrayList<>();
        for (int column = 0; column < RegionModel.KINDS; column++) {
            stroke(plain.map(), mask, column).ifPresent(strokes::add);
        }
        ViewSurvey drawn = ViewSurvey.of(clip, new Strokes(strokes), model, Work.alone());
        return new Regions(right(plain.map(), mask), right(drawn.map(), mask));
    }

    /** The same with weights of which each tested clip knows nothing. In the order of {@link #MASKED}. */
    static List<Regions> leftOut(Work work) throws IOException {
        RegionScenes scenes = RegionScenes.of(work);
        List<Regions> regions = new ArrayList<>();
        for (String tested : MASKED) {
            RegionFit fit = new RegionFit(Optional.empty(), LOOSE);
            scenes.addTo(fit, Optional.of(tested), 1);
            regions.add(regions(tested, fit.fit()));
        }
        return regions;
    }

    static double right(RegionMap map, int[] mask) {
        int judged = 0;
        int right = 0;
        for (int p = 0; p < mask.length; p++) {
            if (mask[p] < ADMITS.length) {
                judged++;
                right += admits(map, mask, p) ? 1 : 0;
            }
        }
        return right / (double) judged;
    }

    private static boolean admits(RegionMap map, int[] mask, int p) {
        int column = map.parts().get(map.partAt(p)).kind().column();
        for (int admitted : ADMITS[mask[p]]) {
            if (admitted == column) {
                return true;
            }
        }
        return false;
    }

    /** A level line through the middle of the largest square of a kind that was told wrongly, as long as that square. */
    private static Optional<Strokes.Stroke> stroke(RegionMap map, int[] mask, int column) {
        int w = map.width();
        int h = map.height();
        int[] side = new int[mask.length];
        int best = 0;
        for (int p = 0; p < mask.length; p++) {
            if (mask[p] == column && !admits(map, mask, p)) {
                int x = p % w;
                boolean inside = x > 0 && p >= w;
                side[p] = 1 + (inside ? Math.min(side[p - 1], Math.min(side[p - w], side[p - w - 1])) : 0);
                best = side[p] > side[best] ? p : best;
            }
        }
        if (side[best] < 3) {
            return Optional.empty();
        }
        double y = (best / w - side[best] / 2) / (h - 1.0);
        Strokes.Point from = new Strokes.Point((best % w - side[best] + 1) / (w - 1.0), y);
        Strokes.Point to = new Strokes.Point(best % w / (w - 1.0), y);
        return Optional.of(new Strokes.Stroke(Kind.ofColumn(column), List.of(from, to)));
    }

    /**
     * How many stops of shutter time the water of the waterfall's first half leads astray, at 1 to 2 s: against the
     * whole clip, which holds stretches of that length.
     */
    static double[] waterfallFromItsHalf() throws IOException {
        Clip whole = RealClips.masked("waterfall");
        boolean[] keep = new boolean[whole.frames()];
        for (int i = 0; i < keep.length / 2; i++) {
            keep[i] = true;
        }
        ClipCurve told = water("waterfall", whole.only(keep));
        ClipCurve held = water("waterfall", whole);
        double[] stops = new double[5];
        for (int k = 0; k < stops.length; k++) {
            double seconds = 1 + 0.25 * k;
            stops[k] = 2
                    * Math.abs(Powers.log2(
                            told.at(seconds).ratio() / held.at(seconds).ratio()));
        }
        return stops;
    }

    private static ClipCurve water(String name, Clip clip) throws IOException {
        LuminanceFrames frames = LuminanceFrames.of(clip, Work.alone());
        PixelSeries series = PixelSeries.where(water(name, frames), frames.all(), frames.timesSeconds());
        NoiseModel noise = NoiseModel.of(frames, frames.mean(0, frames.count()));
        return ClipCurve.of(Variogram.of(series, noise.at(series.mean())), false, Crests.NONE);
    }

    private static float[] water(String name, LuminanceFrames frames) throws IOException {
        int[] mask = RealClips.mask(name, frames.width(), frames.height());
        float[] water = new float[mask.length];
        for (int p = 0; p < water.length; p++) {
            water[p] = mask[p] == WATER ? 1 : 0;
        }
        return water;
    }

    /** The smoothest that any flowing part of the waterfall is said to become within 16 minutes, change and standing. */
    static double waterfallAtItsSmoothest() throws IOException {
        ViewSurvey survey =
                ViewSurvey.of(RealClips.masked("waterfall"), Strokes.none(), RegionModel.standard(), Work.alone());
        double least = 1;
        for (RegionMotion region : Measurement.of(survey, Work.alone()).regions()) {
            if (region.part().kind() == Kind.FLOWING && region.flags().seen()) {
                double change = region.texture() * region.at().apply(960).ratio();
                least = Math.min(least, Math.sqrt(change * change + region.standing() * region.standing()));
            }
        }
        return least;
    }

    /**
     * What means of surf frames 12 s apart keep against what the 22 s clip says of that time.
     *
     * @param breakers whether the clip is told to hold breaking waves
     * @param frames how many frames each mean takes
     * @param kept true share of the contrast
     * @param low lower end of the likely range
     * @param high upper end
     */
    record Surf(boolean breakers, int[] frames, double[] kept, double[] low, double[] high) {}

    static Surf surf() throws IOException {
        Clip clip = RealClips.masked("beach");
        ViewSurvey survey = ViewSurvey.of(clip, Strokes.none(), RegionModel.standard(), Work.alone());
        boolean breakers = false;
        Optional<RegionMotion> largest = Optional.empty();
        for (RegionMotion region : Measurement.of(survey, Work.alone()).regions()) {
            if (region.part().kind() == Kind.FLOWING && largest.isEmpty()) {
                largest = Optional.of(region);
                breakers = region.flags().breakers();
            }
        }
        RegionMotion water = largest.orElseThrow();
        LuminanceFrames spaced = LuminanceFrames.of(RealClips.read(RealClips.file("beach/every12s"), 0), Work.alone());
        float[] mask = water("beach", spaced);
        int[] frames = {2, 3, 5, 7, 10};
        Surf surf = new Surf(
                breakers, frames, new double[frames.length], new double[frames.length], new double[frames.length]);
        double one = varianceOfMeans(spaced, mask, 1);
        for (int k = 0; k < frames.length; k++) {
            Remaining at = water.at().apply(frames[k] * spaced.spacingSeconds());
            surf.kept[k] = Math.sqrt(varianceOfMeans(spaced, mask, frames[k]) / one);
            surf.low[k] = at.low();
            surf.high[k] = at.high();
        }
        return surf;
    }

    /** Variance between means of {@code n} neighbouring frames, the mean over all marked pixels. */
    private static double varianceOfMeans(LuminanceFrames frames, float[] mask, int n) {
        int groups = frames.count() / n;
        float[][] means = new float[groups][];
        for (int g = 0; g < groups; g++) {
            means[g] = frames.mean(g * n, (g + 1) * n);
        }
        double sum = 0;
        for (int p = 0; p < mask.length; p++) {
            double mean = 0;
            for (float[] m : means) {
                mean += m[p] / groups;
            }
            for (float[] m : means) {
                sum += mask[p] * (m[p] - mean) * (m[p] - mean) / (groups - 1);
            }
        }
        return sum;
    }

    /** Share of the upper half of the clouds' picture that is called drifting, and whether a drift is told. */
    record Sky(double drifting, boolean told) {}

    static Sky sky(Strokes strokes) throws IOException {
        Clip clip = RealClips.read(RealClips.file("clouds"), 0);
        ViewSurvey survey = ViewSurvey.of(clip, strokes, RegionModel.standard(), Work.alone());
        RegionMap map = survey.map();
        int upper = map.width() * (map.height() / 2);
        double drifting = 0;
        for (int p = 0; p < upper; p++) {
            drifting += map.parts().get(map.partAt(p)).kind() == Kind.DRIFTING ? 1.0 / upper : 0;
        }
        boolean told = false;
        for (RegionMotion region : Measurement.of(survey, Work.alone()).regions()) {
            told |= region.velocity().isPresent();
        }
        return new Sky(drifting, told);
    }

    /** One line across the sky. */
    static Strokes acrossTheSky() {
        return new Strokes(List.of(
                new Strokes.Stroke(Kind.DRIFTING, List.of(new Strokes.Point(0.2, 0.2), new Strokes.Point(0.8, 0.25)))));
    }
}
