package ebblight.core.sky;

import ebblight.core.numeric.Crossings;
import ebblight.core.numeric.Crossings.Crossing;
import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.DoubleUnaryOperator;

/**
 * The first of each event in a span of time, for a level horizon at the height of the place. Found within 2 s of
 * almanacs between 60° south and north; true air moves rise and set by minutes now and then.
 *
 * @param first instant of each event that happens
 * @param polar day or night when the sun neither rises nor sets in the span
 */
public record SkyEvents(Map<SkyEvent, Instant> first, Optional<Polar> polar) {

    private static final double STEP_SECONDS = 600;
    private static final double TOLERANCE_SECONDS = 0.02;
    private static final double HORIZON_LIFT_DEGREES = 34 / 60.0;
    private static final double CIVIL = -6;
    private static final double NAUTICAL = -12;
    private static final double ASTRONOMICAL = -18;

    /** A span without sunrise and sunset. */
    public enum Polar {
        /** The sun stays up. */
        DAY("day"),
        /** The sun stays down. */
        NIGHT("night");

        private final String word;

        Polar(String word) {
            this.word = word;
        }

        /** One lower-case word. */
        public String word() {
            return word;
        }
    }

    public SkyEvents {
        first = new TreeMap<>(first);
    }

    /** Events between two instants, at most 40 days apart. */
    public static SkyEvents between(Sky sky, Instant from, Instant to) {
        double start = Epoch.seconds(from);
        double end = Epoch.seconds(to);
        if (!(end > start && end - start <= 40 * Clock.DAY_SECONDS)) {
            throw new IllegalArgumentException("events are sought from an earlier to a later instant at most 40 days"
                    + " apart, were " + from + " and " + to);
        }
        Map<SkyEvent, Instant> first = new TreeMap<>();
        DoubleUnaryOperator sun = t -> upperLimb(sky.sun(t), Sky.SUN_KILOMETRES);
        put(first, sun, start, end, SkyEvent.SUNRISE, SkyEvent.SUNSET);
        put(first, t -> sky.sun(t).altitudeDegrees() - CIVIL, start, end, SkyEvent.CIVIL_DAWN, SkyEvent.CIVIL_DUSK);
        put(
                first,
                t -> sky.sun(t).altitudeDegrees() - NAUTICAL,
                start,
                end,
                SkyEvent.NAUTICAL_DAWN,
                SkyEvent.NAUTICAL_DUSK);
        put(
                first,
                t -> sky.sun(t).altitudeDegrees() - ASTRONOMICAL,
                start,
                end,
                SkyEvent.ASTRONOMICAL_DAWN,
                SkyEvent.ASTRONOMICAL_DUSK);
        put(first, t -> upperLimb(sky.moon(t), Sky.MOON_KILOMETRES), start, end, SkyEvent.MOONRISE, SkyEvent.MOONSET);
        // the hour angle passes zero upwards at the highest point and 180° downwards at the lowest
        for (Crossing crossing : Crossings.of(sky::sunHourAngleSine, start, end, STEP_SECONDS, TOLERANCE_SECONDS)) {
            if (crossing.rising()) {
                first.putIfAbsent(SkyEvent.TRANSIT, Epoch.instant(crossing.at()));
            }
        }
        Optional<Polar> polar = first.containsKey(SkyEvent.SUNRISE) || first.containsKey(SkyEvent.SUNSET)
                ? Optional.empty()
                : Optional.of(sun.applyAsDouble(start) >= 0 ? Polar.DAY : Polar.NIGHT);
        return new SkyEvents(first, polar);
    }

    /** The instant of an event; empty when it does not happen in the span. */
    public Optional<Instant> instant(SkyEvent event) {
        return Optional.ofNullable(first.get(event));
    }

    /** Degrees of the body's upper limb over the level horizon, air of the almanacs included. */
    private static double upperLimb(Horizontal body, double radiusKilometres) {
        return body.altitudeDegrees()
                + Sky.semidiameterDegrees(radiusKilometres, body.kilometres())
                + HORIZON_LIFT_DEGREES;
    }

    private static void put(
            Map<SkyEvent, Instant> first,
            DoubleUnaryOperator height,
            double start,
            double end,
            SkyEvent rise,
            SkyEvent set) {
        List<Crossing> crossings = Crossings.of(height, start, end, STEP_SECONDS, TOLERANCE_SECONDS);
        for (Crossing crossing : crossings) {
            first.putIfAbsent(crossing.rising() ? rise : set, Epoch.instant(crossing.at()));
        }
    }
}
