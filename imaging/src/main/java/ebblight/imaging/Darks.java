package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The mean of dark frames: what the sensor gives without light. */
final class Darks {

    private final Path folder;
    private final int width;
    private final int height;
    private final Accumulator sums;

    private Darks(Path folder, int width, int height, Accumulator sums) {
        this.folder = folder;
        this.width = width;
        this.height = height;
        this.sums = sums;
    }

    static Darks read(Path folder, Work work) throws IOException {
        FrameSource source = Inputs.open(List.of(folder), 0, false, RawAs.DEVELOPED);
        Collector collector = new Collector(source.mostFrames(), work);
        source.visit(collector, work);
        Accumulator sums = collector.sums;
        if (sums == null) {
            throw new UnreadableInputException(folder, "holds no dark frame that can be read");
        }
        return new Darks(folder, collector.width, collector.height, sums);
    }

    void mustMatch(int w, int h) throws UnreadableInputException {
        if (w != width || h != height) {
            throw new UnreadableInputException(
                    folder,
                    "its dark frames are " + width + " × " + height + " pixels, the frames " + w + " × " + h
                            + "; dark frames must come from the same camera");
        }
    }

    /** Linear light of sample {@code i} without any light on the sensor. */
    double light(int i) {
        return sums.light(i);
    }

    private static final class Collector implements FrameVisitor {
        private final int mostFrames;
        private final Work work;
        private @Nullable Accumulator sums;
        private int width;
        private int height;

        Collector(int mostFrames, Work work) {
            this.mostFrames = mostFrames;
            this.work = work;
        }

        @Override
        public void take(List<Arrival> frames) {
            Accumulator target = sums;
            if (target == null) {
                DecodedFrame first = frames.get(0).frame();
                width = first.width();
                height = first.height();
                target = new Accumulator(width, height, StackOptions.As.MEAN, mostFrames);
                sums = target;
            }
            target.add(
                    frames.stream().map(f -> new Combination.Part(f.frame(), 1)).toList(), work);
        }
    }
}
