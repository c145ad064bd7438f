package ebblight.imaging.card;

import ebblight.core.numeric.Quantiles;
import ebblight.imaging.FrameFacts;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A frame of a card, as far as it is kept for sorting.
 *
 * @param file the picture that was measured
 * @param companions other files of the same shot, such as its RAW file
 * @param facts what the camera wrote of it
 * @param width upright, pixels
 * @param height upright, pixels
 * @param seconds when it was taken on the camera's clock, from 1970 on; not a number when unknown
 * @param cells its brightness and detail
 * @param clippedFraction share of the pixels in which a colour is at its end
 * @param lone places of pixels that stand out alone, row times width plus column, in order
 * @param slateText what a QR code in it says; empty when there is none
 */
record CardFrame(
        Path file,
        List<Path> companions,
        FrameFacts facts,
        int width,
        int height,
        double seconds,
        Cells cells,
        double clippedFraction,
        int[] lone,
        String slateText) {

    /** Median level of what is known, log2 of the luminance with white = 0; of a frame that is all black, −24. */
    double medianLevel() {
        double[] levels = new double[cells.count()];
        int n = 0;
        for (int i = 0; i < levels.length; i++) {
            if (cells.known(i)) {
                levels[n++] = cells.level(i);
            }
        }
        return n == 0 ? -24 : Quantiles.median(levels, n);
    }

    OptionalDouble exposureSeconds() {
        return facts.exposureSeconds();
    }

    /** When the shutter closed again, as far as is known. */
    double closedSeconds() {
        return seconds + exposureSeconds().orElse(0);
    }
}
