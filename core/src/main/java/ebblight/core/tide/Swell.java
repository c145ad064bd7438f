package ebblight.core.tide;

/**
 * Waves that come from far.
 *
 * @param heightMetres significant height in deep water, 0 to 20
 * @param periodSeconds between crests, 1 to 30
 */
public record Swell(double heightMetres, double periodSeconds) {

    /** The shortest period that still is swell, in seconds. */
    public static final double SHORTEST_SECONDS = 1;

    private static final double GRAVITY = 9.81;
    private static final double RUN_UP = 0.043;

    public Swell {
        if (!(heightMetres >= 0 && heightMetres <= 20)) {
            throw new IllegalArgumentException("swell stands 0 to 20 m high, was " + heightMetres);
        }
        if (!(periodSeconds >= SHORTEST_SECONDS && periodSeconds <= 30)) {
            throw new IllegalArgumentException("swell comes every 1 to 30 s, was " + periodSeconds);
        }
    }

    /** Length in deep water in metres: g T² / 2π. */
    public double lengthMetres() {
        return GRAVITY * periodSeconds * periodSeconds / (2 * Math.PI);
    }

    /**
     * How far above still water the highest waves of a set run up a flat beach, in metres: 0.043 √(H L₀) (Stockdon et
     * al. 2006, dissipative beaches, from memory). They run higher on rock and on steep sand.
     */
    public double runUpMetres() {
        return RUN_UP * Math.sqrt(heightMetres * lengthMetres());
    }
}
