package ebblight.app;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.demo.Sensor;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.PictureFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The files of the demo: a burst of ten seconds, the true exposure of thirty, and what the photographer carries. */
final class DemoOuting {

    private static final int WIDTH = 720;
    private static final int FRAMES = 100;
    private static final double FRAMES_PER_SECOND = 10;
    private static final int TRUE_WIDTH = 480;
    private static final int TRUE_SECONDS = 30;
    private static final double TRUE_FRAMES_PER_SECOND = 4;

    private final Path folder;
    private final RgbPicture truth;
    private final double burstDecibels;

    private DemoOuting(Path folder, RgbPicture truth, double burstDecibels) {
        this.folder = folder;
        this.truth = truth;
        this.burstDecibels = burstDecibels;
    }

    static DemoOuting write(Path folder, Coast coast, Work work) throws IOException {
        Path frames = Files.createDirectories(folder.resolve("burst"));
        Sensor sensor = new Sensor(100);
        work.progress(0, "rendering the shore");
        work.forEach(FRAMES, i -> {
            work.check();
            double time = i / FRAMES_PER_SECOND;
            byte[] codes = sensor.srgb8(coast.frame(time, WIDTH), 1000 + i);
            String name = String.format(Locale.ROOT, "20270114_1715%02d_%d00000.jpg", i / 10, i % 10);
            PictureFacts facts = PictureFacts.of(
                    FrameFacts.none(), OptionalDouble.of(1.0 / 60), 1, List.of(), "Invented shore, frame " + i);
            try {
                JpegWriter.write(frames.resolve(name), CodedPicture.srgb8(WIDTH, Coast.height(WIDTH), codes), facts);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        work.progress(0.5, "exposing the truth");
        RgbPicture truth = coast.exposure(0, TRUE_SECONDS, TRUE_WIDTH, TRUE_FRAMES_PER_SECOND, work);
        PictureFacts facts = PictureFacts.of(
                FrameFacts.none(), OptionalDouble.of(TRUE_SECONDS), 1, List.of(), "Invented shore, true exposure");
        JpegWriter.write(folder.resolve("true-30s.jpg"), CodedPicture.srgb(truth, work), facts);
        RgbPicture burst = coast.exposure(0, FRAMES / FRAMES_PER_SECOND, TRUE_WIDTH, TRUE_FRAMES_PER_SECOND, work);
        Files.writeString(
                folder.resolve("bag.txt"),
                "meter without filters: f/11 1/8 ISO100\nfilters: 3, 6 and 10 stops\n",
                StandardCharsets.UTF_8);
        return new DemoOuting(folder, truth, decibels(burst, truth));
    }

    Path frames() {
        return folder.resolve("burst");
    }

    double burstDecibels() {
        return burstDecibels;
    }

    /** Files of the outing, the burst as one. */
    List<String> listed() throws IOException {
        List<String> names = new ArrayList<>();
        try (Stream<Path> list = Files.list(folder)) {
            list.sorted().forEach(f -> names.add(f.toString()));
        }
        return names;
    }

    /** Peak signal-to-noise ratio of a written picture against the true exposure, in sRGB codes, after equal light. */
    double decibelsAgainstTruth(Path picture) throws IOException {
        return decibels(PictureFile.linearAt(picture, TRUE_WIDTH), truth);
    }

    /** The light of {@code picture} is scaled to that of the truth: fading is made up for by the settings. */
    private static double decibels(RgbPicture picture, RgbPicture truth) {
        double a = 0;
        double b = 0;
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < truth.plane(c).length; p++) {
                a += picture.plane(c)[p];
                b += truth.plane(c)[p];
            }
        }
        double sum = 0;
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < truth.plane(c).length; p++) {
                double d = code(picture.plane(c)[p] * b / a) - code(truth.plane(c)[p]);
                sum += d * d;
            }
        }
        return -10 * Math.log10(sum / (3.0 * truth.plane(0).length));
    }

    private static double code(double linear) {
        double l = Math.max(0, Math.min(1, linear));
        return l <= 0.0031308 ? 12.92 * l : 1.055 * Math.pow(l, 1 / 2.4) - 0.055;
    }
}
