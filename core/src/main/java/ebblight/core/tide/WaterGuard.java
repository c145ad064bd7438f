package ebblight.core.tide;

import ebblight.core.numeric.Crossings;
import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * By when to be off the rock. What rules is the lower of the photographer's feet and the lowest point of the way back:
 * leave when still water and a margin reach it.
 *
 * @param curve of the water
 * @param lowestMetres height of the lower of feet and way back, in metres above the curve's datum
 * @param marginMetres kept between still water and that point
 * @param packingSeconds from the last picture to walking
 */
public record WaterGuard(TideCurve curve, double lowestMetres, double marginMetres, double packingSeconds) {

    /** What is shown wherever a height of water is. */
    public static final String CAUTION =
            "Predictions leave out weather, surge and waves: water can rise decimetres above them, and sets of large waves"
                    + " come without warning. Not for navigation. Follow the official tables, local warnings and signs."
                    + " Never turn your back on the sea.";

    /** Seconds allowed for packing when nobody says otherwise. */
    public static final double PACKING_SECONDS = 180;

    private static final double LEAST_MARGIN_METRES = 0.5;
    private static final double LONGEST_SECONDS = 86_400;
    private static final double LOOK_AHEAD_SECONDS = 30 * 3600;
    private static final double STEP_SECONDS = 600;
    private static final double TOLERANCE_SECONDS = 1;

    public WaterGuard {
        if (!(Math.abs(lowestMetres) <= 30)) {
            throw new IllegalArgumentException("the lowest point lies within 30 m of the datum, was " + lowestMetres);
        }
        if (!(marginMetres >= LEAST_MARGIN_METRES && marginMetres <= 30)) {
            throw new IllegalArgumentException(
                    "the margin over still water lies between 0.5 and 30 m, was " + marginMetres);
        }
        if (!(packingSeconds >= 0 && packingSeconds <= 3600)) {
            throw new IllegalArgumentException("packing takes 0 to 3600 s, was " + packingSeconds);
        }
    }

    /**
     * A guard with the margin that is wanted, raised to half a metre and to the run-up of the swell.
     *
     * @param feetMetres height of the place of the feet above the datum
     * @param wayBackMetres height of the lowest point of the way back
     * @param wantedMarginMetres margin asked for; 0 for the least
     * @param swell when it is known
     */
    public static WaterGuard of(
            TideCurve curve,
            double feetMetres,
            OptionalDouble wayBackMetres,
            double wantedMarginMetres,
            Optional<Swell> swell,
            double packingSeconds) {
        double margin = Math.max(
                Math.max(LEAST_MARGIN_METRES, wantedMarginMetres),
                swell.map(Swell::runUpMetres).orElse(0.0));
        return new WaterGuard(curve, Math.min(feetMetres, wayBackMetres.orElse(feetMetres)), margin, packingSeconds);
    }

    /** What the guard says. */
    public sealed interface Verdict {

        /** Water and margin are over the lowest point already. */
        record Gone(boolean rising) implements Verdict {}

        /**
         * Leave by an instant.
         *
         * @param leaveBy when water and margin reach the lowest point
         * @param latestStart latest opening of the shutter for the exposure asked about
         * @param rising whether the water rises now
         */
        record LeaveBy(Instant leaveBy, Instant latestStart, boolean rising) implements Verdict {}

        /**
         * The predicted water does not come so high before an instant, the end of what is known or of the next 30 hours.
         */
        record NotReached(Instant before, boolean rising) implements Verdict {}

        /** The water is not known at this instant: the table has ended or not begun. */
        record Unknown() implements Verdict {}
    }

    /**
     * The verdict at an instant for an exposure.
     *
     * @param exposureSeconds the shutter stays open
     * @param busySeconds until the camera is ready after it
     */
    public Verdict at(double epochSeconds, double exposureSeconds, double busySeconds) {
        if (!(exposureSeconds >= 0 && exposureSeconds <= LONGEST_SECONDS)
                || !(busySeconds >= 0 && busySeconds <= LONGEST_SECONDS)) {
            throw new IllegalArgumentException("an exposure and the wait after it take 0 to 86400 s each, were "
                    + exposureSeconds + " s and " + busySeconds + " s");
        }
        if (!curve.knows(epochSeconds)) {
            return new Verdict.Unknown();
        }
        boolean rising = curve.risingMetresPerHour(epochSeconds) > 0;
        if (above(epochSeconds) >= 0) {
            return new Verdict.Gone(rising);
        }
        double end = epochSeconds + LOOK_AHEAD_SECONDS;
        while (!curve.knows(end) && end > epochSeconds) {
            end -= STEP_SECONDS;
        }
        List<Crossings.Crossing> crossings =
                Crossings.of(this::above, epochSeconds, Math.max(epochSeconds, end), STEP_SECONDS, TOLERANCE_SECONDS);
        if (crossings.isEmpty()) {
            return new Verdict.NotReached(Epoch.instant(end), rising);
        }
        // earlier by the tolerance: never later than the water
        double leaveBy = crossings.get(0).at() - TOLERANCE_SECONDS;
        return new Verdict.LeaveBy(
                Epoch.instant(leaveBy),
                Epoch.instant(leaveBy - exposureSeconds - busySeconds - packingSeconds),
                rising);
    }

    private double above(double epochSeconds) {
        return curve.heightMetres(epochSeconds) + marginMetres - lowestMetres;
    }
}
