package ebblight.imaging;

import ebblight.core.motion.Clip;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Reads a source for the survey: 480 px wide or less by area means of linear light, at most 12 frames a second, at most
 * 480 frames.
 */
public final class SurveyReader {

    public static final int SURVEY_WIDTH = 480;
    private static final double MOST_PER_SECOND = 12;
    private static final int MOST_FRAMES = 480;

    private SurveyReader() {}

    /** Reads {@code source} at up to {@code width} pixels width. */
    public static SurveyFrames read(FrameSource source, int width, Work work) throws IOException {
        return read(source, width, 1, work);
    }

    /**
     * Reads {@code source} as a lens {@code zoom} times as long would show it at {@code width} pixels: its middle when
     * above 1, all of it in fewer pixels when below.
     */
    public static SurveyFrames read(FrameSource source, int width, double zoom, Work work) throws IOException {
        Collector collector = new Collector(width, zoom, MOST_FRAMES, work);
        source.visit(collector, work);
        return collector.result();
    }

    /** Reads the first frame of {@code source} at up to {@code width} pixels width. */
    public static SurveyFrames first(FrameSource source, int width, Work work) throws IOException {
        Collector collector = new Collector(width, 1, 1, work);
        source.visit(collector, work);
        return collector.result();
    }

    private static final class Collector implements FrameVisitor {
        private final int mostWidth;
        private final double zoom;
        private final int mostFrames;
        private final Work work;
        private final List<byte[]> frames = new ArrayList<>();
        private final List<Double> times = new ArrayList<>();
        private final List<Integer> indices = new ArrayList<>();
        private final List<OptionalDouble> exposures = new ArrayList<>();
        private final List<Double> allTimes = new ArrayList<>();
        private AreaMean area = new AreaMean(1, 1, 1, 1);
        private ViewCut cut = ViewCut.of(1, 1, 1);
        private int sourceWidth;
        private int sourceHeight;
        private double next = Double.NEGATIVE_INFINITY;
        private int chosen;
        private boolean cutOff;

        Collector(int width, double zoom, int mostFrames, Work work) {
            this.mostWidth = (int) Math.round(width * zoom);
            this.zoom = zoom;
            this.mostFrames = mostFrames;
            this.work = work;
        }

        @Override
        public boolean wants(double seconds) {
            // Pictures of which nothing but their order is known count as one second apart.
            allTimes.add(Double.isNaN(seconds) ? allTimes.size() : seconds);
            if (chosen >= mostFrames) {
                cutOff = true;
                return false;
            }
            double spacing = allTimes.size() < 2 ? 0 : (seconds - allTimes.get(0)) / (allTimes.size() - 1);
            if (seconds < next - 0.25 * spacing) {
                return false;
            }
            chosen++;
            next = (next == Double.NEGATIVE_INFINITY ? seconds : Math.max(next, seconds - 1 / MOST_PER_SECOND))
                    + 1 / MOST_PER_SECOND;
            return true;
        }

        @Override
        public boolean enough() {
            return mostFrames == 1 && chosen == 1;
        }

        @Override
        public void take(List<Arrival> arrivals) {
            if (frames.isEmpty()) {
                DecodedFrame first = arrivals.get(0).frame();
                sourceWidth = first.width();
                sourceHeight = first.height();
                int w = Math.min(mostWidth, sourceWidth);
                int h = Math.max(1, (int) Math.round((double) sourceHeight * w / sourceWidth));
                area = new AreaMean(sourceWidth, sourceHeight, w, h);
                cut = ViewCut.of(w, h, zoom);
            }
            byte[][] small = new byte[arrivals.size()][];
            work.forEach(
                    small.length,
                    k -> small[k] = cut.of(area.linear16(arrivals.get(k).frame())));
            for (int k = 0; k < small.length; k++) {
                frames.add(small[k]);
                times.add(arrivals.get(k).seconds());
                indices.add(arrivals.get(k).index());
                exposures.add(arrivals.get(k).exposureSeconds());
            }
        }

        SurveyFrames result() {
            double[] seconds = new double[frames.size()];
            for (int i = 0; i < seconds.length; i++) {
                double t = times.get(i);
                seconds[i] = Double.isNaN(t) ? i : i > 0 && t <= seconds[i - 1] ? seconds[i - 1] + 1e-3 : t;
            }
            int n = allTimes.size();
            double span = n < 2 ? 0 : allTimes.get(n - 1) - allTimes.get(0);
            double[] gaps = new double[Math.max(1, n - 1)];
            for (int i = 1; i < n; i++) {
                gaps[i - 1] = allTimes.get(i) - allTimes.get(i - 1);
            }
            return new SurveyFrames(
                    Clip.of(cut.width(), cut.height(), seconds, frames, Clip.Coding.LINEAR16),
                    cut,
                    sourceWidth,
                    sourceHeight,
                    n,
                    span > 0 ? (n - 1) / span : 0,
                    Quantiles.median(gaps, gaps.length),
                    indices.stream().mapToInt(Integer::intValue).toArray(),
                    List.copyOf(exposures),
                    cutOff);
        }
    }
}
