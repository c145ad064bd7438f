package ebblight.core.motion;

import java.util.Optional;

/** How the variance of a mean falls with its length for each kind as a whole; what the preview shrinks texture by. */
final class KindCurves {

    /** Fewer pixels than this do not make a curve of their own. */
    private static final int ENOUGH_PIXELS = 400;

    private final Optional<TextureCurve> flowing;
    private final Optional<TextureCurve> swaying;
    private final double spacingSeconds;

    private KindCurves(Optional<TextureCurve> flowing, Optional<TextureCurve> swaying, double spacingSeconds) {
        this.flowing = flowing;
        this.swaying = swaying;
        this.spacingSeconds = spacingSeconds;
    }

    /** Makes the curve of the pixels whose share is above one half. */
    interface Maker {
        /**
         * A curve.
         *
         * @param share of every pixel that belongs to the part; some pixel is above one half
         * @param setsUnknown whether the part holds breaking waves whose sets the frames cannot know
         */
        TextureCurve make(float[] share, boolean setsUnknown);

        /** The curve, empty when the pixels are too few. */
        default Optional<TextureCurve> ifEnough(float[] share, boolean setsUnknown) {
            int count = 0;
            for (float s : share) {
                count += s > 0.5f ? 1 : 0;
            }
            return count <= ENOUGH_PIXELS ? Optional.empty() : Optional.of(make(share, setsUnknown));
        }
    }

    static KindCurves of(ViewSurvey.Parts parts, Maker maker, boolean setsUnknown) {
        return new KindCurves(
                maker.ifEnough(parts.regions().share(Kind.FLOWING), setsUnknown),
                maker.ifEnough(parts.regions().share(Kind.SWAYING), false),
                parts.frames().spacingSeconds());
    }

    Optional<TextureCurve> flowing() {
        return flowing;
    }

    Optional<TextureCurve> swaying() {
        return swaying;
    }

    /** Variance of a mean over {@code seconds} for column {@code kind} of the region model, in units of its own. */
    double variance(int kind, double seconds) {
        return switch (Kind.ofColumn(kind)) {
            case FIXED, DRIFTING -> 1;
            case FLOWING -> orByTime(flowing, seconds);
            case SWAYING -> orByTime(swaying, seconds);
        };
    }

    private double orByTime(Optional<TextureCurve> curve, double seconds) {
        return Math.max(1e-15, curve.map(c -> c.variance(seconds)).orElse(1 / Math.max(seconds, spacingSeconds)));
    }
}
