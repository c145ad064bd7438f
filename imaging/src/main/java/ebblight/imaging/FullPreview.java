package ebblight.imaging;

import ebblight.core.motion.Placement;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.List;
import org.jspecify.annotations.Nullable;

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
        Mean mean = new Mean(source, untilSeconds, placements, sourceIndices, surveyWidth, work);
        source.visit(mean, work);
        return mean.result();
    }

    private static final class Mean implements FrameVisitor {
        private final FrameSource source;
        private final double untilSeconds;
        private final List<Placement> placements;
        private final int[] sourceIndices;
        private final int surveyWidth;
        private final Work work;
        private @Nullable Accumulator sums;
        private @Nullable IccProfile profile;
        private double start = Double.NaN;
        private boolean done;
        private int width;
        private int height;

        Mean(
                FrameSource source,
                double untilSeconds,
                List<Placement> placements,
                int[] sourceIndices,
                int surveyWidth,
                Work work) {
            this.source = source;
            this.untilSeconds = untilSeconds;
            this.placements = placements;
            this.sourceIndices = sourceIndices;
            this.surveyWidth = surveyWidth;
            this.work = work;
        }

        @Override
        public boolean wants(double seconds) {
            start = Double.isNaN(start) ? seconds : start;
            done |= seconds - start >= untilSeconds;
            return !done;
        }

        @Override
        public boolean enough() {
            return done;
        }

        @Override
        public void take(List<Arrival> frames) {
            Accumulator target = sums;
            if (target == null) {
                DecodedFrame first = frames.get(0).frame();
                width = first.width();
                height = first.height();
                profile = first.profile();
                target = new Accumulator(width, height, StackOptions.As.MEAN, source.mostFrames());
                sums = target;
            }
            target.add(frames.stream().map(this::placed).toList(), work);
        }

        private Combination.Part placed(Arrival arrival) {
            if (placements.isEmpty()) {
                return new Combination.Part(arrival.frame(), 1);
            }
            RigidMove move =
                    RigidMove.of(placementAt(arrival.index(), placements, sourceIndices), surveyWidth, width, height);
            return new Combination.Part(new ShiftedFrame(arrival.frame(), move), 1);
        }

        RgbPicture result() throws UnreadableInputException {
            Accumulator from = sums;
            IccProfile space = profile;
            if (from == null || space == null) {
                throw new UnreadableInputException("no frame was left for a preview");
            }
            double[] m = space.to(IccProfile.srgb());
            RgbPicture out = RgbPicture.black(width, height);
            int w = width;
            work.forEach(height, y -> {
                for (int p = y * w; p < (y + 1) * w; p++) {
                    double r = from.light(3 * p);
                    double g = from.light(3 * p + 1);
                    double b = from.light(3 * p + 2);
                    for (int c = 0; c < 3; c++) {
                        out.plane(c)[p] = (float) (m[3 * c] * r + m[3 * c + 1] * g + m[3 * c + 2] * b);
                    }
                }
            });
            return out;
        }
    }

    /** The placement of a source frame, between the survey frames before and after it. */
    static Placement placementAt(int index, List<Placement> placements, int[] sourceIndices) {
        int k = 0;
        while (k < sourceIndices.length - 1 && sourceIndices[k + 1] <= index) {
            k++;
        }
        if (k >= placements.size() - 1) {
            return placements.get(placements.size() - 1);
        }
        Placement a = placements.get(k);
        Placement b = placements.get(k + 1);
        double t =
                Math.max(0, (index - sourceIndices[k]) / (double) Math.max(1, sourceIndices[k + 1] - sourceIndices[k]));
        return new Placement(
                a.dx() + t * (b.dx() - a.dx()),
                a.dy() + t * (b.dy() - a.dy()),
                a.angle() + t * (b.angle() - a.angle()));
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
                double d = at(detail, sw, sh, u, v);
                int p = y * w + x;
                for (int c = 0; c < 3; c++) {
                    double low = at(surveyMean.plane(c), sw, sh, u, v);
                    double high = mean.plane(c)[p] - low;
                    mean.plane(c)[p] = (float) Math.max(0, at(survey.plane(c), sw, sh, u, v) + d * high);
                }
            }
        });
        return mean;
    }

    /** Straight lines between samples, the border carried outward. */
    private static double at(float[] plane, int w, int h, double x, double y) {
        double cx = Math.max(0, Math.min(w - 1, x));
        double cy = Math.max(0, Math.min(h - 1, y));
        int x0 = Math.min((int) cx, Math.max(0, w - 2));
        int y0 = Math.min((int) cy, Math.max(0, h - 2));
        int x1 = Math.min(x0 + 1, w - 1);
        int y1 = Math.min(y0 + 1, h - 1);
        double ax = cx - x0;
        double ay = cy - y0;
        double top = plane[y0 * w + x0] * (1 - ax) + plane[y0 * w + x1] * ax;
        double bottom = plane[y1 * w + x0] * (1 - ax) + plane[y1 * w + x1] * ax;
        return top * (1 - ay) + bottom * ay;
    }
}
