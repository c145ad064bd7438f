package ebblight.core.outing;

import ebblight.core.exposure.Numbers;
import ebblight.core.outing.RangeCondition.Label;
import ebblight.core.outing.RangeCondition.Quantity;
import ebblight.core.sky.CameraView;
import ebblight.core.sky.Horizontal;
import ebblight.core.sky.MoonPhase;
import ebblight.core.sky.Sky;
import java.util.function.DoubleFunction;

/** Wishes about where sun and moon stand. */
final class SkyConditions {

    /**
     * No body moves faster over the sky as it is seen: 15.04° an hour, the moon's parallax, and the fading of refraction
     * under the horizon (a sixth more).
     */
    static final double DEGREES_PER_MINUTE = 0.31;

    /** The moon's lit share changes by less than 0.6 of a percent an hour. */
    private static final double FRACTION_PER_MINUTE = 1e-4;

    private static final String DEGREES = "°";
    private static final double LOOK_SECONDS = 600;
    private static final double MOST_LOOKS = 300;

    private SkyConditions() {}

    static Condition sunAltitude(Sky sky, Range range) {
        return new RangeCondition(
                "sunAltitude",
                range,
                Quantity.of(t -> sky.sun(t).apparentAltitudeDegrees(), DEGREES_PER_MINUTE, 0),
                new Label("sun ", DEGREES, " high", 1));
    }

    static Condition moonAltitude(Sky sky, Range range) {
        return new RangeCondition(
                "moonAltitude",
                range,
                Quantity.of(t -> sky.moon(t).apparentAltitudeDegrees(), DEGREES_PER_MINUTE, 0),
                new Label("moon ", DEGREES, " high", 1));
    }

    static Condition moonFraction(Sky sky, Range range) {
        return new RangeCondition(
                "moonFraction",
                new Range(100 * range.low(), 100 * range.high()),
                Quantity.of(t -> 100 * MoonPhase.at(sky.ephemeris(), t).fraction(), 100 * FRACTION_PER_MINUTE, 0),
                new Label("moon ", " %", " lit", 0));
    }

    /** The sun's bearing against the axis of the view, positive to the right; ranges within −180 to 180. */
    static Condition sunBearing(Sky sky, CameraView view, Range range) {
        return new SunBearing(sky, view, range);
    }

    /** Whether part of the disc shall be in the picture and above the skyline, or nothing of it. */
    static Condition sunInFrame(Sky sky, CameraView view, double skylineDegrees, boolean wanted) {
        return new InFrame("sunInFrame", "sun", sky::sun, Sky.SUN_KILOMETRES, view, skylineDegrees, wanted);
    }

    static Condition moonInFrame(Sky sky, CameraView view, double skylineDegrees, boolean wanted) {
        return new InFrame("moonInFrame", "moon", sky::moon, Sky.MOON_KILOMETRES, view, skylineDegrees, wanted);
    }

    private record InFrame(
            String word,
            String name,
            DoubleFunction<Horizontal> body,
            double radiusKilometres,
            CameraView view,
            double skylineDegrees,
            boolean wanted)
            implements Condition {

        @Override
        public String unit() {
            return DEGREES;
        }

        private double depth(Horizontal at) {
            double semidiameter = Sky.semidiameterDegrees(radiusKilometres, at.kilometres());
            double altitude = at.apparentAltitudeDegrees();
            return Math.min(
                    altitude + semidiameter - skylineDegrees,
                    semidiameter - view.outsideDegrees(at.azimuthDegrees(), altitude));
        }

        @Override
        public double margin(double epochSeconds) {
            double depth = depth(body.apply(epochSeconds));
            return wanted ? depth : -depth;
        }

        @Override
        public int look(double epochSeconds, double margin) {
            return Looking.again(margin, DEGREES_PER_MINUTE, 0);
        }

        /** How far out of the picture at least while it is up. */
        @Override
        public String words(double fromEpochSeconds, double toEpochSeconds) {
            if (wanted) {
                return name + " in the picture";
            }
            double least = Double.POSITIVE_INFINITY;
            int looks = (int) Math.min(MOST_LOOKS, 1 + Math.ceil((toEpochSeconds - fromEpochSeconds) / LOOK_SECONDS));
            for (int i = 0; i <= looks; i++) {
                Horizontal at = body.apply(fromEpochSeconds + (toEpochSeconds - fromEpochSeconds) * i / looks);
                double altitude = at.apparentAltitudeDegrees();
                if (altitude > skylineDegrees) {
                    least = Math.min(least, view.outsideDegrees(at.azimuthDegrees(), altitude));
                }
            }
            if (Double.isInfinite(least)) {
                return name + (skylineDegrees > 0 ? " under the skyline" : " under the horizon");
            }
            return name + " out of the picture" + (least < 1 ? "" : " by " + (int) least + DEGREES + " or more");
        }
    }

    private record SunBearing(Sky sky, CameraView view, Range range) implements Condition {

        private static final double FARTHEST_MINUTES = 30;

        @Override
        public String word() {
            return "sunBearing";
        }

        @Override
        public String unit() {
            return DEGREES;
        }

        private static double wrap(double degrees) {
            return degrees - 360 * Math.floor((degrees + 180) / 360);
        }

        @Override
        public double margin(double epochSeconds) {
            double bearing = bearing(epochSeconds);
            double inside = range.margin(bearing);
            return inside >= 0
                    ? inside
                    : -Math.min(Math.abs(wrap(bearing - range.low())), Math.abs(wrap(bearing - range.high())));
        }

        /** Bearings turn faster the nearer the sun is to the zenith. */
        @Override
        public int look(double epochSeconds, double margin) {
            double altitude = Math.abs(sky.sun(epochSeconds).apparentAltitudeDegrees());
            double highest = altitude + FARTHEST_MINUTES * DEGREES_PER_MINUTE;
            if (highest >= 89) {
                return 1;
            }
            double perMinute = DEGREES_PER_MINUTE / StrictMath.cos(highest * Math.PI / 180);
            return (int) Math.min(FARTHEST_MINUTES, Looking.again(margin, perMinute, 0));
        }

        @Override
        public String words(double fromEpochSeconds, double toEpochSeconds) {
            double first = bearing(fromEpochSeconds);
            double last = bearing(toEpochSeconds);
            String from = Numbers.shortest(Math.abs(first), 0);
            String to = Numbers.shortest(Math.abs(last), 0);
            boolean same = first < 0 == last < 0;
            String numbers = same
                    ? (from.equals(to) ? from : from + " to " + to) + DEGREES + side(last)
                    : from + DEGREES + side(first) + " to " + to + DEGREES + side(last);
            return "sun " + numbers + " of the view";
        }

        private static String side(double bearing) {
            return bearing < 0 ? " left" : " right";
        }

        private double bearing(double epochSeconds) {
            return wrap(sky.sun(epochSeconds).azimuthDegrees() - view.azimuthDegrees());
        }
    }
}
