package ebblight.imaging.finish;

/**
 * Shadows and lights made lighter or darker, in stops, by the light round each place: −1.5 to 1.5. Shadows begin below
 * middle grey and are full three stops down, lights begin above it and are full near white.
 */
public record Tone(double shadowStops, double lightStops) {

    private static final double MOST = 1.5;
    private static final double FULL_SHADOW = 3;
    /** White over middle grey of 18 %, in stops: log2(1/0.18). */
    private static final double FULL_LIGHT = 2.47;

    private static final double DARKEST = -14;
    private static final double STEPS_IN_STOP = 64;
    private static final int STEPS = 1280;

    public Tone {
        if (!(Math.abs(shadowStops) <= MOST && Math.abs(lightStops) <= MOST)) {
            throw new IllegalArgumentException(
                    "must lie between −1.5 and 1.5 stops, was shadows " + shadowStops + ", lights " + lightStops);
        }
    }

    boolean untouched() {
        return shadowStops == 0 && lightStops == 0;
    }

    /** Stops from middle grey after, for every step before; never falls, so that no tones change places. */
    float[] table() {
        float[] table = new float[STEPS + 1];
        double last = Double.NEGATIVE_INFINITY;
        for (int i = 0; i <= STEPS; i++) {
            double stops = DARKEST + i / STEPS_IN_STOP;
            double raised = stops + shadowStops * rise(-stops / FULL_SHADOW) + lightStops * rise(stops / FULL_LIGHT);
            last = Math.max(last, raised);
            table[i] = (float) last;
        }
        return table;
    }

    /** What {@link #table} makes of a place {@code stops} from middle grey. */
    static double at(float[] table, double stops) {
        double at = Math.max(0, Math.min(STEPS - 1e-6, (stops - DARKEST) * STEPS_IN_STOP));
        int below = (int) at;
        return table[below] + (at - below) * (table[below + 1] - (double) table[below]);
    }

    private static double rise(double x) {
        double t = Math.max(0, Math.min(1, x));
        return t * t * (3 - 2 * t);
    }
}
