package ebblight.core.tide;

import ebblight.core.numeric.Crossings;
import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** When the tides of sun and moon add up and when they work against each other; for places with two tides a day. */
public final class SpringsAndNeaps {

    private static final double STEP_SECONDS = 21_600;
    private static final double TOLERANCE_SECONDS = 60;
    private static final double GREATEST_FORM_NUMBER = 1.5;
    private static final double RADIAN = Math.PI / 180;

    private SpringsAndNeaps() {}

    /**
     * The middle of a time of large or of small tides.
     *
     * @param springs large tides, else neaps
     */
    public record Turn(Instant time, boolean springs) {}

    /** All springs and neaps between two instants; none where the tide is mainly diurnal (form number above 1.5). */
    public static List<Turn> between(Station station, double fromEpochSeconds, double toEpochSeconds) {
        Optional<Double> moon = phase(station, "M2");
        Optional<Double> sun = phase(station, "S2");
        if (moon.isEmpty() || sun.isEmpty() || station.formNumber() > GREATEST_FORM_NUMBER) {
            return List.of();
        }
        double lag = sun.get() - moon.get();
        List<Turn> turns = new ArrayList<>();
        // the difference of the arguments runs forward by 24.4° a day: its sine rises at springs and falls at neaps
        for (Crossings.Crossing crossing : Crossings.of(
                t -> StrictMath.sin(RADIAN * (difference(t) - lag)),
                fromEpochSeconds,
                toEpochSeconds,
                STEP_SECONDS,
                TOLERANCE_SECONDS)) {
            turns.add(new Turn(Epoch.instant(crossing.at()), crossing.rising()));
        }
        return turns;
    }

    /** V + u of S2 less that of M2, in degrees. */
    private static double difference(double epochSeconds) {
        MeanLongitudes mean = MeanLongitudes.at(epochSeconds);
        double node = NodeFactors.at(epochSeconds).phaseDegrees(Node.M2);
        return 2 * mean.moon() - 2 * mean.sun() - node;
    }

    private static Optional<Double> phase(Station station, String name) {
        return station.harmonics().stream()
                .filter(h -> Constituents.named(h.name()).stream()
                        .anyMatch(c -> c.name().equals(name)))
                .map(Station.Harmonic::phaseDegrees)
                .findFirst();
    }
}
