package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Frames from single pictures, decoded a few at a time. */
final class PictureFrames implements FrameSource {

    /** Pictures decoded at once: enough for all cores, few enough for the memory. */
    private static final int AT_ONCE = 8;

    private final List<Path> files;
    private final double[] seconds;
    private final FrameFacts[] facts;
    private final List<Skipped> unreadable;
    private final List<Skipped> skipped = new ArrayList<>();

    private PictureFrames(List<Path> files, double[] seconds, FrameFacts[] facts, List<Skipped> unreadable) {
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
    static PictureFrames of(List<Path> files, double framesPerSecond, boolean timesNeeded) throws IOException {
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

    private static UnreadableInputException noneLeft(List<Skipped> skipped) {
        if (skipped.size() == 1) {
            return new UnreadableInputException(
                    skipped.get(0).file(), skipped.get(0).reason());
        }
        StringBuilder text = new StringBuilder("none of the " + skipped.size() + " files can be used");
        skipped.stream()
                .limit(3)
                .forEach(s -> text.append("; ").append(s.file()).append(": ").append(s.reason()));
        return new UnreadableInputException(text.toString());
    }

    private static String reason(UnreadableInputException e, Path file) {
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
        byte[] previous = new byte[0];
        int width = 0;
        int height = 0;
        int visited = 0;
        for (int from = 0; from < files.size(); from += AT_ONCE) {
            work.check();
            work.progress((double) from / files.size(), "reading frames");
            int first = from;
            int count = Math.min(AT_ONCE, files.size() - from);
            byte[][] bytes = new byte[count][];
            Decoded[] decoded = new Decoded[count];
            work.forEach(count, k -> {
                Path file = files.get(first + k);
                try {
                    bytes[k] = ReadableFile.bytes(file);
                    decoded[k] = new Decoded(PictureReader.decode(file, bytes[k]), "");
                } catch (UnreadableInputException e) {
                    bytes[k] = new byte[0];
                    decoded[k] = new Decoded(null, reason(e, file));
                }
            });
            for (int k = 0; k < count; k++) {
                int i = first + k;
                DecodedFrame frame = decoded[k].frame;
                if (frame == null) {
                    skipped.add(new Skipped(files.get(i), decoded[k].reason));
                    continue;
                }
                if (Arrays.equals(bytes[k], previous)) {
                    continue;
                }
                previous = bytes[k];
                if (visited == 0) {
                    width = frame.width();
                    height = frame.height();
                } else if (frame.width() != width || frame.height() != height) {
                    skipped.add(new Skipped(
                            files.get(i),
                            "is " + frame.width() + " × " + frame.height() + " pixels, the first frame " + width + " × "
                                    + height));
                    continue;
                }
                visited++;
                decoded[k] = new Decoded(null, "");
                if (!visitor.frame(i, seconds[i], facts[i].exposureSeconds(), frame)) {
                    return;
                }
            }
        }
        if (visited == 0) {
            throw noneLeft(skipped);
        }
    }

    private record Decoded(@Nullable DecodedFrame frame, String reason) {}
}
