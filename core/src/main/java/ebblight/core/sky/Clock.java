package ebblight.core.sky;

/** Time as the theories of sun and moon take it. */
final class Clock {

    static final double DAY_SECONDS = 86_400;
    private static final double EPOCH_JULIAN_DAY = 2_440_587.5;
    private static final double J2000 = 2_451_545;
    private static final double CENTURY_DAYS = 36_525;

    /** TT − UTC in seconds every five years from 1990, as the earth turned (IERS, from memory to 0.1 s). */
    private static final double[] TERRESTRIAL_SECONDS = {56.9, 60.8, 63.8, 64.7, 66.1, 67.6, 69.4, 69.1};

    private static final double FIRST_YEAR = 1990;
    private static final double STEP_YEARS = 5;

    private Clock() {}

    static double julianDay(double epochSeconds) {
        return EPOCH_JULIAN_DAY + epochSeconds / DAY_SECONDS;
    }

    /** Julian centuries since 2000-01-01 12:00. */
    static double centuries(double julianDay) {
        return (julianDay - J2000) / CENTURY_DAYS;
    }

    /**
     * TT − UTC in seconds: tabulated 1990 to 2025, held outside. Ten seconds wrong would move the moon by 0.002° and the
     * sun by 0.0001°.
     */
    static double terrestrialMinusUniversal(double julianDay) {
        double step = (2000 + 100 * centuries(julianDay) - FIRST_YEAR) / STEP_YEARS;
        int last = TERRESTRIAL_SECONDS.length - 1;
        if (step <= 0) {
            return TERRESTRIAL_SECONDS[0];
        }
        if (step >= last) {
            return TERRESTRIAL_SECONDS[last];
        }
        int i = (int) step;
        return TERRESTRIAL_SECONDS[i] + (step - i) * (TERRESTRIAL_SECONDS[i + 1] - TERRESTRIAL_SECONDS[i]);
    }
}
