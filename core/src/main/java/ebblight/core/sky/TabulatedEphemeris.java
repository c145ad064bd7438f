package ebblight.core.sky;

/**
 * Sun and moon read between nodes that full theory computed: for searches that ask hundreds of thousands of times.
 * Cubic through four nodes, 12 h apart for the sun, 3 h for the moon: within 0.00001° of the theory.
 */
public final class TabulatedEphemeris implements Ephemeris {

    private static final double SUN_STEP_SECONDS = 43_200;
    private static final double MOON_STEP_SECONDS = 10_800;
    private static final double TURN_DEGREES_PER_SECOND = 360.98564736629 / Clock.DAY_SECONDS;

    private final double fromSeconds;
    private final double toSeconds;
    private final double[] sun;
    private final double[] moon;
    private final double[] equinox;

    /** Nodes for all instants between the two, which must be less than 40 years apart. */
    public TabulatedEphemeris(double fromEpochSeconds, double toEpochSeconds) {
        if (!(toEpochSeconds >= fromEpochSeconds && toEpochSeconds - fromEpochSeconds < 40 * 366 * Clock.DAY_SECONDS)) {
            throw new IllegalArgumentException("a table of the sky runs forward over less than 40 years, asked were "
                    + (toEpochSeconds - fromEpochSeconds) / Clock.DAY_SECONDS + " days");
        }
        fromSeconds = fromEpochSeconds;
        toSeconds = toEpochSeconds;
        Ephemeris theory = Ephemeris.computed();
        int suns = nodes(SUN_STEP_SECONDS);
        sun = new double[3 * suns];
        equinox = new double[suns];
        for (int i = 0; i < suns; i++) {
            double at = fromSeconds + (i - 1) * SUN_STEP_SECONDS;
            put(sun, i, theory.sun(at));
            equinox[i] = Angles.wrap180(theory.siderealDegrees(at) - turned(at));
        }
        int moons = nodes(MOON_STEP_SECONDS);
        moon = new double[3 * moons];
        for (int i = 0; i < moons; i++) {
            put(moon, i, theory.moon(fromSeconds + (i - 1) * MOON_STEP_SECONDS));
        }
    }

    private int nodes(double step) {
        return (int) Math.ceil((toSeconds - fromSeconds) / step) + 4;
    }

    private static void put(double[] table, int i, Geocentric at) {
        table[3 * i] = at.x();
        table[3 * i + 1] = at.y();
        table[3 * i + 2] = at.z();
    }

    @Override
    public Geocentric sun(double epochSeconds) {
        return read(sun, SUN_STEP_SECONDS, epochSeconds);
    }

    @Override
    public Geocentric moon(double epochSeconds) {
        return read(moon, MOON_STEP_SECONDS, epochSeconds);
    }

    @Override
    public double siderealDegrees(double epochSeconds) {
        double step = steps(SUN_STEP_SECONDS, epochSeconds);
        int i = Math.min((int) step, equinox.length - 4);
        double u = step - i;
        double slow = equinox[i + 1] + u * Angles.wrap180(equinox[i + 2] - equinox[i + 1]);
        return Angles.wrap360(turned(epochSeconds) + slow);
    }

    /** The even part of the earth's turning since 1970, in degrees without full turns of whole days. */
    private static double turned(double epochSeconds) {
        double days = Math.floor(epochSeconds / Clock.DAY_SECONDS);
        double within = epochSeconds - days * Clock.DAY_SECONDS;
        return TURN_DEGREES_PER_SECOND * within + (360.98564736629 - 360) * days;
    }

    private double steps(double step, double epochSeconds) {
        if (!(epochSeconds >= fromSeconds && epochSeconds <= toSeconds)) {
            throw new IllegalArgumentException("the table of the sky does not hold this instant");
        }
        return (epochSeconds - fromSeconds) / step;
    }

    private Geocentric read(double[] table, double stepSeconds, double epochSeconds) {
        double step = steps(stepSeconds, epochSeconds);
        int i = Math.min((int) step, table.length / 3 - 4);
        double u = step - i;
        double before = -u * (u - 1) * (u - 2) / 6;
        double left = (u + 1) * (u - 1) * (u - 2) / 2;
        double right = -(u + 1) * u * (u - 2) / 2;
        double after = (u + 1) * u * (u - 1) / 6;
        int k = 3 * i;
        return new Geocentric(
                before * table[k] + left * table[k + 3] + right * table[k + 6] + after * table[k + 9],
                before * table[k + 1] + left * table[k + 4] + right * table[k + 7] + after * table[k + 10],
                before * table[k + 2] + left * table[k + 5] + right * table[k + 8] + after * table[k + 11]);
    }
}
