package ebblight.imaging;

import ebblight.core.motion.Placement;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Means of the first frames of a source for many exposure times at once, at the width of a screen: one pass over the
 * source, kept as 16 bits of linear sRGB light a sample.
 */
public final class PreviewMeans {

    private final int width;
    private final int height;
    private final double[] seconds;
    private final List<short[]> means;

    private PreviewMeans(int width, int height, double[] seconds, List<short[]> means) {
        this.width = width;
        this.height = height;
        this.seconds = seconds;
        this.means = means;
    }

    /**
     * Reads {@code source} once.
     *
     * @param mostWidth widest picture wanted, in pixels
     * @param seconds exposure times, increasing; the last mean is always that of all frames
     * @param placements where survey frames lay; empty for a camera that stood still
     * @param sourceIndices which source frame each placement belongs to
     * @param surveyWidth width that the placements count in
     */
    public static PreviewMeans of(
            FrameSource source,
            int mostWidth,
            double[] seconds,
            List<Placement> placements,
            int[] sourceIndices,
            int surveyWidth,
            Work work)
            throws IOException {
        Sums sums = new Sums(mostWidth, seconds, placements, sourceIndices, surveyWidth, work);
        source.visit(sums, work);
        return sums.result();
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    /** The mean for an exposure of {@code time} seconds: the longest one kept that is not longer. */
    public RgbPicture at(double time) {
        int k = 0;
        while (k + 1 < means.size() && k + 1 < seconds.length && seconds[k + 1] <= time * (1 + 1e-9)) {
            k++;
        }
        return picture(means.get(k));
    }

    /** The mean of all frames. */
    public RgbPicture ofAll() {
        return picture(means.get(means.size() - 1));
    }

    private RgbPicture picture(short[] mean) {
        RgbPicture picture = RgbPicture.black(width, height);
        int n = width * height;
        for (int c = 0; c < 3; c++) {
            float[] plane = picture.plane(c);
            for (int p = 0; p < n; p++) {
                plane[p] = (mean[3 * p + c] & 0xFFFF) * (1f / 65535);
            }
        }
        return picture;
    }

    private static final class Sums implements FrameVisitor {
        private final int mostWidth;
        private final double[] seconds;
        private final List<Placement> placements;
        private final int[] sourceIndices;
        private final int surveyWidth;
        private final Work work;
        private final List<short[]> means = new ArrayList<>();
        private AreaMean area = new AreaMean(1, 1, 1, 1);
        private long[] sums = new long[0];
        private double[] toSrgb = new double[0];
        private double start;
        private int count;

        Sums(
                int mostWidth,
                double[] seconds,
                List<Placement> placements,
                int[] sourceIndices,
                int surveyWidth,
                Work work) {
            this.mostWidth = mostWidth;
            this.seconds = seconds.clone();
            this.placements = placements;
            this.sourceIndices = sourceIndices;
            this.surveyWidth = surveyWidth;
            this.work = work;
        }

        @Override
        public void take(List<Arrival> arrivals) {
            work.check();
            if (count == 0) {
                DecodedFrame first = arrivals.get(0).frame();
                start = arrivals.get(0).seconds();
                int w = Math.min(mostWidth, first.width());
                int h = Math.max(1, (int) Math.round((double) first.height() * w / first.width()));
                area = new AreaMean(first.width(), first.height(), w, h);
                sums = new long[3 * w * h];
                toSrgb = first.profile().to(IccProfile.srgb());
            }
            byte[][] light = new byte[arrivals.size()][];
            work.forEach(
                    light.length, k -> light[k] = area.linear16(arrivals.get(k).frame()));
            for (int k = 0; k < light.length; k++) {
                add(arrivals.get(k), light[k]);
            }
        }

        private void add(Arrival arrival, byte[] light) {
            double since = arrival.seconds() - start;
            while (count > 0 && means.size() < seconds.length && since >= seconds[means.size()] * (1 - 1e-9)) {
                means.add(mean());
            }
            if (placements.isEmpty()) {
                for (int i = 0; i < sums.length; i++) {
                    sums[i] += (light[2 * i] & 0xFF) | (light[2 * i + 1] & 0xFF) << 8;
                }
            } else {
                addMoved(light, new Placed(placements, sourceIndices, surveyWidth).at(arrival.index()));
            }
            count++;
        }

        /** Adds a frame of a moved camera, put back by straight lines between its samples. */
        private void addMoved(byte[] light, Placement placement) {
            int w = area.newWidth();
            int h = area.newHeight();
            RigidMove move = RigidMove.of(placement, surveyWidth, w, h);
            work.forEach(h, y -> {
                for (int x = 0; x < w; x++) {
                    double px = Math.max(0, Math.min(w - 1, move.x(x, y)));
                    double py = Math.max(0, Math.min(h - 1, move.y(x, y)));
                    int x0 = Math.min((int) px, Math.max(0, w - 2));
                    int y0 = Math.min((int) py, Math.max(0, h - 2));
                    int x1 = Math.min(x0 + 1, w - 1);
                    int y1 = Math.min(y0 + 1, h - 1);
                    double ax = px - x0;
                    double ay = py - y0;
                    for (int k = 0; k < 3; k++) {
                        double top = (1 - ax) * at(light, y0 * w + x0, k) + ax * at(light, y0 * w + x1, k);
                        double bottom = (1 - ax) * at(light, y1 * w + x0, k) + ax * at(light, y1 * w + x1, k);
                        sums[3 * (y * w + x) + k] += WholeCode.nearest((1 - ay) * top + ay * bottom);
                    }
                }
            });
        }

        private static int at(byte[] light, int pixel, int channel) {
            int q = 2 * (3 * pixel + channel);
            return (light[q] & 0xFF) | (light[q + 1] & 0xFF) << 8;
        }

        private short[] mean() {
            short[] mean = new short[sums.length];
            double share = 1.0 / count;
            for (int i = 0; i < mean.length; i += 3) {
                double r = sums[i] * share;
                double g = sums[i + 1] * share;
                double b = sums[i + 2] * share;
                for (int c = 0; c < 3; c++) {
                    double v = toSrgb[3 * c] * r + toSrgb[3 * c + 1] * g + toSrgb[3 * c + 2] * b;
                    mean[i + c] = (short) WholeCode.nearest(Math.max(0, Math.min(65535, v)));
                }
            }
            return mean;
        }

        PreviewMeans result() throws UnreadableInputException {
            if (count == 0) {
                throw new UnreadableInputException("no frame was left for a preview");
            }
            means.add(mean());
            return new PreviewMeans(
                    area.newWidth(),
                    area.newHeight(),
                    Arrays.copyOf(seconds, Math.min(seconds.length, means.size())),
                    List.copyOf(means));
        }
    }
}
