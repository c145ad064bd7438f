package ebblight.app;

import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/** Frames of one view a second apart: a pattern that stands, with grain. */
final class TestFrames {

    private TestFrames() {}

    /** sRGB codes of frame {@code k}. */
    static byte[] codes(int k, int width, int height) {
        byte[] codes = new byte[3 * width * height];
        SplittableRandom dice = new SplittableRandom(k);
        for (int p = 0; p < width * height; p++) {
            double x = p % width;
            int y = p / width;
            double v = 120 + 60 * Math.sin(x / 9 + Math.sin(y / 17.0)) + 8 * dice.nextDouble();
            for (int c = 0; c < 3; c++) {
                codes[3 * p + c] = (byte) Math.round(v);
            }
        }
        return codes;
    }

    static Path write(Path folder, int k, int width, int height) throws IOException {
        PictureFacts facts = new PictureFacts(
                OptionalDouble.of(0.5),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(LocalDateTime.of(2027, 1, 14, 17, 15 + k / 60, k % 60)),
                1,
                List.of(),
                "test frame");
        Path file = folder.resolve("f" + (100 + k) + ".jpg");
        JpegWriter.write(file, CodedPicture.srgb8(width, height, codes(k, width, height)), facts);
        return file;
    }
}
