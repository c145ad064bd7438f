package ebblight.app.serve;

import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;

/** A small outing: five seconds of waves under drifting cloud, a post and a shore that stand. */
final class TestOuting {

    static final int WIDTH = 320;
    static final int HEIGHT = 214;
    private static final int FRAMES = 50;
    private static final int WAVES = 40;
    private static final int HORIZON = 86;

    private TestOuting() {}

    /** Writes the frames and an {@code outing.json} whose reading was just taken. */
    static Path write(Path folder, String viewName) throws IOException {
        Path burst = Files.createDirectories(folder.resolve("burst"));
        Random random = new Random(7);
        double[][] waves = new double[WAVES][];
        for (int k = 0; k < WAVES; k++) {
            double length = 6 + 30 * random.nextDouble();
            double angle = (random.nextDouble() - 0.5) * 2.4;
            double number = 2 * Math.PI / length;
            waves[k] = new double[] {
                number * Math.sin(angle), number * Math.cos(angle), Math.sqrt(60 * number), 6.3 * random.nextDouble()
            };
        }
        for (int i = 0; i < FRAMES; i++) {
            byte[] codes = frame(i / 10.0, waves, new Random(1000 + i));
            String name = String.format(Locale.ROOT, "20270114_1715%02d_%d00000.jpg", i / 10, i % 10);
            JpegWriter.write(
                    burst.resolve(name),
                    CodedPicture.srgb8(WIDTH, HEIGHT, codes),
                    PictureFacts.of(FrameFacts.none(), OptionalDouble.of(1.0 / 60), 1, List.of(), "Test frame"));
        }
        String outing =
                """
                {"schema":"outing/1","revision":1,"name":"Test shore","zone":"UTC",
                 "views":[{"id":"view-1","name":"%s","frames":"burst","nearestMetres":2}],
                 "light":{"readings":[{"dials":{"fNumber":21,"time":30,"iso":6},"meter":"f/11 0.125s ISO100","at":"%s"}],
                          "stopsPerMinute":0.05},
                 "log":[]}"""
                        .formatted(viewName, Instant.now());
        Files.writeString(folder.resolve("outing.json"), outing, StandardCharsets.UTF_8);
        return folder;
    }

    private static byte[] frame(double seconds, double[][] waves, Random noise) {
        byte[] codes = new byte[3 * WIDTH * HEIGHT];
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double grain = 1.2 * noise.nextGaussian();
                int p = 3 * (y * WIDTH + x);
                double[] rgb = colour(x, y, seconds, waves);
                for (int c = 0; c < 3; c++) {
                    codes[p + c] = (byte) Math.max(0, Math.min(255, Math.round(rgb[c] + grain)));
                }
            }
        }
        return codes;
    }

    private static double[] colour(int x, int y, double seconds, double[][] waves) {
        boolean post = x > 90 && x < 108 && y > 60 && y < 150;
        double shore = HEIGHT - 34 + 6 * Math.sin(x / 31.0);
        if (post || y > shore) {
            double grit = 14 * Math.sin(x * 1.7 + 3 * Math.sin(y * 0.9)) * Math.sin(y * 1.3);
            return new double[] {62 + grit, 58 + grit, 54 + grit};
        }
        if (y < HORIZON) {
            double u = x - 7 * seconds;
            double cloud =
                    20 * Math.sin(u / 17 + y / 23.0) * Math.sin(u / 29 - y / 11.0) + 9 * Math.sin(u / 7 + y / 6.0);
            return new double[] {168 + cloud, 172 + cloud, 184 + cloud};
        }
        double sum = 0;
        for (double[] w : waves) {
            sum += Math.sin(w[0] * x + w[1] * 2.2 * y - w[2] * seconds + w[3]);
        }
        double v = 105 + 7.5 * sum;
        return new double[] {v - 14, v, v + 12};
    }
}
