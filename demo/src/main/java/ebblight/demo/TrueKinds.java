package ebblight.demo;

import ebblight.core.motion.Kind;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/**
 * How each pixel truly moves, found by looking at the scene itself at many instants: what the waves wash over flows,
 * what the grass reaches now and then sways.
 */
final class TrueKinds {

    private static final int INSTANTS = 48;
    private static final double APART_SECONDS = 1.7;
    /** A pixel that stands still for less of the time than this belongs to the water. */
    private static final double DRY_SHARE = 0.985;
    /** Mean share of a pixel from which grass makes it sway. */
    private static final double GRASS_SHARE = 0.04;

    private final View view;
    private final Coast coast;
    private final Lens lens;

    TrueKinds(View view, Coast coast, Lens lens) {
        this.view = view;
        this.coast = coast;
        this.lens = lens;
    }

    ViewTruth all(Work work) {
        int w = view.width();
        int h = view.height();
        float[][] still = new float[INSTANTS][];
        float[][] grass = new float[INSTANTS][];
        work.forEach(INSTANTS, i -> {
            work.check();
            double time = i * APART_SECONDS;
            Sea.State sea = coast.sea.state();
            coast.sea.at(time, sea);
            still[i] = new float[w * h];
            for (int y = 0; y < h; y++) {
                for (int x = 0; x < w; x++) {
                    still[i][y * w + x] = view.stillShare(x, y, sea);
                }
            }
            grass[i] = new float[w * h];
            coast.tuft.paint(time, lens, RgbPicture.black(w, h), 1, grass[i]);
        });
        Kind[] kinds = new Kind[w * h];
        boolean[] inTurn = new boolean[w * h];
        for (int p = 0; p < kinds.length; p++) {
            double dry = 0;
            double reached = 0;
            for (int i = 0; i < INSTANTS; i++) {
                dry += still[i][p] / INSTANTS;
                reached += grass[i][p] / INSTANTS;
            }
            int row = p / w;
            kinds[p] = kind(dry, reached, row + 0.5 < lens.horizonPixels());
            inTurn[p] = kinds[p] == Kind.FLOWING && dry > 1 - DRY_SHARE;
        }
        return new ViewTruth(kinds, inTurn);
    }

    private static Kind kind(double dry, double reached, boolean overHorizon) {
        if (reached > GRASS_SHARE) {
            return Kind.SWAYING;
        }
        if (dry > DRY_SHARE || (overHorizon && dry > 0.5)) {
            return Kind.FIXED;
        }
        return overHorizon ? Kind.DRIFTING : Kind.FLOWING;
    }
}
