package ebblight.imaging.card;

import ebblight.core.card.Measured.Softness;
import java.util.Arrays;
import java.util.List;

/** How sharp the still parts of every frame of a view are against the best of them. */
final class SharpStanding {

    /** Sharpness below which a block of the picture counts as soft. */
    private static final double SOFT = 0.8;
    /** Of all blocks, from this share on it was not one part that moved but the camera. */
    private static final double EVERYWHERE = 0.5;

    private static final double SOME = 0.12;
    private static final int BLOCKS_ACROSS = 6;
    private static final int BLOCKS_DOWN = 4;
    /** log2 of the detail below which a cell of the best frame says nothing. */
    private static final double LEAST_DETAIL = -6.5;
    /** Stops between the blur of both directions from which it has one. */
    private static final double ONE_WAY_STOPS = 0.35;

    /** Stops of detail by which the sharper half of the frames may differ in a cell that truly stands still. */
    private static final double EVEN_STOPS = 0.3;
    /** Share of the still cells that must be even, or evenness tells nothing. */
    private static final double LEAST_EVEN = 0.3;

    private final List<CardFrame> frames;
    private final boolean[] still;
    private final int best;

    SharpStanding(List<CardFrame> frames, ViewParts parts) {
        this.frames = frames;
        this.still = still(frames, parts);
        this.best = best();
    }

    /**
     * Cells to judge by: still ones whose detail is about the same in the sharper half of the frames. What water washes
     * over keeps its pattern, but its detail goes with the shutter time.
     */
    private static boolean[] still(List<CardFrame> frames, ViewParts parts) {
        int n = frames.get(0).cells().count();
        boolean[] fixed = new boolean[n];
        boolean[] even = new boolean[n];
        double[] details = new double[frames.size()];
        int fixedCells = 0;
        int evenCells = 0;
        for (int i = 0; i < n; i++) {
            fixed[i] = parts.fixed(i);
            if (fixed[i]) {
                int known = 0;
                for (CardFrame frame : frames) {
                    if (frame.cells().known(i)) {
                        details[known++] = -frame.cells().detail(i);
                    }
                }
                Arrays.sort(details, 0, known);
                even[i] = known > 1 && details[known / 2] - details[0] < EVEN_STOPS;
                fixedCells++;
                evenCells += even[i] ? 1 : 0;
            }
        }
        return evenCells > LEAST_EVEN * fixedCells ? even : fixed;
    }

    /**
     * @param sharpness 0 to 1 = as the best of the view; not a number where nothing tells
     * @param softness how what is lost is spread
     * @param softShare share of the picture's blocks that are soft
     */
    record Found(double sharpness, Softness softness, double softShare) {}

    /** The frame with the most detail in its still parts, by the median of the cells. */
    private int best() {
        int found = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < frames.size(); k++) {
            Cells cells = frames.get(k).cells();
            double detail = ViewParts.median(cells.count(), i -> still[i] && cells.known(i), cells::detail);
            if (detail > most) {
                most = detail;
                found = k;
            }
        }
        return found;
    }

    Found of(int k) {
        Cells sharp = frames.get(best).cells();
        Cells cells = frames.get(k).cells();
        boolean[] compared = new boolean[cells.count()];
        for (int i = 0; i < compared.length; i++) {
            compared[i] = still[i] && cells.known(i) && sharp.known(i) && sharp.detail(i) > LEAST_DETAIL;
        }
        double loss = ViewParts.median(compared.length, i -> compared[i], i -> cells.detail(i) - sharp.detail(i));
        if (Double.isNaN(loss)) {
            return new Found(Double.NaN, Softness.NONE, 0);
        }
        double share = softShare(cells, sharp, compared);
        double across = ViewParts.median(compared.length, i -> compared[i], i -> cells.across(i) - sharp.across(i));
        double down = ViewParts.median(compared.length, i -> compared[i], i -> cells.down(i) - sharp.down(i));
        Softness softness = share < SOME
                ? Softness.NONE
                : share < EVERYWHERE
                        ? Softness.PARTS
                        : Math.abs(across - down) > ONE_WAY_STOPS ? Softness.SHAKEN : Softness.EVERYWHERE;
        return new Found(Math.min(1, Math.pow(2, loss)), softness, share);
    }

    /** Share of the blocks of the picture, of those where something stands, that are soft as a whole. */
    private static double softShare(Cells cells, Cells sharp, boolean[] compared) {
        int judged = 0;
        int soft = 0;
        for (int block = 0; block < BLOCKS_ACROSS * BLOCKS_DOWN; block++) {
            int here = block;
            double loss = ViewParts.median(
                    compared.length,
                    i -> compared[i] && blockOf(cells, i) == here,
                    i -> cells.detail(i) - sharp.detail(i));
            judged += Double.isNaN(loss) ? 0 : 1;
            soft += loss < Math.log(SOFT) / Math.log(2) ? 1 : 0;
        }
        return judged == 0 ? 0 : (double) soft / judged;
    }

    private static int blockOf(Cells cells, int i) {
        int x = i % cells.width();
        int y = i / cells.width();
        return y * BLOCKS_DOWN / cells.height() * BLOCKS_ACROSS + x * BLOCKS_ACROSS / cells.width();
    }
}
