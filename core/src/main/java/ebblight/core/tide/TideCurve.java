package ebblight.core.tide;

/** The height of the water over time, at seconds of UTC since 1970, in metres above the datum of its source. */
public interface TideCurve {

    /** Whether the height at this instant can be told. */
    boolean knows(double epochSeconds);

    /** Height in metres; only where {@link #knows}. */
    double heightMetres(double epochSeconds);

    /** How fast the water rises, in metres an hour, negative when it falls; only where {@link #knows}. */
    double risingMetresPerHour(double epochSeconds);

    /** A bound that {@link #risingMetresPerHour} never exceeds either way within the span the curve was made for. */
    double fastestMetresPerHour();

    /** A bound on how fast {@link #risingMetresPerHour} itself changes, in metres an hour in an hour. */
    double steepestMetresPerHourSquared();
}
