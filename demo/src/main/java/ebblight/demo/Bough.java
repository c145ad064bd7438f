package ebblight.demo;

import ebblight.core.motion.Kind;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * A leafy bough that swings far out of its place in front of a bank, with one period, and hangs almost still in a lull.
 * Every leaf trembles about its twig as well.
 */
public final class Bough implements Scene {

    private static final int WIDTH = 480;
    private static final int HEIGHT = 320;
    private static final double ROOT_X = -12;
    private static final double ROOT_Y = 92;
    private static final int JOINTS = 16;
    private static final double JOINT_PIXELS = 19;
    private static final int INSTANTS = 60;
    private static final double INSTANTS_APART = 0.31;
    private static final double LEAF_SHARE = 0.04;
    private static final double CALM = 0.03;
    private static final float[] WOOD = {0.030f, 0.024f, 0.018f};

    private final double swing;
    private final double periodSeconds;
    private final double lullFromSeconds;
    private final double lullToSeconds;
    private final List<Leaf> leaves = new ArrayList<>();
    private final float[][] bank = new float[3][WIDTH * HEIGHT];

    /** A leaf: at which joint, how far from the stem and in which direction, its tremble and colour. */
    private record Leaf(int joint, double length, double angle, double cycles, double turns, float[] colour) {}

    /**
     * A bough of its own.
     *
     * @param swing of its end to either side, radians; 0.1 moves it by some 30 pixels
     * @param periodSeconds of the swing
     * @param lullFromSeconds when it comes to rest
     * @param lullToSeconds when it swings again
     * @param beforeSky whether an even sky is behind it rather than a bank
     */
    public Bough(double swing, double periodSeconds, double lullFromSeconds, double lullToSeconds, boolean beforeSky) {
        this.swing = swing;
        this.periodSeconds = periodSeconds;
        this.lullFromSeconds = lullFromSeconds;
        this.lullToSeconds = lullToSeconds;
        Dice dice = new Dice(41);
        for (int i = 0; i < 330; i++) {
            int joint = 3 + (int) dice.uniform(0, JOINTS - 3);
            float light = (float) dice.uniform(0.5, 1.5);
            float[] colour = {0.060f * light, 0.085f * light, 0.022f * light};
            leaves.add(new Leaf(
                    joint,
                    dice.uniform(4, 34),
                    dice.uniform(-2.6, 2.6),
                    dice.uniform(1.2, 3.5),
                    dice.uniform(),
                    colour));
        }
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            int x = p % WIDTH;
            int y = p / WIDTH;
            double rough = Relief.fractal(x / 26.0, y / 17.0, 4, 0.6, 42);
            double earth = Math.max(0.01, 0.060 + 0.026 * rough);
            double sky = 0.34 - 0.10 * y / HEIGHT;
            boolean open = beforeSky && y < 0.72 * HEIGHT;
            bank[0][p] = (float) (open ? 0.92 * sky : 1.10 * earth);
            bank[1][p] = (float) (open ? 1.00 * sky : 0.98 * earth);
            bank[2][p] = (float) (open ? 1.18 * sky : 0.80 * earth);
        }
    }

    /** How strongly it swings at an instant, 0 to 1. */
    private double strength(double t) {
        double rest = Relief.step(lullFromSeconds - 0.5, lullFromSeconds, t)
                * (1 - Relief.step(lullToSeconds, lullToSeconds + 0.5, t));
        return 1 - (1 - CALM) * rest;
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
    public RgbPicture frame(double timeSeconds) {
        RgbPicture picture = RgbPicture.black(WIDTH, HEIGHT);
        for (int c = 0; c < 3; c++) {
            System.arraycopy(bank[c], 0, picture.plane(c), 0, WIDTH * HEIGHT);
        }
        paint(timeSeconds, picture, new float[0]);
        return picture;
    }

    /** Share of every pixel that the bough covers at an instant, 0 to 1. */
    public float[] cover(double timeSeconds) {
        float[] cover = new float[WIDTH * HEIGHT];
        paint(timeSeconds, RgbPicture.black(WIDTH, HEIGHT), cover);
        return cover;
    }

    /** RMS of what the end of the bough moves within a swing, pixels. */
    public double swingPixels() {
        return swing * JOINTS * JOINT_PIXELS / Math.sqrt(2);
    }

    private void paint(double t, RgbPicture picture, float[] cover) {
        double strength = strength(t);
        double bend = swing * strength * Turns.sine(t / periodSeconds);
        double[] x = new double[JOINTS + 1];
        double[] y = new double[JOINTS + 1];
        double[] angle = new double[JOINTS + 1];
        x[0] = ROOT_X;
        y[0] = ROOT_Y;
        for (int j = 1; j <= JOINTS; j++) {
            double along = (double) j / JOINTS;
            angle[j] = 0.05 + 0.35 * along * along + bend * (0.6 + 0.8 * along);
            x[j] = x[j - 1] + JOINT_PIXELS * StrictMath.cos(angle[j]);
            y[j] = y[j - 1] + JOINT_PIXELS * StrictMath.sin(angle[j]);
            Brush.stroke(picture, x[j - 1], y[j - 1], x[j], y[j], 4.2 * (1 - 0.85 * along), WOOD, cover);
        }
        for (Leaf leaf : leaves) {
            int j = leaf.joint;
            double tremble = 0.25 * strength * Turns.sine(leaf.cycles * t + leaf.turns);
            double a = angle[j] + leaf.angle + tremble;
            double ex = x[j] + leaf.length * StrictMath.cos(a);
            double ey = y[j] + leaf.length * StrictMath.sin(a);
            Brush.stroke(picture, x[j], y[j], ex, ey, 0.5, WOOD, cover);
            double b = a + 0.5;
            Brush.stroke(
                    picture, ex, ey, ex + 9 * StrictMath.cos(b), ey + 9 * StrictMath.sin(b), 2.4, leaf.colour, cover);
        }
    }

    @Override
    public Kind[] kinds(Work work) {
        float[][] covers = new float[INSTANTS][];
        work.forEach(INSTANTS, i -> covers[i] = cover(i * INSTANTS_APART));
        Kind[] kinds = new Kind[WIDTH * HEIGHT];
        for (int p = 0; p < kinds.length; p++) {
            double reached = 0;
            for (float[] cover : covers) {
                reached += cover[p] / INSTANTS;
            }
            kinds[p] = reached > LEAF_SHARE ? Kind.SWAYING : Kind.FIXED;
        }
        return kinds;
    }
}
