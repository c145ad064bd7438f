package ebblight.imaging.card;

import ebblight.core.card.Measured.Softness;
import ebblight.core.card.Ranking;
import ebblight.core.numeric.Quantiles;
import java.util.Arrays;
import java.util.List;

/** How sharp the still parts of every frame of a view are against the best of them. */
final class SharpStanding {

    /** Sharpness below which a block of the picture counts as soft. */
    private static final double SOFT = 0.8;
    /** Share of the blocks from which it is said that some are soft. */
    private static final double SOME = 0.12;

    private static final int BLOCKS_ACROSS = 6;
    private static final int BLOCKS_DOWN = 4;
    private static final int LEAST_BLOCKS = 3;
    private static final int LEAST_IN_BLOCK = 12;
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
        double[] losses = blockLosses(cells, sharp, compared);
        double loss = losses.length < LEAST_BLOCKS
                ? ViewParts.median(compared.length, i -> compared[i], i -> cells.detail(i) - sharp.detail(i))
                : losses[losses.length / 2];
        if (Double.isNaN(loss)) {
            return new Found(Double.NaN, Softness.NONE, 0);
        }
        double sharpness = Math.min(1, Math.pow(2, loss));
        long soft = Arrays.stream(losses).filter(l -> Math.pow(2, l) < SOFT).count();
        double share = losses.length == 0 ? 0 : (double) soft / losses.length;
        if (sharpness >= Ranking.SHARP) {
            return new Found(sharpness, share < SOME ? Softness.NONE : Softness.PARTS, share);
        }
        double across = ViewParts.median(compared.length, i -> compared[i], i -> cells.across(i) - sharp.across(i));
        double down = ViewParts.median(compared.length, i -> compared[i], i -> cells.down(i) - sharp.down(i));
        boolean oneWay = Math.abs(across - down) > ONE_WAY_STOPS;
        return new Found(sharpness, oneWay ? Softness.SHAKEN : Softness.EVERYWHERE, share);
    }

    /**
     * log2 of the sharpness of each block of the picture in which enough stands still, the softest first. Wind moves
     * what is in some blocks; a camera that moves softens more than half of them.
     */
    private static double[] blockLosses(Cells cells, Cells sharp, boolean[] compared) {
        int blocks = BLOCKS_ACROSS * BLOCKS_DOWN;
        double[][] found = new double[blocks][compared.length / blocks * 2 + 2];
        int[] counts = new int[blocks];
        for (int i = 0; i < compared.length; i++) {
            int block = blockOf(cells, i);
            if (compared[i] && counts[block] < found[block].length) {
                found[block][counts[block]++] = cells.detail(i) - sharp.detail(i);
            }
        }
        double[] losses = new double[blocks];
        int n = 0;
        for (int block = 0; block < blocks; block++) {
            if (counts[block] >= LEAST_IN_BLOCK) {
                losses[n++] = Quantiles.median(found[block], counts[block]);
            }
        }
        double[] sorted = Arrays.copyOf(losses, n);
        Arrays.sort(sorted);
        return sorted;
    }

    private static int blockOf(Cells cells, int i) {
        int x = i % cells.width();
        int y = i / cells.width();
        return y * BLOCKS_DOWN / cells.height() * BLOCKS_ACROSS + x * BLOCKS_ACROSS / cells.width();
    }
}
