package ebblight.core.tide;

import ebblight.core.numeric.Epoch;
import java.util.List;

/**
 * Tide between the high and low waters of a typed table: half a cosine from each to the next. It misses a harmonic
 * prediction by a tenth of the range at places with even tides, more in shallow water.
 */
public final class TideTable implements TideCurve {

    private static final double LONGEST_GAP_SECONDS = 30 * 3600;

    /** No tide goes beyond: the largest ranges are about 17 m (common knowledge). */
    private static final double GREATEST_METRES = 30;

    private final List<TideExtreme> extremes;
    private final double[] seconds;
    private final double[] metres;
    private final double fastest;
    private final double steepest;

    /** A table of at least two waters, in order of time, high and low in turn. */
    public TideTable(List<TideExtreme> extremes) {
        if (extremes.size() < 2) {
            throw new IllegalArgumentException("a table needs at least two waters, had " + extremes.size());
        }
        this.extremes = List.copyOf(extremes);
        seconds = new double[extremes.size()];
        metres = new double[extremes.size()];
        double most = 0;
        double bend = 0;
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = Epoch.seconds(extremes.get(i).time());
            metres[i] = extremes.get(i).heightMetres();
            if (!(Math.abs(metres[i]) <= GREATEST_METRES)) {
                throw new IllegalArgumentException("the water of "
                        + extremes.get(i).time() + " lies beyond 30 m from the datum, was " + metres[i]);
            }
            if (i > 0) {
                check(extremes.get(i - 1), extremes.get(i));
                double half = Math.abs(metres[i] - metres[i - 1]) / 2;
                double perHour = 3600 * Math.PI / (seconds[i] - seconds[i - 1]);
                most = Math.max(most, half * perHour);
                bend = Math.max(bend, half * perHour * perHour);
            }
        }
        fastest = most;
        steepest = bend;
    }

    private static void check(TideExtreme before, TideExtreme after) {
        if (!after.time().isAfter(before.time())) {
            throw new IllegalArgumentException(
                    after.time() + " does not come after " + before.time() + "; put the waters in order of time");
        }
        if (before.kind() == after.kind()) {
            throw new IllegalArgumentException("two " + after.kind().word() + " waters in a row, at " + before.time()
                    + " and " + after.time() + "; the water between them is missing");
        }
        if (Epoch.seconds(after.time()) - Epoch.seconds(before.time()) > LONGEST_GAP_SECONDS) {
            throw new IllegalArgumentException("more than 30 h between the waters at " + before.time() + " and "
                    + after.time() + "; waters between them are missing");
        }
        if (after.heightMetres() == before.heightMetres()
                || after.heightMetres() > before.heightMetres() != (after.kind() == TideExtreme.Kind.HIGH)) {
            throw new IllegalArgumentException("the high water of " + before.time() + " and " + after.time()
                    + " does not stand above the low water (" + before.heightMetres() + " m, "
                    + after.heightMetres() + " m)");
        }
    }

    /** The waters of the table. */
    public List<TideExtreme> extremes() {
        return extremes;
    }

    @Override
    public boolean knows(double epochSeconds) {
        return epochSeconds >= seconds[0] && epochSeconds <= seconds[seconds.length - 1];
    }

    private int before(double epochSeconds) {
        if (!knows(epochSeconds)) {
            throw new IllegalArgumentException(
                    "the table does not hold " + Epoch.instant(epochSeconds) + "; it runs from "
                            + extremes.get(0).time() + " to "
                            + extremes.get(extremes.size() - 1).time());
        }
        int low = 0;
        int high = seconds.length - 1;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            if (seconds[middle] <= epochSeconds) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    @Override
    public double heightMetres(double epochSeconds) {
        int i = before(epochSeconds);
        double angle = Math.PI * (epochSeconds - seconds[i]) / (seconds[i + 1] - seconds[i]);
        return 0.5 * (metres[i] + metres[i + 1]) + 0.5 * (metres[i] - metres[i + 1]) * StrictMath.cos(angle);
    }

    @Override
    public double risingMetresPerHour(double epochSeconds) {
        int i = before(epochSeconds);
        double perSecond = Math.PI / (seconds[i + 1] - seconds[i]);
        return 3600
                * 0.5
                * (metres[i + 1] - metres[i])
                * perSecond
                * StrictMath.sin(perSecond * (epochSeconds - seconds[i]));
    }

    @Override
    public double fastestMetresPerHour() {
        return fastest;
    }

    @Override
    public double steepestMetresPerHourSquared() {
        return steepest;
    }
}
