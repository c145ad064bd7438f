package ebblight.core.outing;

import ebblight.core.exposure.Camera;
import ebblight.core.exposure.Filter;
import ebblight.core.numeric.Powers;
import java.time.Instant;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * The fewest filters of the kit with which the wished times are reached in the light of the windows.
 *
 * @param filters to pack
 * @param uses which stack serves when, in order of time, window by window
 * @param reached how many of the instants looked at are reached
 * @param of how many were looked at
 * @param compromise true when it takes apertures beyond the sharpest or a higher ISO
 * @param missing what would be needed at the instant that is farthest from being reached, when one is not
 */
public record PackingList(
        List<Filter> filters, List<Use> uses, int reached, int of, boolean compromise, Optional<Missing> missing) {

    /** Two stops of ISO above base are given away before a time counts as out of reach. */
    private static final double ISO_STOPS = 2;

    private static final int MOST_FILTERS = 16;
    private static final double CLOSE = 1e-9;

    public PackingList {
        filters = List.copyOf(filters);
        uses = List.copyOf(uses);
    }

    /**
     * Light at an instant.
     *
     * @param opens whether a window begins here
     */
    public record Light(Instant time, double exposureValue100, boolean opens) {}

    /** A stack that serves from one instant to another; empty: no filter. */
    public record Use(List<Filter> stack, Instant from, Instant to) {
        public Use {
            stack = List.copyOf(stack);
        }
    }

    /**
     * What is missing at the sharpest apertures and base ISO.
     *
     * @param time when
     * @param stops above 0: so much denser a stack would be needed; below 0: it is so much too dark without any
     */
    public record Missing(Instant time, double stops) {}

    /**
     * Packs for shutter times within a range.
     *
     * @param bag filters; polarisers and graduated ones stay out of it, they are metered through
     * @param maxStack how many may sit on each other
     * @param lights in order of time
     */
    public static PackingList of(
            List<Filter> bag, Camera camera, int maxStack, double fromSeconds, double toSeconds, List<Light> lights) {
        List<Filter> neutral = bag.stream()
                .filter(f -> f.kind() == Filter.Kind.NEUTRAL || f.kind() == Filter.Kind.VARIABLE)
                .toList();
        if (neutral.size() > MOST_FILTERS) {
            throw new IllegalArgumentException("packs from at most " + MOST_FILTERS + " filters, " + neutral.size()
                    + " were given; take some out of the bag");
        }
        if (maxStack < 1 || maxStack > 4) {
            throw new IllegalArgumentException("one to four filters sit on each other, asked were " + maxStack);
        }
        if (!(fromSeconds > 0 && fromSeconds <= toSeconds)) {
            throw new IllegalArgumentException("shutter times run from a shorter to a longer one, were " + fromSeconds
                    + " s to " + toSeconds + " s");
        }
        List<Stack> stacks = stacks(neutral, maxStack);
        Room sharp = Room.of(camera.sharpestFrom(), camera.sharpestTo(), camera.baseIso(), 0, fromSeconds, toSeconds);
        PackingList best = new Packing(neutral, stacks, sharp, lights).list(false);
        if (best.reached == best.of) {
            return best;
        }
        Room any = Room.of(
                camera.widestFNumber(), camera.narrowestFNumber(), camera.baseIso(), ISO_STOPS, fromSeconds, toSeconds);
        PackingList stretched = new Packing(neutral, stacks, any, lights).list(true);
        return stretched.reached > best.reached ? stretched.withMissingOf(best) : best;
    }

    /** What to buy is told for the sharpest apertures, unless all is reached without them. */
    private PackingList withMissingOf(PackingList sharp) {
        return reached == of ? this : new PackingList(filters, uses, reached, of, compromise, sharp.missing);
    }

    /** Filters on each other as bits of the bag, and what they take. */
    private record Stack(int bits, double stops) {}

    /** What the stack must take, less the exposure value: from {@code low} to {@code high} stops. */
    private record Room(double low, double high) {

        static Room of(
                double widest, double narrowest, double iso, double isoStops, double fromSeconds, double toSeconds) {
            double speed = Powers.log2(iso / 100);
            return new Room(
                    Powers.log2(fromSeconds) - 2 * Powers.log2(narrowest) + speed - CLOSE,
                    Powers.log2(toSeconds) - 2 * Powers.log2(widest) + speed + isoStops + CLOSE);
        }

        /** By how many stops a stack misses: above 0 when it takes too little. */
        double misses(double stackStops, double exposureValue100) {
            double room = stackStops - exposureValue100;
            return room < low ? low - room : room > high ? high - room : 0;
        }
    }

    private static List<Stack> stacks(List<Filter> filters, int maxStack) {
        List<Stack> stacks = new ArrayList<>();
        for (int bits = 0; bits < 1 << filters.size(); bits++) {
            if (Integer.bitCount(bits) <= maxStack) {
                double stops = 0;
                for (int i = 0; i < filters.size(); i++) {
                    stops += (bits >> i & 1) == 1 ? filters.get(i).stops() : 0;
                }
                stacks.add(new Stack(bits, stops));
            }
        }
        // the lightest stack that serves comes first
        stacks.sort((a, b) -> Integer.bitCount(a.bits) != Integer.bitCount(b.bits)
                ? Integer.bitCount(a.bits) - Integer.bitCount(b.bits)
                : Double.compare(a.stops, b.stops));
        return stacks;
    }

    private record Packing(List<Filter> bag, List<Stack> stacks, Room room, List<Light> lights) {

        PackingList list(boolean compromise) {
            BitSet[] serves = new BitSet[stacks.size()];
            for (int k = 0; k < serves.length; k++) {
                serves[k] = new BitSet(lights.size());
                for (int i = 0; i < lights.size(); i++) {
                    serves[k].set(i, room.misses(stacks.get(k).stops, lights.get(i).exposureValue100) == 0);
                }
            }
            int all = (1 << bag.size()) - 1;
            int most = reached(all, serves).cardinality();
            int set = smallest(most, all, serves);
            return new PackingList(
                    filters(set),
                    uses(set, serves),
                    most,
                    lights.size(),
                    compromise,
                    missing(all, reached(all, serves)));
        }

        private BitSet reached(int set, BitSet[] serves) {
            BitSet reached = new BitSet(lights.size());
            for (int k = 0; k < serves.length; k++) {
                if ((stacks.get(k).bits & ~set) == 0) {
                    reached.or(serves[k]);
                }
            }
            return reached;
        }

        private int smallest(int most, int all, BitSet[] serves) {
            int best = all;
            for (int set = 0; set < all; set++) {
                if (better(set, best) && reached(set, serves).cardinality() == most) {
                    best = set;
                }
            }
            return best;
        }

        /** Fewer filters; of as many, those that take less light. */
        private boolean better(int set, int than) {
            int fewer = Integer.bitCount(than) - Integer.bitCount(set);
            return fewer > 0 || (fewer == 0 && stops(set) < stops(than));
        }

        private double stops(int set) {
            return filters(set).stream().mapToDouble(Filter::stops).sum();
        }

        private List<Filter> filters(int set) {
            List<Filter> filters = new ArrayList<>();
            for (int i = 0; i < bag.size(); i++) {
                if ((set >> i & 1) == 1) {
                    filters.add(bag.get(i));
                }
            }
            return filters;
        }

        /** Keeps a stack as long as it serves: nobody changes filters without need. */
        private List<Use> uses(int set, BitSet[] serves) {
            List<Use> uses = new ArrayList<>();
            int now = -1;
            for (int i = 0; i < lights.size(); i++) {
                Instant time = lights.get(i).time;
                boolean goesOn = now >= 0 && serves[now].get(i) && !lights.get(i).opens;
                now = goesOn ? now : first(set, serves, i);
                if (now >= 0) {
                    Instant from = goesOn ? uses.remove(uses.size() - 1).from() : time;
                    uses.add(new Use(filters(stacks.get(now).bits), from, time));
                }
            }
            return uses;
        }

        private int first(int set, BitSet[] serves, int light) {
            for (int k = 0; k < serves.length; k++) {
                if ((stacks.get(k).bits & ~set) == 0 && serves[k].get(light)) {
                    return k;
                }
            }
            return -1;
        }

        private Optional<Missing> missing(int all, BitSet reached) {
            Optional<Missing> worst = Optional.empty();
            for (int i = reached.nextClearBit(0); i < lights.size(); i = reached.nextClearBit(i + 1)) {
                double nearest = Double.POSITIVE_INFINITY;
                for (Stack stack : stacks) {
                    double misses = room.misses(stack.stops, lights.get(i).exposureValue100);
                    if ((stack.bits & ~all) == 0 && Math.abs(misses) < Math.abs(nearest)) {
                        nearest = misses;
                    }
                }
                if (worst.isEmpty() || Math.abs(nearest) > Math.abs(worst.get().stops())) {
                    worst = Optional.of(new Missing(lights.get(i).time, nearest));
                }
            }
            return worst;
        }
    }
}
