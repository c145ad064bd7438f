package ebblight.imaging.card;

import ebblight.core.card.Measured.Softness;
import java.util.List;

/** How sharp the still parts of every frame of a view are against the best of them. */
final class SharpStanding {

    /** Sharpness below which a cell counts as soft. */
    private static final double SOFT = 0.75;
    /** Of all still cells, from this share on it was not one part that moved but the camera. */
    private static final double EVERYWHERE = 0.6;

    private static final double SOME = 0.3;
    /** log2 of the detail below which a cell of the best frame says nothing. */
    private static final double LEAST_DETAIL = -6.5;
    /** Stops between the blur of both directions from which it has one. */
    private static final double ONE_WAY_STOPS = 0.35;

    private final List<CardFrame> frames;
    private final ViewParts parts;
    private final int best;

    SharpStanding(List<CardFrame> frames, ViewParts parts) {
        this.frames = frames;
        this.parts = parts;
        this.best = best();
    }

    /**
     * @param sharpness 0 to 1 = as the best of the view; not a number where nothing tells
     * @param softness how what is lost is spread
     * @param softShare share of the still cells that are soft
     */
    record Found(double sharpness, Softness softness, double softShare) {}

    /** The frame with the most detail in its still parts, by the median of the cells. */
    private int best() {
        int found = 0;
        double most = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < frames.size(); k++) {
            Cells cells = frames.get(k).cells();
            double detail = ViewParts.median(cells.count(), i -> parts.fixed(i) && cells.known(i), cells::detail);
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
        int all = 0;
        int soft = 0;
        for (int i = 0; i < compared.length; i++) {
            compared[i] = parts.fixed(i) && cells.known(i) && sharp.known(i) && sharp.detail(i) > LEAST_DETAIL;
            if (compared[i]) {
                all++;
                soft += cells.detail(i) - sharp.detail(i) < Math.log(SOFT) / Math.log(2) ? 1 : 0;
            }
        }
        double loss = ViewParts.median(compared.length, i -> compared[i], i -> cells.detail(i) - sharp.detail(i));
        if (Double.isNaN(loss)) {
            return new Found(Double.NaN, Softness.NONE, 0);
        }
        double share = (double) soft / all;
        double sharpness = Math.min(1, Math.pow(2, loss));
        double across = ViewParts.median(compared.length, i -> compared[i], i -> cells.across(i) - sharp.across(i));
        double down = ViewParts.median(compared.length, i -> compared[i], i -> cells.down(i) - sharp.down(i));
        Softness softness = share < SOME
                ? Softness.NONE
                : share < EVERYWHERE
                        ? Softness.PARTS
                        : Math.abs(across - down) > ONE_WAY_STOPS ? Softness.SHAKEN : Softness.EVERYWHERE;
        return new Found(sharpness, softness, share);
    }
}
