package ebblight.core.tide;

import java.util.List;

/**
 * Tide predicted from harmonic constants: h(t) = Z₀ + Σ f·H·cos(V + u − κ), f and u renewed at noon of every UTC day
 * (Schureman, SP 98, equation 65). The renewal moves the curve by less than a millimetre at midnight.
 */
public final class HarmonicTide implements TideCurve {

    private static final double RADIAN = Math.PI / 180;
    private static final double DAY_SECONDS = MeanLongitudes.DAY_SECONDS;

    private final double meanMetres;
    private final Term[] terms;
    private final double[] radiansPerSecond;
    private final long firstDay;
    private final Day[] days;
    private final double fastest;
    private final double steepest;

    /**
     * One known harmonic.
     *
     * @param amplitudeMetres H
     * @param phaseDegrees κ against Greenwich, in degrees
     */
    record Term(Constituent constituent, double amplitudeMetres, double phaseDegrees) {}

    /** Height and phase at noon of each term for one day. */
    private record Day(double noonSeconds, double[] metres, double[] radians) {}

    /**
     * A curve that has all days between two instants at hand; other days cost a new calculation at every call.
     *
     * @param meanMetres Z₀: mean sea level above the datum
     */
    HarmonicTide(List<Term> terms, double meanMetres, double fromEpochSeconds, double toEpochSeconds) {
        this.meanMetres = meanMetres;
        this.terms = terms.toArray(Term[]::new);
        radiansPerSecond = new double[this.terms.length];
        for (int i = 0; i < this.terms.length; i++) {
            radiansPerSecond[i] = RADIAN * this.terms[i].constituent().degreesPerHour() / 3600;
        }
        firstDay = (long) Math.floor(fromEpochSeconds / DAY_SECONDS);
        int count = (int) ((long) Math.floor(toEpochSeconds / DAY_SECONDS) - firstDay + 1);
        days = new Day[count];
        for (int i = 0; i < count; i++) {
            days[i] = compute(firstDay + i);
        }
        fastest = greatest(1);
        steepest = greatest(2);
    }

    private Day compute(long number) {
        double noon = (number + 0.5) * DAY_SECONDS;
        MeanLongitudes mean = MeanLongitudes.at(noon);
        NodeFactors nodes = NodeFactors.at(noon);
        double[] metres = new double[terms.length];
        double[] radians = new double[terms.length];
        for (int i = 0; i < terms.length; i++) {
            Constituent constituent = terms[i].constituent();
            metres[i] = terms[i].amplitudeMetres() * nodes.factor(constituent);
            radians[i] = RADIAN
                    * MeanLongitudes.wrap(constituent.argumentDegrees(mean)
                            + nodes.phaseDegrees(constituent)
                            - terms[i].phaseDegrees());
        }
        return new Day(noon, metres, radians);
    }

    private Day day(double epochSeconds) {
        long number = (long) Math.floor(epochSeconds / DAY_SECONDS);
        long i = number - firstDay;
        return i >= 0 && i < days.length ? days[(int) i] : compute(number);
    }

    @Override
    public boolean knows(double epochSeconds) {
        return true;
    }

    @Override
    public double heightMetres(double epochSeconds) {
        Day day = day(epochSeconds);
        double since = epochSeconds - day.noonSeconds();
        double sum = meanMetres;
        for (int i = 0; i < radiansPerSecond.length; i++) {
            sum += day.metres()[i] * StrictMath.cos(radiansPerSecond[i] * since + day.radians()[i]);
        }
        return sum;
    }

    @Override
    public double risingMetresPerHour(double epochSeconds) {
        Day day = day(epochSeconds);
        double since = epochSeconds - day.noonSeconds();
        double sum = 0;
        for (int i = 0; i < radiansPerSecond.length; i++) {
            sum -= radiansPerSecond[i]
                    * day.metres()[i]
                    * StrictMath.sin(radiansPerSecond[i] * since + day.radians()[i]);
        }
        return 3600 * sum;
    }

    @Override
    public double fastestMetresPerHour() {
        return fastest;
    }

    @Override
    public double steepestMetresPerHourSquared() {
        return steepest;
    }

    /** The greatest sum over the days of amplitudes times speed (radians an hour) to a power. */
    private double greatest(int power) {
        double most = 0;
        for (Day day : days) {
            double sum = 0;
            for (int i = 0; i < radiansPerSecond.length; i++) {
                double perHour = 3600 * Math.abs(radiansPerSecond[i]);
                sum += day.metres()[i] * (power == 2 ? perHour * perHour : perHour);
            }
            most = Math.max(most, sum);
        }
        return most;
    }
}
