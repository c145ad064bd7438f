package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.bytedeco.opencv.opencv_core.Mat;
import org.jspecify.annotations.Nullable;

/** Frames from single pictures, decoded a few at a time. */
final class PictureFrames implements FrameSource {

    /** Pictures decoded at once: enough for all cores, few enough for the memory. */
    private static final int AT_ONCE = 8;

    /** Samples decoded at once, unless two frames are more. */
    private static final int BATCH_SAMPLES = 600_000_000;

    private final RawAs rawAs;
    private final List<Path> files;
    private final double[] seconds;
    private final FrameFacts[] facts;
    private final List<Skipped> unreadable;
    private final List<Skipped> skipped = new ArrayList<>();

    private PictureFrames(
            RawAs rawAs, List<Path> files, double[] seconds, FrameFacts[] facts, List<Skipped> unreadable) {
        this.rawAs = rawAs;
        this.files = files;
        this.seconds = seconds;
        this.facts = facts;
        this.unreadable = unreadable;
        this.skipped.addAll(unreadable);
    }

    /**
     * The pictures in {@code files}, in order of time.
     *
     * @param framesPerSecond their rate when they carry no times of their own, or when given; 0 when unknown
     * @throws NoTimesException when neither they nor {@code framesPerSecond} tell when they were taken
     */
    static PictureFrames of(List<Path> files, double framesPerSecond, boolean timesNeeded, RawAs rawAs)
            throws IOException {
        List<Candidate> found = new ArrayList<>();
        List<Skipped> unreadable = new ArrayList<>();
        for (int i = 0; i < files.size(); i++) {
            Path file = files.get(i);
            try {
                FrameFacts facts = ReadableFile.facts(file);
                OptionalDouble time =
                        framesPerSecond > 0 ? OptionalDouble.of(i / framesPerSecond) : FrameTimes.seconds(file, facts);
                found.add(new Candidate(file, facts, time));
            } catch (UnreadableInputException e) {
                unreadable.add(new Skipped(file, reason(e, file)));
            }
        }
        List<Candidate> readable = withoutBroken(found, unreadable);
        if (readable.isEmpty()) {
            throw noneLeft(unreadable);
        }
        boolean untimed = readable.stream().anyMatch(c -> c.time.isEmpty()) || stuck(readable);
        if (untimed && timesNeeded && readable.size() > 1) {
            throw new NoTimesException(readable.get(0).file);
        }
        if (!untimed) {
            readable.sort(Comparator.comparingDouble(c -> c.time.orElse(0)));
        }
        return new PictureFrames(
                rawAs,
                readable.stream().map(Candidate::file).toList(),
                readable.stream()
                        .mapToDouble(c -> untimed ? Double.NaN : c.time.orElse(Double.NaN))
                        .toArray(),
                readable.stream().map(Candidate::facts).toArray(FrameFacts[]::new),
                unreadable);
    }

    private record Candidate(Path file, FrameFacts facts, OptionalDouble time) {}

    /** Files without times are tried where others have some: what is no picture must not cost the others theirs. */
    private static List<Candidate> withoutBroken(List<Candidate> found, List<Skipped> unreadable) {
        boolean timed = found.stream().anyMatch(c -> c.time.isPresent());
        List<Candidate> sound = new ArrayList<>();
        for (Candidate each : found) {
            try {
                if (timed && each.time.isEmpty()) {
                    PictureReader.decode(each.file, ReadableFile.bytes(each.file));
                }
                sound.add(each);
            } catch (UnreadableInputException e) {
                unreadable.add(new Skipped(each.file, reason(e, each.file)));
            }
        }
        return sound;
    }

    /** Whether the times hardly ever move: a camera that writes whole seconds only, in a fast burst. */
    private static boolean stuck(List<Candidate> found) {
        long distinct = found.stream().map(Candidate::time).distinct().count();
        return found.size() > 1 && distinct <= (found.size() + 1) / 2;
    }

    static UnreadableInputException noneLeft(List<Skipped> skipped) {
        if (skipped.size() == 1) {
            return new UnreadableInputException(
                    skipped.get(0).file(), skipped.get(0).reason());
        }
        StringBuilder text = new StringBuilder("none of the " + skipped.size() + " files can be used");
        if (skipped.stream().map(Skipped::reason).distinct().count() == 1) {
            return new UnreadableInputException(
                    text.append("; each ").append(skipped.get(0).reason()).toString());
        }
        skipped.stream()
                .limit(3)
                .forEach(s -> text.append("; ").append(s.file()).append(": ").append(s.reason()));
        return new UnreadableInputException(text.toString());
    }

    static String reason(UnreadableInputException e, Path file) {
        String message = String.valueOf(e.getMessage());
        String prefix = file + ": ";
        return message.startsWith(prefix) ? message.substring(prefix.length()) : message;
    }

    @Override
    public List<Path> files() {
        return files;
    }

    @Override
    public int mostFrames() {
        return files.size();
    }

    @Override
    public FrameFacts facts() {
        return facts[0];
    }

    /** Facts of frame {@code i} of {@link #files()}. */
    FrameFacts facts(int i) {
        return facts[i];
    }

    /** Instant of frame {@code i}; not a number when unknown. */
    double seconds(int i) {
        return seconds[i];
    }

    @Override
    public List<Skipped> skipped() {
        return List.copyOf(skipped);
    }

    @Override
    public List<String> warnings() {
        return List.of();
    }

    @Override
    public boolean pictures() {
        return true;
    }

    @Override
    public void visit(FrameVisitor visitor, Work work) throws IOException {
        skipped.clear();
        skipped.addAll(unreadable);
        try (Pass pass = new Pass(visitor, work)) {
            pass.run();
        }
    }

    /** One reading of all pictures; the memory they are decoded into is used again and again. */
    private final class Pass implements AutoCloseable {
        private final FrameVisitor visitor;
        private final Work work;
        private final Mat[] memory = new Mat[AT_ONCE];
        private byte[] previous = new byte[0];
        private Path previousFile = Path.of("");
        private int width;
        private int height;
        private int visited;

        Pass(FrameVisitor visitor, Work work) {
            this.visitor = visitor;
            this.work = work;
            Arrays.setAll(memory, k -> new Mat());
        }

        void run() throws UnreadableInputException {
            int next = 0;
            while (!visitor.enough() && next < files.size()) {
                work.check();
                work.progress((double) next / files.size(), "reading frames");
                int most = visited == 0 ? 1 : Math.max(2, Math.min(AT_ONCE, BATCH_SAMPLES / (3 * width * height)));
                int count = Math.min(most, files.size() - next);
                take(decoded(next, count));
                next += count;
            }
            if (visited == 0) {
                throw noneLeft(skipped);
            }
        }

        private List<Decoded> decoded(int from, int count) {
            Decoded[] decoded = new Decoded[count];
            work.forEach(count, k -> {
                int i = from + k;
                Path file = files.get(i);
                byte[] bytes = new byte[0];
                try {
                    bytes = ReadableFile.bytes(file);
                    decoded[k] = new Decoded(i, bytes, PictureReader.decode(file, bytes, rawAs, memory[k]), "");
                } catch (UnreadableInputException e) {
                    decoded[k] = new Decoded(i, bytes, null, reason(e, file));
                }
            });
            return List.of(decoded);
        }

        private void take(List<Decoded> decoded) {
            List<FrameVisitor.Arrival> frames = new ArrayList<>();
            for (Decoded each : decoded) {
                PackedFrame frame = each.frame;
                if (frame == null) {
                    skipped.add(new Skipped(files.get(each.index), each.reason));
                } else if (Arrays.equals(each.bytes, previous)) {
                    skipped.add(new Skipped(
                            files.get(each.index),
                            "is the same file as " + previousFile.getFileName() + ", byte for byte"));
                } else {
                    previous = each.bytes;
                    previousFile = files.get(each.index);
                    if (fits(frame, each.index) && visitor.wants(seconds[each.index])) {
                        frames.add(new FrameVisitor.Arrival(
                                each.index, seconds[each.index], facts[each.index].exposureSeconds(), frame));
                    }
                }
            }
            if (!frames.isEmpty()) {
                visitor.take(frames);
            }
        }

        private boolean fits(PackedFrame frame, int index) {
            if (visited == 0) {
                width = frame.width();
                height = frame.height();
            } else if (frame.width() != width || frame.height() != height) {
                skipped.add(new Skipped(
                        files.get(index),
                        "is " + frame.width() + " × " + frame.height() + " pixels, the first frame " + width + " × "
                                + height));
                return false;
            }
            visited++;
            return true;
        }

        @Override
        public void close() {
            for (Mat each : memory) {
                each.close();
            }
        }
    }

    private record Decoded(int index, byte[] bytes, @Nullable PackedFrame frame, String reason) {}
}
