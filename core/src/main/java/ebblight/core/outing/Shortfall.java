package ebblight.core.outing;

import java.util.OptionalDouble;

/**
 * What one wish costs a search that found nothing.
 *
 * @param word the wish's name
 * @param failsMinutes at how many minutes of the span it does not hold, the others aside
 * @param ofMinutes length of the span
 * @param windowsWithout how many windows there would be without it
 * @param shortBy by how much it must be relaxed for the best of those windows, in {@code unit}; when there are none and
 *     the wish holds at no minute: for it alone; empty when it cannot be told
 * @param unit of {@code shortBy}
 */
public record Shortfall(
        String word, long failsMinutes, long ofMinutes, int windowsWithout, OptionalDouble shortBy, String unit) {}
