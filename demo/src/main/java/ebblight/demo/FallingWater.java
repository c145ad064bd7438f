package ebblight.demo;

import ebblight.core.motion.Kind;
import ebblight.core.numeric.Powers;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.Arrays;

/**
 * A waterfall between rocks, with the pool that it falls into. The water gathers speed, its pattern stretches as it
 * does and turns into another in a fraction of a second; strands stay where the lip parts the water.
 */
public final class FallingWater implements Scene {

    private static final int WIDTH = 480;
    private static final int HEIGHT = 320;
    private static final double TOP = 26;
    private static final double FOOT = 236;
    private static final double LEFT = 168;
    private static final double RIGHT = 306;

    /** Speed at the lip and gain of speed, in pixels: a fall of some six metres. */
    private static final double LIP_PIXELS_PER_SECOND = 40;

    private static final double GRAVITY_PIXELS = 340;
    private static final int SIDE = 256;
    private static final double ROWS_PER_SECOND = 160;
    private static final double ROUGH = 0.38;

    private static final DriftingField.Part VEIL = new DriftingField.Part() {
        @Override
        public double amplitude(double kx, double ky) {
            double k = size(kx, ky);
            return k > 3 ? 0 : Powers.pow(k * k + 0.02, -0.6) * StrictMath.exp(-(k / 1.6) * (k / 1.6));
        }

        @Override
        public double lifetimeSeconds(double kx, double ky) {
            return Math.max(0.12, 0.3 * Powers.pow(0.3 / size(kx, ky), 2.0 / 3));
        }

        /** Threads of water hang: longer than wide. */
        private double size(double kx, double ky) {
            return Math.sqrt(kx * kx + 9 * ky * ky);
        }
    };

    private static final DriftingField.Part RINGS = new DriftingField.Part() {
        @Override
        public double amplitude(double kx, double ky) {
            double k = size(kx, ky);
            return k < 0.05 || k > 2.5 ? 0 : Powers.pow(k, -0.9) * StrictMath.exp(-(k / 1.2) * (k / 1.2));
        }

        @Override
        public double lifetimeSeconds(double kx, double ky) {
            return Math.max(0.2, 0.5 * Powers.pow(0.3 / size(kx, ky), 2.0 / 3));
        }

        /** Seen at a grazing angle: wider than high. */
        private double size(double kx, double ky) {
            return Math.sqrt(6 * kx * kx + ky * ky);
        }
    };

    private final DriftingField veil = new DriftingField(SIDE, SIDE, VEIL, 0, ROWS_PER_SECOND, 31);
    private final DriftingField rings = new DriftingField(SIDE, SIDE, RINGS, 6, 2, 32);
    private final Kind[] kinds = new Kind[WIDTH * HEIGHT];
    /** Luminance of rock, of the strands of the fall, and of the even pool. */
    private final float[] still = new float[WIDTH * HEIGHT];
    /** Row of the pattern that a row of the fall shows. */
    private final float[] rowOf = new float[HEIGHT];

    public FallingWater() {
        for (int y = 0; y < HEIGHT; y++) {
            double fallen = Math.max(0, y - TOP);
            double root = Math.sqrt(LIP_PIXELS_PER_SECOND * LIP_PIXELS_PER_SECOND + 2 * GRAVITY_PIXELS * fallen);
            rowOf[y] = (float) (ROWS_PER_SECOND * (root - LIP_PIXELS_PER_SECOND) / GRAVITY_PIXELS);
            for (int x = 0; x < WIDTH; x++) {
                int p = y * WIDTH + x;
                double wave = 9 * Relief.noise(y / 31.0, 0.5, 71);
                boolean falls = y >= TOP && y < FOOT && x > LEFT + wave && x < RIGHT + wave * 0.7 + 0.06 * (y - TOP);
                kinds[p] = falls || y >= FOOT ? Kind.FLOWING : Kind.FIXED;
                still[p] = (float) (falls ? strand(x, y) : y >= FOOT ? pool(x, y) : rock(x, y));
            }
        }
    }

    private static double strand(int x, int y) {
        double thread = Relief.fractal(x / 11.0, y / 160.0, 3, 0.6, 72);
        return 0.16 + 0.20 * Relief.step(-0.7, 0.8, thread);
    }

    private static double pool(int x, int y) {
        double foam = StrictMath.exp(-(y - FOOT) / 14)
                * Relief.step(LEFT - 30, LEFT + 20, x)
                * (1 - Relief.step(RIGHT, RIGHT + 50, x));
        return 0.045 + 0.10 * foam;
    }

    private static double rock(int x, int y) {
        double shape = Relief.ridged(x / 60.0, y / 38.0, 4, 0.55, 73);
        double grain = Relief.fractal(x / 5.0, y / 4.0, 3, 0.6, 74);
        return Math.max(0.012, 0.055 + 0.03 * shape + 0.018 * grain);
    }

    @Override
    public int width() {
        return WIDTH;
    }

    @Override
    public int height() {
        return HEIGHT;
    }

    @Override
    public Kind[] kinds(Work work) {
        return kinds.clone();
    }

    /** Whether the pixel belongs to the fall itself. */
    public boolean falls(int pixel) {
        int row = pixel / WIDTH;
        return kinds[pixel] == Kind.FLOWING && row < FOOT;
    }

    /** Luminance of some pixels at some instants, one row an instant: what an exposure is the mean of. */
    public float[][] luminance(int[] pixels, double[] timesSeconds, Work work) {
        float[][] rows = new float[timesSeconds.length][pixels.length];
        int pieces = Math.min(8, timesSeconds.length);
        work.forEach(pieces, piece -> {
            DriftingField.State falling = veil.state();
            DriftingField.State standing = rings.state();
            for (int i = piece * rows.length / pieces; i < (piece + 1) * rows.length / pieces; i++) {
                work.check();
                veil.at(timesSeconds[i], falling);
                rings.at(timesSeconds[i], standing);
                for (int k = 0; k < pixels.length; k++) {
                    rows[i][k] = light(pixels[k], falling.layers, standing.layers);
                }
            }
        });
        return rows;
    }

    @Override
    public RgbPicture frame(double timeSeconds) {
        int[] all = new int[WIDTH * HEIGHT];
        Arrays.setAll(all, p -> p);
        float[] light = luminance(all, new double[] {timeSeconds}, Work.alone())[0];
        RgbPicture picture = RgbPicture.black(WIDTH, HEIGHT);
        for (int p = 0; p < all.length; p++) {
            boolean wet = kinds[p] == Kind.FLOWING;
            picture.red()[p] = light[p] * (wet ? 0.92f : 1.04f);
            picture.green()[p] = light[p] * (wet ? 1.01f : 1.0f);
            // so that the luminance, 0.2126 R + 0.7152 G + 0.0722 B, is the light itself
            picture.blue()[p] = (light[p] - 0.2126f * picture.red()[p] - 0.7152f * picture.green()[p]) / 0.0722f;
        }
        return picture;
    }

    private float light(int p, float[] falling, float[] standing) {
        if (kinds[p] == Kind.FIXED) {
            return still[p];
        }
        int x = p % WIDTH;
        int y = p / WIDTH;
        if (y >= FOOT) {
            int at = (int) (2.2 * (y - FOOT)) % SIDE * SIDE + x % SIDE;
            return still[p] * (float) Math.max(0.2, 1 + 0.22 * standing[2 * at]);
        }
        int row = (int) rowOf[y];
        float part = rowOf[y] - row;
        float above = falling[2 * (row % SIDE * SIDE + x % SIDE)];
        float below = falling[2 * ((row + 1) % SIDE * SIDE + x % SIDE)];
        return still[p] * (float) Math.max(0.1, 1 + ROUGH * (above + part * (below - above)));
    }
}
