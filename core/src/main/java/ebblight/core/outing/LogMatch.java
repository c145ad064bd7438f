package ebblight.core.outing;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * Which frame of a card is which entry of the log. A camera's clock differs from the phone's by one constant offset, unknown
 * and perhaps hours (a zone not set): the one that brings most entries together is taken.
 */
public final class LogMatch {

    /** Within so much an entry and a frame count as one: pressing by hand, whole seconds in Exif, a self-timer. */
    private static final double APART_SECONDS = 4;

    /** Exposures by hand and by dial differ by less than this from what was logged, in stops. */
    private static final double APART_STOPS = 0.6;

    private static final double STOP = 2;

    private LogMatch() {}

    /**
     * A frame or an entry of the log.
     *
     * @param startSeconds when the shutter opened, by its own clock, in seconds since 1970
     * @param openSeconds how long it was open; 0 when not known
     */
    public record Taken(double startSeconds, double openSeconds) {}

    /** An entry and its frame, by their places in the lists, and how far apart they are once the clocks agree. */
    public record Pair(int entry, int frame, double apartSeconds) {}

    /**
     * What was found.
     *
     * @param clockSeconds what the camera's clock is ahead of the log's
     * @param ambiguous whether a quite other offset brings as many together
     */
    public record Matched(double clockSeconds, boolean ambiguous, List<Pair> pairs) {}

    /** Matches entries with frames; empty when no entry has a frame that was open as long. */
    public static Optional<Matched> of(List<Taken> entries, List<Taken> frames) {
        List<Matched> tried = new ArrayList<>();
        InTime inTime = new InTime(frames);
        for (Taken entry : entries) {
            for (Taken frame : frames) {
                if (alike(entry, frame)) {
                    tried.add(at(frame.startSeconds() - entry.startSeconds(), entries, inTime));
                }
            }
        }
        Comparator<Matched> better = Comparator.comparingInt(
                        (Matched m) -> m.pairs().size())
                .reversed()
                .thenComparingDouble(LogMatch::spread)
                .thenComparingDouble(m -> Math.abs(m.clockSeconds()));
        return tried.stream().min(better).map(best -> {
            boolean others = tried.stream()
                    .anyMatch(m -> m.pairs().size() == best.pairs().size()
                            && Math.abs(m.clockSeconds() - best.clockSeconds()) > 2 * APART_SECONDS);
            return new Matched(middle(best, entries, frames), others, best.pairs());
        });
    }

    private static boolean alike(Taken entry, Taken frame) {
        if (entry.openSeconds() <= 0 || frame.openSeconds() <= 0) {
            return true;
        }
        double stops = StrictMath.log(entry.openSeconds() / frame.openSeconds()) / StrictMath.log(STOP);
        return Math.abs(stops) <= APART_STOPS;
    }

    /** The pairs at one offset, each entry with the nearest frame that is still free. */
    private static Matched at(double clock, List<Taken> entries, InTime frames) {
        boolean[] used = new boolean[frames.taken.size()];
        List<Pair> pairs = new ArrayList<>();
        for (int e = 0; e < entries.size(); e++) {
            double wanted = clock + entries.get(e).startSeconds();
            int nearest = -1;
            double least = APART_SECONDS;
            for (int k = frames.from(wanted - APART_SECONDS); k < frames.order.length; k++) {
                int f = frames.order[k];
                double ahead = frames.taken.get(f).startSeconds() - wanted;
                if (ahead > APART_SECONDS) {
                    break;
                }
                if (!used[f] && Math.abs(ahead) <= least && alike(entries.get(e), frames.taken.get(f))) {
                    nearest = f;
                    least = Math.abs(ahead);
                }
            }
            if (nearest >= 0) {
                used[nearest] = true;
                pairs.add(new Pair(e, nearest, least));
            }
        }
        return new Matched(clock, false, pairs);
    }

    /** Frames in the order of their clock: an offset is tried for every entry and frame, and looks at few of them. */
    private static final class InTime {
        final List<Taken> taken;
        final int[] order;

        InTime(List<Taken> taken) {
            this.taken = taken;
            order = IntStream.range(0, taken.size())
                    .boxed()
                    .sorted(Comparator.comparingDouble(f -> taken.get(f).startSeconds()))
                    .mapToInt(Integer::intValue)
                    .toArray();
        }

        /** The first place of the order that is not earlier. */
        int from(double seconds) {
            int low = 0;
            int high = order.length;
            while (low < high) {
                int middle = (low + high) / 2;
                if (taken.get(order[middle]).startSeconds() < seconds) {
                    low = middle + 1;
                } else {
                    high = middle;
                }
            }
            return low;
        }
    }

    private static double spread(Matched matched) {
        return matched.pairs().stream().mapToDouble(Pair::apartSeconds).sum();
    }

    /** The mean offset of the pairs. */
    private static double middle(Matched matched, List<Taken> entries, List<Taken> frames) {
        return matched.pairs().stream()
                .mapToDouble(p -> frames.get(p.frame()).startSeconds()
                        - entries.get(p.entry()).startSeconds())
                .average()
                .orElse(matched.clockSeconds());
    }
}
