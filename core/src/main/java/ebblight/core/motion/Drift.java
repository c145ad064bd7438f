package ebblight.core.motion;

import ebblight.core.numeric.Rounding;
import ebblight.core.numeric.Work;

/**
 * How the drifting parts travel. Means of a twelfth of the clip each, high-passed inside the drifting parts, are laid
 * over each other: first by phase correlation at the shortest lag, then by robust least squares on differences of
 * luminance, the lag doubled as long as the shift stays under 0.3 of the width; at last the same on changes of the
 * means, which hold nothing that stands.
 *
 * <p>On clouds of known drift nine of ten are within 2 % at 1 px/s and within 0.5 % from 5 px/s. What is off is mostly
 * that clouds change as they travel, which a longer clip does not cure.
 *
 * @param flow the field, in survey pixels a second
 * @param gain share of the change that the drift explains, at most 1
 * @param relativeError likely error of the velocity as a share of the speed, 0.002 to 1: nine of ten are within
 */
record Drift(Flow flow, double gain, double relativeError) {

    /** Below this the parts may do anything, but they do not drift. */
    private static final double LEAST_GAIN = 0.15;

    private static final int STEPS = 6;
    private static final double FARTHEST = 0.3;

    /** Changes are taken over a time in which clouds move this share of the width, 6 of 480 px. */
    private static final double CHANGE_OF_WIDTH = 1.0 / 80;

    /** A step that moves nothing by more than this, in pixels, is the last. */
    private static final double SETTLED_PIXELS = 0.01;

    /**
     * Standard errors that held nine of ten errors of forty clips each of clouds that travel at 0.2 and 1 px/s and change
     * as they go (faster ones stay far within): more than the 2.1 of a normal distribution in the plane, because large
     * clouds span several patches.
     */
    private static final double LIKELY_ERRORS = 3.8;

    private static final double LEAST_RELATIVE_ERROR = 0.002;

    /** Whether the parts drift visibly. */
    boolean told() {
        return gain > LEAST_GAIN;
    }

    static Drift none(int width, int height) {
        return new Drift(Flow.none(width, height), 0, 1);
    }

    /** The drift of what {@code weight} (0 to 1 a pixel) marks; speeds may differ across it when the clip shows so. */
    static Drift of(LuminanceFrames frames, float[] weight, Work work) {
        DriftMeans means = DriftMeans.of(frames, weight, work);
        if (means.count() < 2) {
            return none(frames.width(), frames.height());
        }
        Flow start = means.firstGuess();
        Drift even = ladder(means, Flow.none(frames.width(), frames.height()), false, work);
        if (start.fastest() * means.spacing() > 1) {
            Drift fast = ladder(means, start, false, work);
            if (fast.gain > even.gain) {
                even = fast;
            }
        }
        Drift affine = ladder(means, even.flow, true, work);
        boolean turns = affine.gain > even.gain;
        Drift best = turns ? affine : even;
        return best.told() ? best.withoutWhatStands(means, turns, work) : best;
    }

    /**
     * The drift from what changed between means instead of the means themselves. A glow that stands in the sky holds
     * the fit back: on a sky in perspective by a twentieth to a tenth. In changes there is none of it left. Needs clouds that
     * move far enough within half the clip, and two changes at least; else it is this drift.
     */
    private Drift withoutWhatStands(DriftMeans means, boolean affine, Work work) {
        double pixelsApart = flow.speed(means.width() / 2.0, means.height() / 2.0) * means.spacing();
        int apart = Math.max(1, (int) Rounding.even(CHANGE_OF_WIDTH * means.width() / Math.max(pixelsApart, 1e-9)));
        if (means.count() - apart < Math.max(2, apart)) {
            return this;
        }
        Drift changes = ladder(means.changes(apart), flow, affine, work);
        return changes.told() ? new Drift(changes.flow, gain, Math.max(relativeError, changes.relativeError)) : this;
    }

    /** From neighbouring means to those farther and farther apart, as long as the parts stay in the picture. */
    private static Drift ladder(DriftMeans means, Flow start, boolean affine, Work work) {
        Flow flow = start;
        int longest = means.count() - 1;
        int lag = 1;
        while (true) {
            flow = settle(means, flow, lag, affine, work);
            int next = Math.min(2 * lag, longest);
            if (lag == longest || flow.fastest() * means.seconds(0, next) > FARTHEST * means.width()) {
                DriftFit end = DriftFit.of(means, flow, lag, affine, work);
                return new Drift(flow, end.gain(), relative(end.standardError(), flow));
            }
            lag = next;
        }
    }

    private static Flow settle(DriftMeans means, Flow start, int lag, boolean affine, Work work) {
        Flow flow = start;
        double still = SETTLED_PIXELS / means.seconds(0, lag);
        for (int step = 0; step < STEPS; step++) {
            Flow next = DriftFit.of(means, flow, lag, affine, work).next();
            boolean settled = next.minus(flow).fastest() < still;
            flow = next;
            if (settled) {
                break;
            }
        }
        return flow;
    }

    private static double relative(double standardError, Flow flow) {
        double speed = Math.sqrt(flow.u0() * flow.u0() + flow.v0() * flow.v0());
        double likely = LIKELY_ERRORS * standardError;
        return likely < speed ? Math.max(LEAST_RELATIVE_ERROR, likely / speed) : 1;
    }

    /** Mean velocity (x, y) over the pixels that {@code mask} marks, in survey pixels a second. */
    double[] meanVelocity(float[] mask) {
        double n = 0;
        double u = 0;
        double v = 0;
        int w = flow.width();
        for (int p = 0; p < mask.length; p++) {
            if (mask[p] > 0.5f) {
                int row = p / w;
                u += flow.u(p - row * w, row);
                v += flow.v(p - row * w, row);
                n++;
            }
        }
        return n == 0 ? new double[2] : new double[] {u / n, v / n};
    }
}
