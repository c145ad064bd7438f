package ebblight.core.motion;

import ebblight.core.numeric.Work;
import java.util.Optional;

/**
 * What the parts of a picture are told from. Looking at the frames is done once; strokes part the picture anew from what
 * is kept here.
 *
 * @param frames luminance of the frames, levelled
 * @param mean mean luminance over time
 * @param colour mean red, green and blue over time
 * @param noise of the frames
 * @param features of every pixel, one map a feature
 * @param logits of the kinds at every pixel without strokes, one map a kind; never changed
 * @param median luminance over time
 * @param rest how much of the time every pixel rests between changes, by {@link SwayRims}
 * @param plain the parts without strokes
 */
record Parting(
        LuminanceFrames frames,
        float[] mean,
        float[][] colour,
        NoiseModel noise,
        float[][] features,
        float[][] logits,
        float[] median,
        float[] rest,
        Decided plain) {

    /** Soft shares, the parts they make, and the horizon. */
    private record Decided(SoftRegions regions, RegionMap map, Optional<Horizon> horizon) {}

    static Parting of(Clip clip, RegionModel model, Work work) {
        int w = clip.width();
        int h = clip.height();
        LuminanceFrames frames = LuminanceFrames.of(clip, work);
        float[] mean = frames.mean(0, frames.count());
        NoiseModel noise = NoiseModel.of(frames, mean);
        float[][] colour = meanColour(clip, work);
        float[][] features =
                RegionFeatures.of(frames, mean, noise, colour, work).maps();
        float[][] logits = new float[RegionModel.KINDS][w * h];
        work.forEach(h, y -> {
            for (int p = y * w; p < (y + 1) * w; p++) {
                model.logits(features, p, logits);
            }
        });
        SlowChange.apply(frames, mean, logits, work);
        Unlit.apply(mean, features[1], logits);
        float[] median = frames.median(work);
        float[] rest = SwayRims.rest(frames, median, noise, work);
        Decided plain = decide(logits, logits, median, rest, w, h, work);
        return new Parting(frames, mean, colour, noise, features, logits, median, rest, plain);
    }

    /** The parts as strokes in this very picture correct them; names stay with the parts they were given to. */
    ViewSurvey.Parts parts(Strokes strokes, RegionModel model, Work work) {
        if (strokes.isEmpty()) {
            return parts(plain, plain.map());
        }
        int w = frames.width();
        int h = frames.height();
        float[][] lifted = new float[logits.length][];
        for (int c = 0; c < lifted.length; c++) {
            lifted[c] = logits[c].clone();
        }
        StrokeLift.apply(strokes, model, features, colour, w, h, lifted);
        Decided drawn = decide(lifted, logits, median, rest, w, h, work);
        return parts(drawn, drawn.map().named(plain.map()));
    }

    private ViewSurvey.Parts parts(Decided decided, RegionMap map) {
        return new ViewSurvey.Parts(frames, mean, colour, noise, decided.regions(), map, decided.horizon());
    }

    /** By {@code logits}, which strokes have lifted over the {@code plain} ones. */
    private static Decided decide(
            float[][] logits, float[][] plain, float[] median, float[] rest, int w, int h, Work work) {
        SoftRegions regions = SwayRims.apply(SoftRegions.of(logits, median, w, h, work), rest);
        int fixed = Kind.FIXED.column();
        Optional<Horizon> horizon = Horizon.find(regions, median);
        SoftRegions cut = horizon.map(
                        line -> FarWater.apply(line.apply(regions), line, median, logits[fixed], plain[fixed]))
                .orElse(regions);
        return new Decided(cut, RegionMap.of(cut), horizon);
    }

    private static float[][] meanColour(Clip clip, Work work) {
        int n = clip.width() * clip.height();
        float[][] mean = new float[3][n];
        work.forEach(3, c -> {
            float[] plane = new float[n];
            double[] sum = new double[n];
            for (int i = 0; i < clip.frames(); i++) {
                clip.channel(i, c, plane);
                for (int p = 0; p < n; p++) {
                    sum[p] += plane[p];
                }
            }
            for (int p = 0; p < n; p++) {
                mean[c][p] = (float) (sum[p] / clip.frames());
            }
        });
        return mean;
    }
}
