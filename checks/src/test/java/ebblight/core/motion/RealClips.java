package ebblight.core.motion;

import ebblight.core.numeric.Work;
import ebblight.imaging.Inputs;
import ebblight.imaging.SurveyReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Assumptions;

/** Real clips that are not part of this project: tests that need them are skipped where they are absent. */
final class RealClips {

    private static final Path SHARED = Path.of(System.getProperty("ebblight.shared", "shared"));

    private RealClips() {}

    /** The weights of the prototype. */
    static Path weights() {
        Path file = SHARED.resolve("prototype/survey/weights.json");
        Assumptions.assumeTrue(Files.exists(file), "the prototype is not on this machine: no weights.json");
        return file;
    }

    static Path file(String path) {
        Path file = SHARED.resolve("data/clips").resolve(path);
        Assumptions.assumeTrue(Files.exists(file), "the real clips are not on this machine: no data/clips/" + path);
        return file;
    }

    /** The frames that a survey takes from one of the clips with a mask. */
    static Clip masked(String name) throws IOException {
        return switch (name) {
            case "waterfall" -> read(file("waterfall/water.mp4"), 0);
            case "foliage" -> first(read(file("foliage/tree.avi"), 15), 54 / 15.0);
            case "beach" -> evenlyTimed(read(file("beach/frames"), 0));
            default -> throw new IllegalArgumentException(name);
        };
    }

    static Clip read(Path input, double framesPerSecond) throws IOException {
        return SurveyReader.read(
                        Inputs.open(List.of(input), framesPerSecond, true), SurveyReader.SURVEY_WIDTH, Work.alone())
                .clip();
    }

    /** The same frames as if evenly spaced, which is how the prototype took them. */
    private static Clip evenlyTimed(Clip clip) {
        double[] times = new double[clip.frames()];
        List<byte[]> frames = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            times[i] = i * clip.spacingSeconds();
            frames.add(clip.bytes(i));
        }
        return Clip.of(clip.width(), clip.height(), times, frames, Clip.Coding.LINEAR16);
    }

    /** The frames before {@code seconds}: later ones of the foliage clip show a hand. */
    private static Clip first(Clip clip, double seconds) {
        boolean[] keep = new boolean[clip.frames()];
        for (int i = 0; i < keep.length; i++) {
            keep[i] = clip.timeSeconds(i) - clip.timeSeconds(0) < seconds - 1e-6;
        }
        return clip.only(keep);
    }

    /**
     * The hand-drawn mask of a clip, nearest neighbour to the size of the clip: 0 fixed, 1 drifting, 2 flowing, 3
     * swaying, 4 fixed or drifting, 5 fixed or swaying, 255 not judged.
     */
    static int[] mask(String name, int width, int height) throws IOException {
        String file =
                switch (name) {
                    case "waterfall" -> "fall.png";
                    case "foliage" -> "tree.png";
                    default -> name + ".png";
                };
        var picture = ImageIO.read(
                SHARED.resolve("prototype/survey/truth_masks").resolve(file).toFile());
        int[] mask = new int[width * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                mask[y * width + x] = picture.getRaster()
                        .getSample(x * picture.getWidth() / width, y * picture.getHeight() / height, 0);
            }
        }
        return mask;
    }
}
