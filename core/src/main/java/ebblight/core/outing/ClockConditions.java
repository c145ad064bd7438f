package ebblight.core.outing;

import java.util.Set;

/** Wishes about the clock on the wall and the day of the week. */
final class ClockConditions {

    private static final int DAY_MINUTES = 1440;
    private static final String[] NAMES = {"Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"
    };

    private ClockConditions() {}

    /** From one minute of the day to another, both included; over midnight when the second is the smaller. */
    static Condition hours(LocalTime clock, int fromMinute, int toMinute) {
        return new Hours(clock, fromMinute, toMinute);
    }

    /** Days of the week, Monday 0 to Sunday 6. */
    static Condition days(LocalTime clock, Set<Integer> days) {
        return new Days(clock, Set.copyOf(days));
    }

    private record Hours(LocalTime clock, int fromMinute, int toMinute) implements Condition {

        @Override
        public String word() {
            return "hours";
        }

        @Override
        public String unit() {
            return "min";
        }

        /** Minutes since the span's start and to its end, around the clock. */
        @Override
        public double margin(double epochSeconds) {
            int minute = clock.minuteOfDay(epochSeconds);
            int since = Math.floorMod(minute - fromMinute, DAY_MINUTES);
            int length = Math.floorMod(toMinute - fromMinute, DAY_MINUTES);
            if (since <= length) {
                return Math.min(since, length - since);
            }
            return -Math.min(since - length, DAY_MINUTES - since);
        }

        @Override
        public int look(double epochSeconds, double margin) {
            return Math.min(clock.minutesToChange(epochSeconds), Looking.again(margin, 1, 0));
        }

        @Override
        public String words(double fromEpochSeconds, double toEpochSeconds) {
            return "within the hours";
        }
    }

    private record Days(LocalTime clock, Set<Integer> days) implements Condition {

        @Override
        public String word() {
            return "days";
        }

        @Override
        public String unit() {
            return "min";
        }

        /** Minutes to the nearest midnight at which it changes are not told: one day is as good as another. */
        @Override
        public double margin(double epochSeconds) {
            return days.contains(clock.dayOfWeek(epochSeconds)) ? 0 : -1;
        }

        @Override
        public int look(double epochSeconds, double margin) {
            return Math.min(clock.minutesToChange(epochSeconds), DAY_MINUTES - clock.minuteOfDay(epochSeconds));
        }

        @Override
        public String words(double fromEpochSeconds, double toEpochSeconds) {
            String first = NAMES[clock.dayOfWeek(fromEpochSeconds)];
            String last = NAMES[clock.dayOfWeek(toEpochSeconds)];
            return first.equals(last) ? first : first + " to " + last;
        }
    }
}
