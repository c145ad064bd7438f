package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/**
 * The preview that frames of different exposure times give. Between the shortest and the longest, the two are mixed in
 * the parts that move so that as much texture is left as the curves say; beyond the longest, its texture is shrunk.
 */
final class StillsPreview implements Preview {

    private static final double BROAD_WIDTHS = 1.0 / 24;
    private static final float LEAST_LIVE = 1e-3f;

    private final ViewSurvey survey;
    private final Stills stills;
    private final KindCurves curves;
    private final Work work;
    private final RgbPicture shortest;
    private final RgbPicture longest;
    private final RgbPicture broad;
    private final double[] standing;

    StillsPreview(ViewSurvey survey, Stills stills, KindCurves curves, Work work) {
        this.survey = survey;
        this.stills = stills;
        this.curves = curves;
        this.work = work;
        shortest = frame(stills.shortest());
        longest = frame(stills.longest());
        int w = longest.width();
        int h = longest.height();
        float[][] share = survey.regions().all();
        float[] live = new float[w * h];
        for (int p = 0; p < live.length; p++) {
            live[p] = share[Kind.FLOWING.column()][p] + share[Kind.SWAYING.column()][p];
        }
        broad = RgbPicture.black(w, h);
        work.forEach(3, c -> broad(longest.plane(c), live, broad.plane(c), w, h));
        standing = new double[RegionModel.KINDS];
        for (int c = 0; c < standing.length; c++) {
            standing[c] = live(c) ? StillsCurve.standingVariance(survey.parts().frames(), stills, share[c]) : 0;
        }
    }

    /** The plane without its texture where parts move, from moving parts alone so that nothing bleeds in. */
    private static void broad(float[] plane, float[] live, float[] into, int w, int h) {
        float[] scratch = new float[w * h];
        float[] weight = new float[w * h];
        for (int p = 0; p < into.length; p++) {
            into[p] = plane[p] * live[p];
        }
        Blur.gaussian(into, into, scratch, w, h, BROAD_WIDTHS * w);
        Blur.gaussian(live, weight, scratch, w, h, BROAD_WIDTHS * w);
        for (int p = 0; p < into.length; p++) {
            into[p] = weight[p] > LEAST_LIVE ? into[p] / weight[p] : plane[p];
        }
    }

    private static boolean live(int column) {
        Kind kind = Kind.ofColumn(column);
        return kind == Kind.FLOWING || kind == Kind.SWAYING;
    }

    private RgbPicture frame(int i) {
        Clip clip = survey.clip();
        RgbPicture picture = RgbPicture.black(clip.width(), clip.height());
        work.forEach(3, c -> clip.channel(i, c, picture.plane(c)));
        return picture;
    }

    @Override
    public double lengthSeconds() {
        return stills.longestSeconds();
    }

    @Override
    public int framesFor(double seconds) {
        return 1;
    }

    @Override
    public RgbPicture base(double seconds) {
        return baseFrame(seconds) == stills.longest() ? longest : shortest;
    }

    @Override
    public int baseFrame(double seconds) {
        double middle = Math.sqrt(stills.shortestSeconds() * stills.longestSeconds());
        return seconds >= middle ? stills.longest() : stills.shortest();
    }

    @Override
    public Exposure render(double seconds) {
        if (!(seconds > 0)) {
            throw new IllegalArgumentException("an exposure takes more than 0 s, was " + seconds);
        }
        int w = longest.width();
        int h = longest.height();
        double[] mix = new double[RegionModel.KINDS];
        double[] shrink = new double[RegionModel.KINDS];
        for (int c = 0; c < mix.length; c++) {
            boolean live = live(c);
            mix[c] = live ? mix(c, seconds) : seconds >= stills.longestSeconds() ? 1 : mixByTime(seconds);
            shrink[c] = live && seconds > stills.longestSeconds()
                    ? Math.sqrt((curves.variance(c, seconds) + standing[c])
                            / (curves.variance(c, stills.longestSeconds()) + standing[c]))
                    : 1;
        }
        RgbPicture picture = RgbPicture.black(w, h);
        float[] detail = new float[w * h];
        float[][] share = survey.regions().all();
        work.forEach(h, y -> {
            for (int p = y * w; p < (y + 1) * w; p++) {
                double long1 = 0;
                double left = 0;
                for (int c = 0; c < mix.length; c++) {
                    long1 += share[c][p] * mix[c];
                    left += share[c][p] * shrink[c];
                }
                for (int c = 0; c < 3; c++) {
                    double end = broad.plane(c)[p] + left * (longest.plane(c)[p] - (double) broad.plane(c)[p]);
                    picture.plane(c)[p] = (float) (long1 * end + (1 - long1) * shortest.plane(c)[p]);
                }
                detail[p] = (float) left;
            }
        });
        return new Exposure(seconds, picture, detail, false, 1);
    }

    private double mixByTime(double seconds) {
        double from = StrictMath.log(stills.shortestSeconds());
        double to = StrictMath.log(stills.longestSeconds());
        return Math.max(0, Math.min(1, (StrictMath.log(seconds) - from) / (to - from)));
    }

    /** Share of the longest frame at which independent textures leave the variance of {@code seconds}. */
    private double mix(int kind, double seconds) {
        double a = curves.variance(kind, stills.shortestSeconds());
        double b = curves.variance(kind, stills.longestSeconds());
        double wanted = Math.max(b, Math.min(a, curves.variance(kind, seconds)));
        double low = 0;
        double high = a / (a + b); // beyond this share the mix would grow rougher again
        for (int k = 0; k < 40; k++) {
            double middle = (low + high) / 2;
            double left = (1 - middle) * (1 - middle) * a + middle * middle * b;
            if (left > wanted) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return seconds >= stills.longestSeconds() ? 1 : high;
    }
}
