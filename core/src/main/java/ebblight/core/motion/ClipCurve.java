package ebblight.core.motion;

import ebblight.core.numeric.LeastSquares;
import ebblight.core.numeric.Powers;
import java.util.Arrays;

/**
 * R(T): what is left of a region's texture at any exposure time, measured up to {@link #measuredToSeconds()} and
 * carried on from there.
 *
 * <p>Inside the clip: the variogram, straight lines between its block lengths. Beyond: two laws that bracket what
 * water does, both going over to V ∝ 1/T (Taylor 1922: the variance of a time mean tends to V(0)·2τ/T). The fast one
 * follows 1/T at once from the mean of V·b over the longest blocks; the relaxing one starts with the slope measured
 * at the end of the clip and reaches slope 1 after three octaves. The most likely value is their geometric mean.
 *
 * <p>The likely range spans both laws, widened by a share found by trial on seas, swell and gusts of known truth
 * (docs/accuracy.md says how often it held). It is not a confidence interval. Between short frames light is missing, which {@link Gaps} allows for.
 */
final class ClipCurve implements TextureCurve {

    /** Blocks from this share of the longest on tell the tail: shorter ones still hold waves of a light wind. */
    private static final double TAIL = 0.75;

    private static final double OCTAVES_TO_RELAX = 3;
    private static final double LOG_RELAX = StrictMath.log(8);
    private static final double GENTLEST_SLOPE = 0.25;
    private static final double SETTLED_SLOPE = 0.9;

    /** Clips shorter than this mispredicted a minute by one half. */
    private static final double SHORT_CLIP_SECONDS = 3;

    /** Texture below this share of the noise cannot be told from an error of the noise model (3–7 %). */
    private static final double NOISE_MARGIN = 0.15;

    /**
     * Neighbouring frames correlate less than this: movement between them went unseen. For a memory that fades as
     * exp(−s/τ) the mean of frames then keeps 10 % more texture than a whole exposure.
     */
    private static final double COARSE_CORRELATION = 0.2;

    /**
     * Added to the width of the range for breaking waves, whose sets a clip cannot know: with 0.5 a clip of 22 s of
     * surf missed what two minutes of frames 12 s apart kept (0.44 of their contrast).
     */
    private static final double BREAKERS = 0.75;

    /** Added to the width of the range for every unit of slope that is missing to a settled one: gusts and swell. */
    private static final double UNSETTLED = 1;

    /** Added for clips so short that they see less than one wave: at 3 m/s two seconds told 2.4 times too much. */
    private static final double SHORT = 1.25;

    /** From this likeness of far pixels on, long waves run in the clip: ripples and chop stay below. */
    private static final double LONG_CRESTS = 0.05;

    /** The same along the best slant: by chance ripples have up to 0.15 of it, but then hold more than three waves. */
    private static final double SLANTING_CRESTS = 0.13;

    /** With fewer of its long waves than this a clip cannot tell their floor from that of a wind sea. */
    private static final double FEWEST_WAVES = 3;

    /** A clip shorter than this may lie between two gusts, of which nothing in it tells. */
    private static final double BETWEEN_GUSTS_SECONDS = 8;

    /**
     * Gusts pass in about this time. Change that is smooth and slow grows with the square of the time over which it is
     * watched: what moved together over a patch in a clip of L seconds may be a share of (L/20)² of what a gust does.
     */
    private static final double GUST_SECONDS = 20;

    /** Slow gusts take twice as long, and change grows with the square of the time. */
    private static final double SLOW_GUSTS = 4;

    /** A trend over the clip counts as one wave and a little more; one and a half are waves. */
    private static final double FEWER_THAN_THE_CLIP = 1.5;

    /** Times the square root of the likeness, as the error of a variance goes with one over the root of its samples. */
    private static final double FEW_WAVES = 0.7;

    /** Added for every unit of slope beyond 1.8: the block has come full circle over one wave. */
    private static final double FULL_CIRCLE = 1;

    private static final double FULL_CIRCLE_SLOPE = 1.8;
    private static final double TINY = 1e-15;
    private static final double FAR_SECONDS = 1e6;

    private final Variogram variogram;
    private final double[] variance;
    private final double slope;
    private final double rawSlope;
    private final double tail;
    private final boolean breakers;
    private final Crests crests;
    private final Gaps gaps;

    private ClipCurve(
            Variogram variogram,
            double[] variance,
            double slope,
            double rawSlope,
            double tail,
            boolean breakers,
            Crests crests) {
        this.variogram = variogram;
        this.variance = variance;
        this.slope = slope;
        this.rawSlope = rawSlope;
        this.tail = tail;
        this.breakers = breakers;
        this.crests = crests;
        gaps = Gaps.of(variogram.spacingSeconds(), neighbours(variance));
    }

    /**
     * The curve that continues a variogram.
     *
     * @param breakers whether the region holds breaking waves, whose sets a clip cannot know
     * @param crests how much slow change goes together across the view
     */
    static ClipCurve of(Variogram variogram, boolean breakers, Crests crests) {
        double[] far = new double[variogram.size()];
        for (int k = 0; k < far.length; k++) {
            far[k] = Math.max(variogram.variance(k), TINY);
        }
        ClipCurve ofFar = of(variogram, far, breakers, crests);
        double ofWholeClip = ofFar.known() ? ofFar.variance(variogram.lengthSeconds()) : 0;
        return ofWholeClip > 0 ? of(variogram, joined(variogram, far, ofWholeClip), breakers, crests) : ofFar;
    }

    /**
     * Far pairs of blocks joined with all blocks about the mean of the clip, to which the variance of that mean, as the
     * far pairs tell it, is added again. It is a small part of a short block's variance and a large one of a long
     * block's: the share of far pairs grows with the length of the block.
     */
    private static double[] joined(Variogram variogram, double[] far, double ofWholeClip) {
        double longest = variogram.blockSeconds(far.length - 1);
        double[] joined = new double[far.length];
        for (int k = 0; k < joined.length; k++) {
            double share = variogram.blockSeconds(k) / longest;
            double all = variogram.varianceAboutClipMean(k) + ofWholeClip;
            joined[k] = Math.max(TINY, share * far[k] + (1 - share) * all);
        }
        return joined;
    }

    private static ClipCurve of(Variogram variogram, double[] variance, boolean breakers, Crests crests) {
        int n = variance.length;
        double longest = variogram.blockSeconds(n - 1);
        double tail = 0;
        int inTail = 0;
        for (int k = 0; k < n; k++) {
            if (variogram.blockSeconds(k) >= TAIL * longest - 1e-9) {
                tail += variance[k] * variogram.blockSeconds(k);
                inTail++;
            }
        }
        double rawSlope = slopeAtEnd(variogram, variance);
        double slope = Double.isNaN(rawSlope) ? 1 : Math.min(1, Math.max(GENTLEST_SLOPE, rawSlope));
        return new ClipCurve(variogram, variance, slope, rawSlope, tail / inTail, breakers, crests);
    }

    /** Correlation of neighbouring frames; −1 when nothing is known of it. */
    private static double neighbours(double[] variance) {
        return variance.length < 2 ? -1 : 2 * variance[1] / variance[0] - 1;
    }

    /** −d ln V / d ln b over the last factor of three in block length; NaN with fewer than three blocks there. */
    private static double slopeAtEnd(Variogram variogram, double[] variance) {
        double from = variogram.blockSeconds(variance.length - 1) / 3;
        double[] x = new double[variance.length];
        double[] y = new double[variance.length];
        int n = 0;
        for (int k = 0; k < variance.length; k++) {
            double b = variogram.blockSeconds(k);
            if (b > 0 && b >= from) {
                x[n] = StrictMath.log(b);
                y[n] = StrictMath.log(variance[k]);
                n++;
            }
        }
        return n < 3 ? Double.NaN : -LeastSquares.slope(Arrays.copyOf(x, n), Arrays.copyOf(y, n));
    }

    @Override
    public double varianceAtOnce() {
        return variance[0] > TINY ? variance[0] : 0;
    }

    @Override
    public boolean seen() {
        return variogram.variance(0) > Math.max(NOISE_MARGIN * variogram.noiseVariance(), TINY);
    }

    /** Longest exposure time that the clip itself shows, in seconds: 0.4 of its length. */
    @Override
    public double measuredToSeconds() {
        return variogram.blockSeconds(variogram.size() - 1);
    }

    @Override
    public boolean resolved() {
        boolean longCrests = crests.likeness() > LONG_CRESTS || crests.slanting() > SLANTING_CRESTS;
        boolean fewWaves = longCrests && crests.waves() < FEWEST_WAVES;
        return rawSlope >= SETTLED_SLOPE && !fewWaves && variogram.lengthSeconds() >= BETWEEN_GUSTS_SECONDS;
    }

    /** −d ln V / d ln T at the end of the clip; NaN when the clip is too short to tell. */
    double slopeAtEnd() {
        return rawSlope;
    }

    /**
     * Whether frames lie so far apart that movement between them went unseen. What is left at long times is then an
     * upper bound: short frames with gaps average less than one long exposure.
     */
    @Override
    public boolean coarse() {
        return neighbours(variance) < COARSE_CORRELATION;
    }

    /** Octaves from the longest measured block to {@code seconds}; 0 inside the clip. */
    double octavesBeyond(double seconds) {
        double measured = measuredToSeconds();
        return measured <= 0 ? Double.POSITIVE_INFINITY : Math.max(0, Powers.log2(Math.max(seconds, TINY) / measured));
    }

    @Override
    public double variance(double seconds) {
        return known() ? Math.sqrt(fast(seconds) * relaxing(seconds)) : variance[0] * unknownShare(seconds);
    }

    @Override
    public double correlationSeconds() {
        if (!seen() || !known()) {
            return 0;
        }
        double ofFrames = tail * StrictMath.exp((1 - slope) * LOG_RELAX / 4) / (2 * variance[0]);
        return ofFrames * gaps.likely(FAR_SECONDS);
    }

    @Override
    public Remaining at(double seconds) {
        if (!seen() || !known()) {
            double ratio = Math.sqrt(unknownShare(seconds));
            return new Remaining(seconds, ratio, 0, 1, Remaining.Basis.TOO_FAR);
        }
        double octaves = octavesBeyond(seconds);
        double widening = 1
                + 0.25
                + 0.08 * Math.min(octaves, 4)
                + (resolved() ? 0 : 0.15 * Math.min(octaves, 2))
                + FEW_WAVES * Math.sqrt(crests.likeness())
                + FULL_CIRCLE * Math.max(0, (Double.isNaN(rawSlope) ? 0 : rawSlope) - FULL_CIRCLE_SLOPE)
                + UNSETTLED * Math.max(0, SETTLED_SLOPE - slope)
                + (variogram.lengthSeconds() < SHORT_CLIP_SECONDS ? SHORT : 0)
                + (breakers ? BREAKERS : 0);
        double fast = fast(seconds) / variance[0];
        double relaxing = relaxing(seconds) / variance[0];
        double ratio = Math.min(1, Math.sqrt(Math.sqrt(fast * relaxing) * gaps.likely(seconds)));
        double low = Math.min(ratio, Math.sqrt(Math.min(fast, relaxing) * gaps.least(seconds)) / widening);
        double most = Math.max(fast, relaxing) * widening * widening + gusts(seconds);
        double high = Math.min(1, Math.max(ratio, Math.sqrt(most)));
        return new Remaining(seconds, ratio, low, high, basis(octaves));
    }

    /** Share of the variance that gusts may add, of which the clip saw the beginning only. */
    private double gusts(double seconds) {
        double watched = Math.min(1, variogram.lengthSeconds() / GUST_SECONDS);
        double unseen =
                crests.patches() / variance[0] * (1 / (watched * watched) - 1) * (slowChange() ? SLOW_GUSTS : 1);
        return seconds > 0 ? unseen * FadingMemory.share(seconds, GUST_SECONDS / 2) : unseen;
    }

    /** Whether what goes together is slower than the clip and nothing shows its end. */
    private boolean slowChange() {
        return variogram.lengthSeconds() < BETWEEN_GUSTS_SECONDS
                && crests.slanting() > SLANTING_CRESTS
                && crests.waves() < FEWER_THAN_THE_CLIP;
    }

    private Remaining.Basis basis(double octaves) {
        if (octaves <= 0) {
            return Remaining.Basis.MEASURED;
        }
        boolean tooFar = variogram.lengthSeconds() < SHORT_CLIP_SECONDS && octaves > OCTAVES_TO_RELAX;
        return tooFar ? Remaining.Basis.TOO_FAR : Remaining.Basis.EXTRAPOLATED;
    }

    private boolean known() {
        return variance.length > 1;
    }

    /** With no block length measured, the frames count as unrelated: no more than a figure to draw with. */
    private double unknownShare(double seconds) {
        double spacing = variogram.spacingSeconds();
        return seconds <= spacing ? 1 : spacing / seconds;
    }

    private double fast(double seconds) {
        return seconds <= measuredToSeconds() ? inside(seconds) : tail / seconds;
    }

    private double relaxing(double seconds) {
        double longest = measuredToSeconds();
        if (seconds <= longest) {
            return inside(seconds);
        }
        double x = StrictMath.log(seconds / longest);
        double bent = Math.min(x, LOG_RELAX);
        double fall = slope * bent + (1 - slope) * bent * bent / (2 * LOG_RELAX) + (x - bent);
        return tail / longest * StrictMath.exp(-fall);
    }

    private double inside(double seconds) {
        int k = 1;
        while (k < variance.length - 1 && variogram.blockSeconds(k) < seconds) {
            k++;
        }
        double from = variogram.blockSeconds(k - 1);
        double share = (seconds - from) / (variogram.blockSeconds(k) - from);
        return variance[k - 1] + share * (variance[k] - variance[k - 1]);
    }
}
