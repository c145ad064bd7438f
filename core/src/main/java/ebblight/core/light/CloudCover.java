package ebblight.core.light;

/** How many stops the clouds take from the light of a clear sky, over time. */
public interface CloudCover {

    /** Stops at an instant, 0 or more. */
    double stops(double epochSeconds);

    /** A bound on how fast that changes, in stops a minute. */
    double fastestStopsPerMinute();

    /** One word or a few for a person. */
    String word();
}
