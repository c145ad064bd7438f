package ebblight.core.outing;

import java.util.List;

/**
 * What a search for the hour found.
 *
 * @param windows in order of time
 * @param shortfalls when there are none: the wishes, the one that fails at most minutes first
 */
public record HourAnswer(List<HourWindow> windows, List<Shortfall> shortfalls) {

    public HourAnswer {
        windows = List.copyOf(windows);
        shortfalls = List.copyOf(shortfalls);
    }
}
