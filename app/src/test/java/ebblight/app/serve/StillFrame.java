package ebblight.app.serve;

import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/** A view in which everything stands, as bright whatever the time: what a longer time adds a filter takes. */
final class StillFrame {

    private StillFrame() {}

    static void write(Path file, int seed, double exposureSeconds, int afterSeconds) throws IOException {
        int w = 240;
        int h = 160;
        byte[] codes = new byte[3 * w * h];
        SplittableRandom dice = new SplittableRandom(seed);
        for (int p = 0; p < w * h; p++) {
            double x = p % w;
            int y = p / w;
            double v = 120 + 60 * Math.sin(x / 9 + Math.sin(y / 17.0)) + 6 * dice.nextDouble();
            Arrays.fill(codes, 3 * p, 3 * p + 3, (byte) Math.round(v));
        }
        JpegWriter.write(file, CodedPicture.srgb8(w, h, codes), facts(exposureSeconds, afterSeconds));
    }

    private static PictureFacts facts(double exposureSeconds, int afterSeconds) {
        return new PictureFacts(
                OptionalDouble.of(exposureSeconds),
                OptionalDouble.of(8),
                OptionalDouble.of(100),
                OptionalDouble.of(24),
                Optional.of(LocalDateTime.of(2027, 1, 14, 17, 15).plusSeconds(afterSeconds)),
                1,
                List.of(),
                "test frame");
    }
}
