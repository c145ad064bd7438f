package ebblight.core.outing;

import ebblight.core.light.Cloud;
import ebblight.core.light.LightModel;
import ebblight.core.sky.CameraView;
import ebblight.core.sky.Ephemeris;
import ebblight.core.sky.Geocentric;
import ebblight.core.sky.Place;
import ebblight.core.sky.Sky;
import ebblight.core.tide.TideCurve;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * A sky drawn by hand over the place 0° 0°: the earth stands still, sun and moon go where they are told. There the zenith
 * is the x axis, east y and north z.
 */
record DrawnSky(DoubleUnaryOperator azimuth, DoubleUnaryOperator altitude) implements Ephemeris {

    private static final double SUN_KILOMETRES = 149_597_870.7;

    /** The sun in one direction that does not turn, climbing or sinking by so many degrees a minute from an altitude. */
    static Sky climbing(double azimuth, double altitude, double perMinute) {
        return new Sky(Place.of(0, 0), new DrawnSky(t -> azimuth, t -> altitude + perMinute * t / 60));
    }

    /** The sun at one altitude, turning by so many degrees a minute from a bearing. */
    static Sky turning(double azimuth, double altitude, double perMinute) {
        return new Sky(Place.of(0, 0), new DrawnSky(t -> azimuth + perMinute * t / 60, t -> altitude));
    }

    static Scene scene(Sky sky, Optional<TideCurve> tide, Optional<CameraView> view, Optional<Weather> weather) {
        return new Scene(sky, LightModel.of(sky, Cloud.CLEAR), LocalTime.fixed(ZoneOffset.UTC), tide, view, 0, weather);
    }

    private static Geocentric at(double azimuthDegrees, double altitudeDegrees, double kilometres) {
        double azimuth = Math.toRadians(azimuthDegrees);
        double altitude = Math.toRadians(altitudeDegrees);
        return new Geocentric(
                kilometres * Math.sin(altitude),
                kilometres * Math.cos(altitude) * Math.sin(azimuth),
                kilometres * Math.cos(altitude) * Math.cos(azimuth));
    }

    @Override
    public Geocentric sun(double epochSeconds) {
        return at(azimuth.applyAsDouble(epochSeconds), altitude.applyAsDouble(epochSeconds), SUN_KILOMETRES);
    }

    /** Opposite of the sun: a full moon, so far away that the earth is a point to it. */
    @Override
    public Geocentric moon(double epochSeconds) {
        return at(
                180 + azimuth.applyAsDouble(epochSeconds),
                -altitude.applyAsDouble(epochSeconds),
                0.0026 * SUN_KILOMETRES);
    }

    @Override
    public double siderealDegrees(double epochSeconds) {
        return 0;
    }
}
