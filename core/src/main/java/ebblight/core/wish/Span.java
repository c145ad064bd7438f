package ebblight.core.wish;

import java.util.ArrayList;
import java.util.List;

/**
 * Shutter times from one to another, in seconds; 0 and infinity are the open ends.
 */
public record Span(double fromSeconds, double toSeconds) {

    /** All times. */
    static final Span ALL = new Span(0, Double.POSITIVE_INFINITY);

    public Span {
        if (!(fromSeconds >= 0 && fromSeconds <= toSeconds)) {
            throw new IllegalArgumentException(
                    "a span runs from a shorter to a longer time, was " + fromSeconds + " s to " + toSeconds + " s");
        }
    }

    /** The times that lie in a span of both lists. */
    static List<Span> both(List<Span> first, List<Span> second) {
        List<Span> common = new ArrayList<>();
        for (Span a : first) {
            for (Span b : second) {
                double from = Math.max(a.fromSeconds, b.fromSeconds);
                double to = Math.min(a.toSeconds, b.toSeconds);
                if (from <= to) {
                    common.add(new Span(from, to));
                }
            }
        }
        return common;
    }
}
