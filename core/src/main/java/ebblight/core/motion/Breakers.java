package ebblight.core.motion;

/**
 * Breaking waves: bright foam that comes over dark water now and then. Told by three things together: strong contrast
 * in time, values that lie to one side (foam is rare and bright, or dark gaps in foam), and change so slow that two
 * seconds leave most of it.
 */
final class Breakers {

    private static final double STRONG_CONTRAST = 0.15;
    private static final double SLOW = 0.55;
    private static final double SLOW_AFTER_SECONDS = 2;

    private Breakers() {}

    static boolean look(PixelSeries series, TextureCurve curve) {
        if (!curve.seen() || curve.measuredToSeconds() < SLOW_AFTER_SECONDS) {
            return false;
        }
        double contrast = Math.sqrt(curve.varianceAtOnce()) / Math.max(series.mean(), 1e-9);
        double left = curve.at(SLOW_AFTER_SECONDS).ratio();
        return contrast > STRONG_CONTRAST && left > SLOW && !curve.resolved();
    }
}
