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
        SurveyLines across = SurveyLines.of(w, sw, crop);
        SurveyLines down = SurveyLines.of(mean.height(), sh, crop);
        float[][] planes = {
            detail,
            surveyMean.plane(0),
            surveyMean.plane(1),
            surveyMean.plane(2),
            survey.plane(0),
            survey.plane(1),
            survey.plane(2)
        };
        work.forEach(mean.height(), y -> {
            float[][] rows = new float[planes.length][sw];
            for (int k = 0; k < rows.length; k++) {
                down.row(planes[k], sw, y, rows[k]);
            }
            float[] share = new float[w];
            across.spread(rows[0], share);
            float[] low = new float[w];
            float[] laid = new float[w];
            for (int c = 0; c < 3; c++) {
                across.spread(rows[1 + c], low);
                across.spread(rows[4 + c], laid);
                float[] plane = mean.plane(c);
                for (int x = 0; x < w; x++) {
                    int p = y * w + x;
                    plane[p] = Math.max(0, laid[x] + share[x] * (plane[p] - low[x]));
                }
            }
        });
        return mean;
    }
}
