package ebblight.imaging;

import ebblight.core.motion.Placement;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.List;

/**
 * A preview at full size: the mean of the full-size frames, and beyond the length of the clip the correction that was
 * computed at survey size laid over it: {@code up(X) + up(detail) · (mean − up(mean at survey size))}.
 */
public final class FullPreview {

    private FullPreview() {}

    /**
     * The mean of the first frames of {@code source}, in linear sRGB light.
     *
     * @param untilSeconds frames later than this many seconds after the first are left out
     * @param placements where survey frames lay, to put full-size frames back; empty for a camera that stood still
     * @param sourceIndices which source frame each placement belongs to
     * @param surveyWidth width that the placements count in
     */
    public static RgbPicture mean(
            FrameSource source,
            double untilSeconds,
            List<Placement> placements,
            int[] sourceIndices,
            int surveyWidth,
            Work work)
            throws IOException {
        Placed placed = new Placed(placements, sourceIndices, surveyWidth);
        try (FramePass pass = FramePass.read(source, FramePass.Take.until(untilSeconds), placed, work)) {
            return pass.srgb();
        }
    }

    /**
     * Lays a survey-size picture over the full-size mean.
     *
     * @param mean full-size mean of the frames; it becomes the result
     * @param survey picture at survey size, without the border that was cut
     * @param surveyMean mean of the frames at the same size
     * @param detail by how much finer structure counts, a value a survey pixel
     * @param crop survey pixels cut at every side
     */
    public static RgbPicture compose(
            RgbPicture mean, RgbPicture survey, RgbPicture surveyMean, float[] detail, int crop, Work work) {
        int w = mean.width();
        int sw = survey.width();
        int sh = survey.height();
        double sx = (sw + 2.0 * crop) / w;
        double sy = (sh + 2.0 * crop) / mean.height();
        work.forEach(mean.height(), y -> {
            for (int x = 0; x < w; x++) {
                double u = (x + 0.5) * sx - 0.5 - crop;
                double v = (y + 0.5) * sy - 0.5 - crop;
                double d = ShareGrid.at(detail, sw, sh, u, v);
                int p = y * w + x;
                for (int c = 0; c < 3; c++) {
                    double low = ShareGrid.at(surveyMean.plane(c), sw, sh, u, v);
                    double high = mean.plane(c)[p] - low;
                    mean.plane(c)[p] = (float) Math.max(0, ShareGrid.at(survey.plane(c), sw, sh, u, v) + d * high);
                }
            }
        });
        return mean;
    }
}
