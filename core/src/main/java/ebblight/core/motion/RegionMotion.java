package ebblight.core.motion;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;

/**
 * What was measured of one part of the picture. Pixels are those of the survey (480 px wide or less).
 *
 * @param part name, kind, area and confidence
 * @param texture RMS in time of the luminance at a pixel over its mean, noise taken off, linear light
 * @param standing local contrast that no time removes, as a share of the mean
 * @param correlationSeconds τ in V(T) → V(0)·2τ/T; 0 where nothing was measured
 * @param velocity drift to the right and down in pixels a second; empty where none can be told
 * @param remaining what is left at whole stops of 1/8 to 960 s; empty for parts that stand or drift
 * @param flags what is to be said of it
 * @param at what is left at any time in seconds; only for parts with {@code remaining}
 * @param rhythm period and lulls of a flowing or swaying part that is seen to move
 * @param lines the time that draws lines; only for flowing parts that are seen to move
 * @param passing what passes in front of it; only for flowing and swaying parts that are seen to move
 * @param swingPixels RMS movement in pixels within a time in seconds; only for swaying parts
 */
public record RegionMotion(
        RegionMap.Part part,
        double texture,
        double standing,
        double correlationSeconds,
        Optional<Velocity> velocity,
        List<Remaining> remaining,
        Flags flags,
        Rhythm rhythm,
        FlowLines lines,
        Passing passing,
        DoubleFunction<Remaining> at,
        DoubleUnaryOperator swingPixels) {

    /**
     * Drift in pixels a second.
     *
     * @param relativeError likely error of the velocity as a share of the speed, 0.002 to 1
     */
    public record Velocity(double x, double y, double relativeError) {
        public double speed() {
            return Math.sqrt(x * x + y * y);
        }
    }

    /**
     * What is to be said of a part.
     *
     * @param seen it moves visibly above the noise
     * @param resolved its variance already falls as 1/T inside the clip
     * @param breakers it looks like breaking waves
     * @param borrowed too small for a measurement of its own: the values are those of all parts of its kind
     * @param coarse frames lie too far apart to see all of its movement
     */
    public record Flags(boolean seen, boolean resolved, boolean breakers, boolean borrowed, boolean coarse) {}
}
