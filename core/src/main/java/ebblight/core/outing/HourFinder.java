package ebblight.core.outing;

import ebblight.core.numeric.Epoch;
import ebblight.core.numeric.Work;
import ebblight.core.outing.HourSearch.Run;
import ebblight.core.tide.TideCurve;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Finds the windows in which all wishes hold, and when there are none, what keeps them away. */
public final class HourFinder {

    private static final double LONGEST_SECONDS = 11 * 366 * 86_400.0;

    private HourFinder() {}

    /**
     * All windows of at least {@code leastMinutes} whole minutes, from the first whole minute at or after {@code from} to
     * the last before {@code to}.
     */
    public static HourAnswer find(HourWishes wishes, Instant from, Instant to, int leastMinutes, Work work) {
        if (wishes.isEmpty()) {
            throw new IllegalArgumentException("nothing is wished: name at least one wish");
        }
        double length = Epoch.seconds(to) - Epoch.seconds(from);
        if (!(length > 0 && length <= LONGEST_SECONDS)) {
            throw new IllegalArgumentException(
                    "the search runs from an earlier to a later instant, at most eleven years");
        }
        if (leastMinutes < 1) {
            throw new IllegalArgumentException("a window is at least 1 minute long, asked was " + leastMinutes);
        }
        long first = (long) Math.ceil(Epoch.seconds(from) / 60);
        long end = (long) Math.ceil(Epoch.seconds(to) / 60);
        List<HourWindow> windows = new ArrayList<>();
        for (Run run : new HourSearch(wishes.conditions(), first, end, work).runs(leastMinutes)) {
            windows.add(window(wishes, run));
        }
        List<Shortfall> shortfalls =
                windows.isEmpty() ? shortfalls(wishes.conditions(), first, end, leastMinutes, work) : List.of();
        return new HourAnswer(windows, shortfalls);
    }

    private static HourWindow window(HourWishes wishes, Run run) {
        double start = 60.0 * run.first();
        double end = 60.0 * run.last();
        List<String> why = new ArrayList<>();
        for (Condition condition : wishes.conditions()) {
            why.add(condition.words(start, end));
        }
        why.addAll(wishes.unknownWords());
        return new HourWindow(
                Epoch.instant(start),
                Epoch.instant(end),
                run.minutes(),
                why,
                water(wishes.scene().tide(), start, end));
    }

    private static HourWindow.Water water(Optional<TideCurve> tide, double start, double end) {
        if (tide.isEmpty() || !tide.get().knows(start) || !tide.get().knows(end)) {
            return HourWindow.Water.UNKNOWN;
        }
        boolean rising = false;
        boolean falling = false;
        for (double t = start; t <= end; t += 60) {
            double rate = tide.get().risingMetresPerHour(t);
            rising |= rate > 0;
            falling |= rate < 0;
        }
        if (rising && falling) {
            return HourWindow.Water.TURNING;
        }
        return rising ? HourWindow.Water.RISING : HourWindow.Water.FALLING;
    }

    private static List<Shortfall> shortfalls(
            List<Condition> conditions, long first, long end, int leastMinutes, Work work) {
        List<Shortfall> shortfalls = new ArrayList<>();
        for (Condition condition : conditions) {
            long holds = 0;
            for (Run run : new HourSearch(List.of(condition), first, end, work).runs(1)) {
                holds += run.minutes();
            }
            List<Condition> others = new ArrayList<>(conditions);
            others.remove(condition);
            List<Run> without = new HourSearch(others, first, end, work).runs(leastMinutes);
            boolean never = holds == 0;
            OptionalDouble shortBy = shortBy(
                    condition, without.isEmpty() && never ? List.of(new Run(first, end - 1)) : without, leastMinutes);
            shortfalls.add(new Shortfall(
                    condition.word(), end - first - holds, end - first, without.size(), shortBy, condition.unit()));
        }
        shortfalls.sort(Comparator.comparingLong(Shortfall::failsMinutes).reversed());
        return shortfalls;
    }

    /** The least relaxing of a wish that makes a window of the wanted length in one of the runs without it. */
    private static OptionalDouble shortBy(Condition condition, List<Run> runs, int leastMinutes) {
        double least = Double.POSITIVE_INFINITY;
        for (Run run : runs) {
            int count = (int) run.minutes();
            double[] missing = new double[count];
            for (int i = 0; i < count; i++) {
                missing[i] = Math.max(0, -condition.margin(60.0 * (run.first() + i)));
            }
            least = Math.min(least, leastOfWorst(missing, leastMinutes));
        }
        return least < Double.POSITIVE_INFINITY && least > 0 ? OptionalDouble.of(least) : OptionalDouble.empty();
    }

    /** The smallest of the maxima over all stretches of {@code length} neighbours. */
    static double leastOfWorst(double[] values, int length) {
        int[] falling = new int[values.length];
        int head = 0;
        int tail = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < values.length; i++) {
            while (tail > head && values[falling[tail - 1]] <= values[i]) {
                tail--;
            }
            falling[tail++] = i;
            if (falling[head] <= i - length) {
                head++;
            }
            if (i >= length - 1) {
                least = Math.min(least, values[falling[head]]);
            }
        }
        return least;
    }
}
