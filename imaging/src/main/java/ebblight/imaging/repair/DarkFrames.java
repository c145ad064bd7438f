package ebblight.imaging.repair;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.Inputs;
import ebblight.imaging.LightPicture;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Means of dark frames of one camera, one for each exposure time, in linear light. */
final class DarkFrames {

    /** Times within this many stops count as one. */
    static final double SAME_STOPS = 0.15;
    /** Light above which a frame was not taken in the dark: three stops below middle grey. */
    private static final double MOST_LIGHT = 0.02;
    /** Frames of a list that are told by name. */
    private static final int NAMED = 3;

    /**
     * The mean of the frames of one exposure time.
     *
     * @param seconds exposure time; empty when the frames do not tell
     * @param step linear light of the smallest code of the files
     */
    record Mean(OptionalDouble seconds, RgbPicture light, int frames, double step) {}

    private final List<Mean> means = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();
    private final List<String> used = new ArrayList<>();
    private final List<String> lit = new ArrayList<>();

    private DarkFrames() {}

    /**
     * Reads a dark frame, or those of a folder that match the picture: a whole card may be named. Frames of other times are
     * read only where none is of the picture's own.
     *
     * @param picture what it says of itself; its dark frames are {@code width × height} pixels too
     */
    static DarkFrames read(Path darks, FrameFacts picture, int width, int height, Work work) throws IOException {
        DarkFrames all = new DarkFrames();
        List<Path> files = files(darks);
        if (files.size() == 1) {
            LightPicture one = LightPicture.read(files.get(0), work);
            if (holdsLight(one)) {
                throw new UnreadableInputException(
                        files.get(0),
                        "is no dark frame: it holds light; take it with the lens cap on and the eyepiece covered");
            }
            all.add(files.get(0), one, width, height);
            return all;
        }
        MatchingDarks matching = MatchingDarks.of(files, picture);
        all.take(matching.sameTime(), width, height, work);
        if (all.means.isEmpty()) {
            all.take(matching.otherTimes(), width, height, work);
        }
        if (all.means.isEmpty()) {
            throw new UnreadableInputException(
                    darks, "holds no dark frame of the picture's camera and ISO (" + files.size() + " were looked at)");
        }
        all.warnings.add("dark frames: " + String.join(", ", all.used));
        if (!all.lit.isEmpty()) {
            all.warnings.add("no dark frames, for they hold light: "
                    + String.join(", ", all.lit.subList(0, Math.min(NAMED, all.lit.size())))
                    + (all.lit.size() > NAMED ? " and " + (all.lit.size() - NAMED) + " more" : ""));
        }
        return all;
    }

    private void take(List<Path> files, int width, int height, Work work) throws IOException {
        for (Path file : files) {
            work.check();
            try {
                LightPicture one = LightPicture.read(file, work);
                if (holdsLight(one)) {
                    lit.add(String.valueOf(file.getFileName()));
                } else {
                    add(file, one, width, height);
                    used.add(String.valueOf(file.getFileName()));
                }
            } catch (UnreadableInputException e) {
                warnings.add("left out " + e.getMessage());
            }
        }
    }

    /** A picture, or the pictures of a folder in order of their names. */
    static List<Path> files(Path named) throws IOException {
        if (!Files.exists(named)) {
            throw new UnreadableInputException(named, "does not exist");
        }
        if (!Files.isDirectory(named)) {
            return List.of(named);
        }
        try (Stream<Path> list = Files.list(named)) {
            List<Path> files = list.filter(f -> Files.isRegularFile(f) && Inputs.isPicture(f))
                    .sorted(Comparator.comparing(Path::toString))
                    .toList();
            if (files.isEmpty()) {
                throw new UnreadableInputException(named, "holds no picture (JPEG, PNG, TIFF or RAW)");
            }
            return files;
        }
    }

    private void add(Path file, LightPicture dark, int width, int height) throws UnreadableInputException {
        RgbPicture light = dark.light();
        if (light.width() != width || light.height() != height) {
            throw new UnreadableInputException(
                    file,
                    "is " + light.width() + " × " + light.height() + " pixels, the picture " + width + " × " + height
                            + "; dark frames must come from the same camera");
        }
        double step = dark.profile().curve().toLinear(1.0 / ((1 << dark.bits()) - 1));
        OptionalDouble seconds = dark.facts().exposureSeconds();
        for (int k = 0; k < means.size(); k++) {
            Mean old = means.get(k);
            if (same(old.seconds, seconds)) {
                for (int c = 0; c < 3; c++) {
                    float[] sum = old.light.plane(c);
                    for (int i = 0; i < sum.length; i++) {
                        sum[i] += (light.plane(c)[i] - sum[i]) / (old.frames + 1);
                    }
                }
                means.set(k, new Mean(old.seconds, old.light, old.frames + 1, old.step));
                return;
            }
        }
        means.add(new Mean(seconds, light, 1, step));
    }

    private static boolean holdsLight(LightPicture picture) {
        RgbPicture light = picture.light();
        return (mean(light.red()) + mean(light.green()) + mean(light.blue())) / 3 > MOST_LIGHT;
    }

    private static double mean(float[] plane) {
        double sum = 0;
        for (float v : plane) {
            sum += v;
        }
        return sum / plane.length;
    }

    private static boolean same(OptionalDouble one, OptionalDouble other) {
        if (one.isEmpty() || other.isEmpty()) {
            return one.isEmpty() && other.isEmpty();
        }
        return Math.abs(Math.log(one.getAsDouble() / other.getAsDouble()) / Math.log(2)) < SAME_STOPS;
    }

    /** The means, the longest exposure first; those of unknown time last. */
    List<Mean> means() {
        return means.stream()
                .sorted(Comparator.comparingDouble((Mean m) -> -m.seconds.orElse(0)))
                .toList();
    }

    /** The mean of exposures as long as {@code seconds}. */
    @Nullable Mean matching(OptionalDouble seconds) {
        for (Mean mean : means) {
            if (mean.seconds.isPresent() && same(mean.seconds, seconds)) {
                return mean;
            }
        }
        return null;
    }

    List<String> warnings() {
        return warnings;
    }
}
