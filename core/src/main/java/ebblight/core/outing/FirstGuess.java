package ebblight.core.outing;

import ebblight.core.sky.CameraView;
import java.util.List;

/**
 * Shutter times before any clip exists, from wind and cloud alone. A guess: water by a sea that follows the wind, cloud by
 * a layer of usual height. A clip replaces it.
 */
public final class FirstGuess {

    /**
     * Silky (5 % left) after 1.2 periods: between two simulated seas, 4.9 % left of 3 m/s after 2 s and 0.8 % of 8 m/s
     * after 360 s, read by left ~ T^(-1/2).
     */
    private static final double SILKY_PERIODS = 1.2;

    private static final double SILKY_LEFT = 0.05;

    /** The two seas differ by a factor of 1.7, real ones by more. */
    private static final double EITHER_WAY = 4;

    private static final double SHARP_DIAGONALS = 1.0 / 1500;
    private static final double STREAK_WIDTHS = 1.0 / 20;

    private FirstGuess() {}

    /**
     * A time at which a word begins or ends to hold.
     *
     * @param word of the scale
     * @param until whether it holds up to the time, else from it on
     * @param seconds guessed
     * @param low likely range
     * @param high likely range
     */
    public record Limit(String word, boolean until, double seconds, double low, double high) {}

    /** From when water whose waves have a period is softened, silky, mist and glass. */
    public static List<Limit> water(double periodSeconds) {
        if (!(periodSeconds > 0 && periodSeconds <= 30)) {
            throw new IllegalArgumentException("waves come every 0 to 30 s, was " + periodSeconds);
        }
        return List.of(
                water("softened", 0.15, periodSeconds),
                water("silky", SILKY_LEFT, periodSeconds),
                water("mist", 0.02, periodSeconds),
                water("glass", 0.01, periodSeconds));
    }

    private static Limit water(String word, double left, double period) {
        double seconds = SILKY_PERIODS * period * (SILKY_LEFT / left) * (SILKY_LEFT / left);
        return new Limit(word, false, seconds, seconds / EITHER_WAY, seconds * EITHER_WAY);
    }

    /**
     * Until when the clouds of a layer are sharp in a view, and from when they are streaked. The range runs from clouds
     * that go across the line of sight to clouds that go along it.
     */
    public static List<Limit> cloud(CloudLayer layer, CameraView view) {
        double elevation = CloudLayer.elevationDegrees(view);
        double fast = CloudLayer.millimetresPerSecond(layer.acrossDegreesPerMinute(elevation), view);
        double slow = CloudLayer.millimetresPerSecond(layer.alongDegreesPerMinute(elevation), view);
        double width = view.widthMillimetres();
        double diagonal = Math.sqrt(width * width + view.heightMillimetres() * view.heightMillimetres());
        return List.of(
                limit("sharp", true, diagonal * SHARP_DIAGONALS, fast, slow),
                limit("streaked", false, width * STREAK_WIDTHS, fast, slow));
    }

    private static Limit limit(String word, boolean until, double millimetres, double fast, double slow) {
        double low = millimetres / fast;
        double high = millimetres / slow;
        return new Limit(word, until, Math.sqrt(low * high), low, high);
    }
}
