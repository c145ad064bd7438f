package ebblight.core.outing;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * Finds the runs of whole UTC minutes at which all wishes hold. It looks at few minutes: each wish says after how many
 * its answer can be another, so that the runs are those that looking at every minute would find.
 */
final class HourSearch {

    private static final int REPORT_STEPS = 4096;

    private final List<Condition> conditions;
    private final long fromMinute;
    private final long toMinute;
    private final Work work;

    /**
     * A search over minutes since 1970.
     *
     * @param fromMinute the first
     * @param toMinute the first that is no longer looked at
     */
    HourSearch(List<Condition> conditions, long fromMinute, long toMinute, Work work) {
        this.conditions = List.copyOf(conditions);
        this.fromMinute = fromMinute;
        this.toMinute = toMinute;
        this.work = work;
    }

    /** Minutes since 1970, first and last of a run. */
    record Run(long first, long last) {

        long minutes() {
            return last - first + 1;
        }
    }

    /** All maximal runs of at least so many minutes, in order. */
    List<Run> runs(long leastMinutes) {
        List<Run> runs = new ArrayList<>();
        long minute = fromMinute;
        int steps = 0;
        while (minute < toMinute) {
            long free = minute + unlike(minute);
            if (free > minute) {
                minute = free;
            } else {
                long end = end(minute);
                if (end - minute >= leastMinutes) {
                    runs.add(new Run(minute, end - 1));
                }
                minute = end;
            }
            if (++steps % REPORT_STEPS == 0) {
                work.check();
                work.progress((double) (minute - fromMinute) / (toMinute - fromMinute), "searching the hours");
            }
        }
        return runs;
    }

    /** 0 when all wishes hold at this minute, else after how many minutes to look again. */
    private long unlike(long minute) {
        for (Condition condition : conditions) {
            double margin = condition.margin(60.0 * minute);
            if (!(margin >= 0)) {
                return condition.look(60.0 * minute, margin);
            }
        }
        return 0;
    }

    /** The first minute after {@code minute}, at which all wishes hold, at which one no longer does. */
    private long end(long minute) {
        long at = minute;
        while (at < toMinute) {
            int look = Integer.MAX_VALUE;
            for (Condition condition : conditions) {
                double margin = condition.margin(60.0 * at);
                if (!(margin >= 0)) {
                    return at;
                }
                look = Math.min(look, condition.look(60.0 * at, margin));
            }
            at += look;
        }
        return toMinute;
    }
}
