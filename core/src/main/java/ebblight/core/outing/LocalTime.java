package ebblight.core.outing;

import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;

/**
 * The clock on the wall at a place: a table of offsets, since the rules of time zones live outside.
 *
 * @param steps from when each offset holds, in order of time; the first holds before it too
 */
public record LocalTime(List<Step> steps) {

    private static final long DAY_SECONDS = 86_400;
    private static final int DAYS_OF_WEEK = 7;

    /** 1970-01-01 was a Thursday; days count from Monday = 0. */
    private static final int FIRST_DAY = 3;

    /** An offset and the instant from which it holds. */
    public record Step(Instant from, ZoneOffset offset) {}

    public LocalTime {
        steps = List.copyOf(steps);
        if (steps.isEmpty()) {
            throw new IllegalArgumentException("a table of offsets has at least one row");
        }
        for (int i = 1; i < steps.size(); i++) {
            if (!steps.get(i).from().isAfter(steps.get(i - 1).from())) {
                throw new IllegalArgumentException("the rows of a table of offsets come in order of time, "
                        + steps.get(i).from() + " does not");
            }
        }
    }

    /** A clock that never changes its offset. */
    public static LocalTime fixed(ZoneOffset offset) {
        return new LocalTime(List.of(new Step(Instant.EPOCH, offset)));
    }

    private int step(double epochSeconds) {
        int step = 0;
        while (step + 1 < steps.size() && Epoch.seconds(steps.get(step + 1).from()) <= epochSeconds) {
            step++;
        }
        return step;
    }

    /** Seconds of the clock since 1970-01-01 00:00 of that clock. */
    private long clockSeconds(double epochSeconds) {
        return (long) Math.floor(epochSeconds)
                + steps.get(step(epochSeconds)).offset().getTotalSeconds();
    }

    /** Minute of the day, 0 to 1439. */
    int minuteOfDay(double epochSeconds) {
        return (int) (Math.floorMod(clockSeconds(epochSeconds), DAY_SECONDS) / 60);
    }

    /** Day of the week, Monday 0 to Sunday 6. */
    int dayOfWeek(double epochSeconds) {
        long day = Math.floorDiv(clockSeconds(epochSeconds), DAY_SECONDS);
        return (int) Math.floorMod(day + FIRST_DAY, (long) DAYS_OF_WEEK);
    }

    /** Whole minutes, at least 1, until the offset next changes. */
    int minutesToChange(double epochSeconds) {
        int step = step(epochSeconds);
        if (step + 1 == steps.size()) {
            return Integer.MAX_VALUE;
        }
        double seconds = Epoch.seconds(steps.get(step + 1).from()) - epochSeconds;
        return (int) Math.max(1, Math.ceil(seconds / 60));
    }

    /** Hour and minute of the clock: {@code 17:05}. */
    public String hour(Instant instant) {
        int minute = minuteOfDay(Epoch.seconds(instant));
        return two(minute / 60) + ":" + two(minute % 60);
    }

    private static String two(int number) {
        return (number < 10 ? "0" : "") + number;
    }
}
