package ebblight.core.card;

import ebblight.core.numeric.Quantiles;
import java.util.Arrays;
import java.util.List;

/**
 * What the frames of one view are for, by arithmetic of exposure: settings that take six stops more and a picture that
 * is no brighter mean six stops of filter. Light that drifts is told from filters by being slow.
 */
public final class Roles {

    /** Jumps of the light below this, from one frame to the next, are cloud and metering, no filter. */
    private static final double LEAST_FILTER_STOPS = 0.8;
    /** And that much more for every minute between them: the light changes no faster (common practice at dusk). */
    private static final double DRIFT_STOPS_PER_MINUTE = 0.35;
    /** Densities that differ less than this are one filter. */
    private static final double SAME_FILTER_STOPS = 0.6;

    private static final int LEAST_BURST = 5;
    /** Longest rest between frames of a burst, in seconds: cameras that write whole seconds round by one. */
    private static final double BURST_REST_SECONDS = 1.5;

    private final List<CardShot> shots;
    private final double[] filterStops;
    private final Role[] roles;

    private Roles(List<CardShot> shots) {
        this.shots = shots;
        this.filterStops = new double[shots.size()];
        this.roles = new Role[shots.size()];
    }

    /** Roles of frames of one view in order of time. */
    public static Roles of(List<CardShot> shots) {
        Roles found = new Roles(List.copyOf(shots));
        found.filters();
        Arrays.fill(found.roles, Role.VARIANT);
        found.tellFilters();
        found.tellBursts();
        return found;
    }

    /** Stops of filter on frame {@code i} against the clearest of the view; not a number when nothing tells. */
    public double filterStops(int i) {
        return filterStops[i];
    }

    public Role role(int i) {
        return roles[i];
    }

    /** Walks along the frames and adds up the jumps of the light, then joins what comes out alike. */
    private void filters() {
        double drift = drift();
        double density = 0;
        int before = -1;
        Arrays.fill(filterStops, Double.NaN);
        for (int i = 0; i < filterStops.length; i++) {
            if (Double.isNaN(shots.get(i).lightStops())) {
                continue;
            }
            if (before >= 0) {
                double jump = jump(before, i) - drift * minutes(before, i);
                if (isFilter(jump, minutes(before, i))) {
                    density += jump;
                }
            }
            filterStops[i] = density;
            before = i;
        }
        join();
    }

    /** Stops by which frame {@code b} got less light than {@code a}. */
    private double jump(int a, int b) {
        return shots.get(a).lightStops() - shots.get(b).lightStops();
    }

    private double minutes(int a, int b) {
        double minutes = (shots.get(b).middleSeconds() - shots.get(a).middleSeconds()) / 60;
        return Double.isNaN(minutes) ? 0 : Math.max(0, minutes);
    }

    private static boolean isFilter(double jump, double minutes) {
        return Math.abs(jump) > LEAST_FILTER_STOPS + DRIFT_STOPS_PER_MINUTE * minutes;
    }

    /** Stops a minute by which the light fades between frames with the same filter: the median of what they tell. */
    private double drift() {
        double[] rates = new double[shots.size()];
        int n = 0;
        int before = -1;
        for (int i = 0; i < shots.size(); i++) {
            if (Double.isNaN(shots.get(i).lightStops())) {
                continue;
            }
            double minutes = before < 0 ? 0 : minutes(before, i);
            if (minutes > 0.1 && !isFilter(jump(before, i), minutes)) {
                rates[n++] = jump(before, i) / minutes;
            }
            before = i;
        }
        double median = n == 0 ? 0 : Quantiles.median(rates, n);
        return Math.max(-DRIFT_STOPS_PER_MINUTE, Math.min(DRIFT_STOPS_PER_MINUTE, median));
    }

    /** Densities that lie together are one filter; the least is no filter where there are others, else unknown. */
    private void join() {
        double[] sorted = Arrays.stream(filterStops)
                .filter(d -> !Double.isNaN(d))
                .sorted()
                .toArray();
        int[] kind = new int[filterStops.length];
        Arrays.fill(kind, -1);
        int kinds = 0;
        for (int k = 0; k < sorted.length; k++) {
            kinds += k == 0 || sorted[k] - sorted[k - 1] > SAME_FILTER_STOPS ? 1 : 0;
            for (int i = 0; i < kind.length; i++) {
                kind[i] = filterStops[i] == sorted[k] ? kinds - 1 : kind[i];
            }
        }
        if (kinds < 2) {
            Arrays.fill(filterStops, Double.NaN);
            return;
        }
        double[] densities = FilterFit.of(shots, kind, kinds);
        for (int i = 0; i < kind.length; i++) {
            filterStops[i] = kind[i] < 0 ? Double.NaN : densities[kind[i]];
        }
    }

    private void tellFilters() {
        boolean filteredLater = false;
        for (int i = roles.length - 1; i >= 0; i--) {
            if (filterStops[i] > LEAST_FILTER_STOPS) {
                roles[i] = Role.FILTERED;
                filteredLater = true;
            } else if (filteredLater && !Double.isNaN(filterStops[i])) {
                roles[i] = Role.TEST;
            }
        }
    }

    private void tellBursts() {
        int from = 0;
        for (int i = 1; i <= roles.length; i++) {
            if (i == roles.length || !follows(i)) {
                if (i - from >= LEAST_BURST) {
                    Arrays.fill(roles, from, i, Role.BURST);
                }
                from = i;
            }
        }
    }

    /** Whether frame {@code i} has the settings of the one before and follows it at once. */
    private boolean follows(int i) {
        CardShot before = shots.get(i - 1);
        CardShot now = shots.get(i);
        double rest = now.opensSeconds() - before.closesSeconds();
        return Math.abs(now.exposureValue100() - before.exposureValue100()) < 0.1
                && Math.abs(now.openSeconds() / before.openSeconds() - 1) < 0.05
                && rest > -BURST_REST_SECONDS
                && rest < BURST_REST_SECONDS;
    }

    /** Whether the burst to which frame {@code i} belongs begins with it. */
    public boolean beginsBurst(int i) {
        return roles[i] == Role.BURST && (i == 0 || roles[i - 1] != Role.BURST || !follows(i));
    }

    /** For a filtered frame that is no burst: the frame without filter that lies nearest in time; −1 for none. */
    public int clearFrameFor(int filtered) {
        int found = -1;
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < roles.length; i++) {
            double apart =
                    Math.abs(shots.get(i).middleSeconds() - shots.get(filtered).middleSeconds());
            if (roles[filtered] == Role.FILTERED
                    && filterStops[i] < LEAST_FILTER_STOPS
                    && (apart < nearest || (found < 0 && Double.isNaN(apart)))) {
                found = i;
                nearest = Double.isNaN(apart) ? nearest : apart;
            }
        }
        return found;
    }
}
