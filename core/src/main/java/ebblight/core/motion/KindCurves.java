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

    static KindCurves of(ViewSurvey.Parts parts, boolean breakers) {
        return new KindCurves(
                curve(parts, Kind.FLOWING, breakers),
                curve(parts, Kind.SWAYING, false),
                parts.frames().spacingSeconds());
    }

    private static Optional<TextureCurve> curve(ViewSurvey.Parts parts, Kind kind, boolean breakers) {
        return curve(parts, parts.regions().share(kind), breakers);
    }

    /** The curve of the pixels whose share is above one half; empty when they are too few. */
    static Optional<TextureCurve> curve(ViewSurvey.Parts parts, float[] share, boolean breakers) {
        int[] at = PixelSeries.thinned(share);
        if (at.length <= ENOUGH_PIXELS) {
            return Optional.empty();
        }
        PixelSeries series = PixelSeries.of(parts.frames().all(), parts.frames().timesSeconds(), at);
        double noise = parts.noise().at(series.mean());
        return Optional.of(TextureCurve.of(Variogram.of(series, noise), breakers));
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
