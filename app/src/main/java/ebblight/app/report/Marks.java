package ebblight.app.report;

import java.util.Locale;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;

/** The marks of the visual language: seals of the parts, and the stroke whose swing is the detail that is left. */
final class Marks {

    /** What each kind of part is called on the page. */
    static final Map<String, String> NAMES =
            Map.of("flowing", "Water", "drifting", "Cloud", "swaying", "Branch", "fixed", "Rock");

    private static final Map<String, String> SEALS = Map.of(
            "flowing", "M2 9l4-3 4 3 4-3 4 3 4-3 4 3M2 15l4-3 4 3 4-3 4 3 4-3 4 3M2 21l4-3 4 3 4-3 4 3 4-3 4 3",
            "drifting", "M3 18h22M6 18c-3-5 2-8 5-6 1-6 10-6 11 0 4 0 4 5 2 6M6 22h10M19 22h5",
            "swaying", "M3 24L24 5M10 18l-1-8M15 13l8 1M9 10l-3-3M9 10l2-4M23 14l2-3M23 14l1 4",
            "fixed", "M3 24L8 9l6-3 5 7 3-1 4 12zM8 9l4 8-4 7M19 13l-3 5 3 6");

    /** The name's stroke: light adds up and the line lies down. */
    static final String MARK = "<svg width=\"44\" height=\"18\" viewBox=\"0 0 44 18\" aria-hidden=\"true\"><path"
            + " d=\"M1 9l3-7 3.5 14L11 3l3.5 11L18 5.5l3.5 6.5 3.5-4.5 3.5 2.6L32 8.6l3 .6 8-.2\" fill=\"none\""
            + " stroke=\"currentColor\" stroke-width=\"2.4\" stroke-linejoin=\"bevel\"/></svg>";

    /** What is left on the screen at which the stroke swings in full: as seen begins below it. */
    private static final double FULL_SWING_LEFT = 0.2;

    private static final double SWING_POWER = 0.8;

    private Marks() {}

    /** The seal of a kind in a drawing of its own, {@code size} pixels wide. */
    static String seal(String kind, int size) {
        return "<svg width=\"" + size + "\" height=\"" + size + "\" viewBox=\"0 0 28 28\" aria-hidden=\"true\">"
                + sealPath(kind) + "</svg>";
    }

    /** The seal of a kind as a path in a square of 28. */
    static String sealPath(String kind) {
        return "<path d=\"" + SEALS.getOrDefault(kind, "") + "\" fill=\"none\" stroke=\"currentColor\""
                + " stroke-width=\"2\" stroke-linejoin=\"round\" stroke-linecap=\"round\"/>";
    }

    /** Swing of the stroke, 0 to 1, for a share left on the screen. */
    static double swing(double left) {
        return Math.pow(Math.min(1, Math.max(0, left) / FULL_SWING_LEFT), SWING_POWER);
    }

    /** Path of a stroke from x0 to x1 about y; the swing at x is a share of {@code most} pixels. */
    static String stroke(double x0, double x1, double y, double most, DoubleUnaryOperator swing, int seed) {
        StringBuilder path = new StringBuilder(String.format(Locale.ROOT, "M%.1f %.1f", x0, y));
        long dice = seed;
        int side = 1;
        for (double x = x0 + 5; x <= x1; x += 5) {
            dice = dice * 1664525 + 1013904223 & 0xFFFFFFFFL;
            side = -side;
            double a = swing.applyAsDouble(x) * most * (0.55 + 0.45 * dice / 4294967296.0);
            path.append(String.format(Locale.ROOT, "L%.1f %.1f", x, y + side * a));
        }
        return path.append(String.format(Locale.ROOT, "L%.1f %.1f", x1, y)).toString();
    }
}
