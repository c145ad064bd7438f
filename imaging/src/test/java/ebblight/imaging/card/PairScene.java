package ebblight.imaging.card;

import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/**
 * A view with rock that stands and water that is another one in every frame, in light that fades evenly, through a
 * filter of known density and cast, with shot noise, in 8-bit sRGB (IEC 61966-2-1).
 */
final class PairScene {

    private static final int WIDTH = 480;
    private static final int HEIGHT = 320;
    private static final LocalDateTime BEGINS = LocalDateTime.of(2027, 1, 14, 17, 0);

    private final long seed;
    private final double stops;
    private final double red;
    private final double blue;
    private final double fading;
    private final double corner;
    private final boolean longDial;

    PairScene(long seed) {
        this(seed, 0);
    }

    private PairScene(long seed, double corner) {
        SplittableRandom dice = new SplittableRandom(seed);
        this.seed = seed;
        this.corner = corner;
        longDial = dice.nextBoolean();
        stops = (longDial ? 8 : 6) + dice.nextDouble() - 0.5;
        red = 0.85 + 0.3 * dice.nextDouble();
        blue = 0.85 + 0.3 * dice.nextDouble();
        fading = 0.6 * dice.nextDouble() - 0.3;
    }

    PairScene withCorners(double cornerStops) {
        return new PairScene(seed, cornerStops);
    }

    double stops() {
        return stops;
    }

    double red() {
        return red;
    }

    double blue() {
        return blue;
    }

    /** Stops a minute. */
    double fading() {
        return fading;
    }

    /** 1/8 s, which is one exactly. */
    double clearSeconds() {
        return 0.125;
    }

    /** What the dial says: 30 s, which is 32 s, or 8 s, which is 8 s (ISO 516 series, common practice). */
    double filteredDialSeconds() {
        return longDial ? 30 : 8;
    }

    Path write(Path folder, String name, double opensSeconds, double dialSeconds, boolean filtered) throws IOException {
        double seconds = dialSeconds == 30 ? 32 : dialSeconds;
        double light = meanLight(opensSeconds, seconds) * seconds / 0.125;
        SplittableRandom rock = new SplittableRandom(1000 + seed);
        SplittableRandom grain = new SplittableRandom(seed * 31 + name.hashCode());
        float[] standing = pattern(rock);
        float[] moving = pattern(grain);
        byte[] codes = new byte[3 * WIDTH * HEIGHT];
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            int x = p % WIDTH;
            int y = p / WIDTH;
            boolean water = y < HEIGHT / 3 || x > 0.8 * WIDTH;
            double base = 0.12 * Math.pow(2, 1.2 * (water ? moving[p] : standing[p]));
            double r2 = (Math.pow(x - WIDTH / 2.0, 2) + Math.pow(y - HEIGHT / 2.0, 2))
                    / (Math.pow(WIDTH / 2.0, 2) + Math.pow(HEIGHT / 2.0, 2));
            for (int c = 0; c < 3; c++) {
                double cast = c == 0 ? red : c == 2 ? blue : 1;
                double passes = filtered ? cast * Math.pow(2, -stops - corner * r2) : 1;
                double value = base * light * passes;
                value += Math.sqrt(Math.max(0, value) / 4000) * gauss(grain);
                codes[3 * p + c] = (byte) Math.round(255 * srgb(Math.max(0, Math.min(1, value))));
            }
        }
        Path file = folder.resolve(name + ".jpg");
        JpegWriter.write(file, CodedPicture.srgb8(WIDTH, HEIGHT, codes), facts(opensSeconds, dialSeconds));
        return file;
    }

    Path writeSilent(Path folder) throws IOException {
        Path file = folder.resolve("silent.jpg");
        PictureFacts none = PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "says nothing");
        JpegWriter.write(file, CodedPicture.srgb8(WIDTH, HEIGHT, new byte[3 * WIDTH * HEIGHT]), none);
        return file;
    }

    private static PictureFacts facts(double opensSeconds, double dialSeconds) {
        return new PictureFacts(
                OptionalDouble.of(dialSeconds),
                OptionalDouble.of(11),
                OptionalDouble.of(100),
                OptionalDouble.of(28),
                Optional.of(BEGINS.plusNanos(Math.round(opensSeconds * 1e9))),
                1,
                List.of(),
                "pair");
    }

    /** Mean over the exposure of light that falls as 2^(−rt), in many small steps. */
    private double meanLight(double opensSeconds, double seconds) {
        int steps = 2000;
        double sum = 0;
        for (int k = 0; k < steps; k++) {
            sum += Math.pow(2, -fading * (opensSeconds + (k + 0.5) * seconds / steps) / 60);
        }
        return sum / steps;
    }

    /** Noise of several sizes, about −1 to 1. */
    private static float[] pattern(SplittableRandom dice) {
        float[] out = new float[WIDTH * HEIGHT];
        for (int size = 4; size <= 64; size *= 2) {
            int w = WIDTH / size + 2;
            double[] knots = new double[w * (HEIGHT / size + 2)];
            for (int i = 0; i < knots.length; i++) {
                knots[i] = 2 * dice.nextDouble() - 1;
            }
            for (int p = 0; p < out.length; p++) {
                double x = (double) (p % WIDTH) / size;
                double y = (double) Math.floorDiv(p, WIDTH) / size;
                int k = ((int) y) * w + ((int) x);
                double fx = x - (int) x;
                double fy = y - (int) y;
                out[p] += (float) (0.4
                        * ((1 - fy) * ((1 - fx) * knots[k] + fx * knots[k + 1])
                                + fy * ((1 - fx) * knots[k + w] + fx * knots[k + w + 1])));
            }
        }
        return out;
    }

    private static double gauss(SplittableRandom dice) {
        return Math.sqrt(-2 * Math.log(1 - dice.nextDouble())) * Math.cos(2 * Math.PI * dice.nextDouble());
    }

    private static double srgb(double l) {
        return l <= 0.0031308 ? 12.92 * l : 1.055 * Math.pow(l, 1 / 2.4) - 0.055;
    }
}
