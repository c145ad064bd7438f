package ebblight.demo;

import ebblight.core.motion.Kind;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.Arrays;
import java.util.List;

/** A paved quay that people walk over; some of them pause on their way. */
public final class Passers implements Scene {

    private static final int WIDTH = 480;
    private static final int HEIGHT = 320;
    private static final double HEIGHT_OF_A_PERSON = 62;

    private final List<Walk> walks;
    private final float[] quay = new float[WIDTH * HEIGHT];

    /**
     * One person's way from one side to the other.
     *
     * @param entersSeconds when they stand at the picture's left edge, or the right one
     * @param pixelsPerSecond to the right, negative to the left
     * @param feetRow where their feet are, pixels below the upper edge
     * @param pausesAtColumn where they stop, pixels from the left
     * @param pauseSeconds how long they stand there
     */
    public record Walk(
            double entersSeconds, double pixelsPerSecond, double feetRow, double pausesAtColumn, double pauseSeconds) {

        /** Column at an instant; outside of the picture before and after. */
        double column(double t) {
            double edge = pixelsPerSecond > 0 ? 0 : WIDTH;
            double arrives = entersSeconds + (pausesAtColumn - edge) / pixelsPerSecond;
            if (t <= arrives) {
                return edge + pixelsPerSecond * (t - entersSeconds);
            }
            return pausesAtColumn + pixelsPerSecond * Math.max(0, t - arrives - pauseSeconds);
        }
    }

    public Passers(List<Walk> walks) {
        this.walks = List.copyOf(walks);
        for (int p = 0; p < quay.length; p++) {
            int x = p % WIDTH;
            int y = p / WIDTH;
            boolean wall = y < 120;
            double stone = Relief.fractal(x / 18.0, y / (wall ? 12.0 : 7.0), 4, 0.6, 51);
            double joint = wall ? 0 : StrictMath.pow(Math.abs(Turns.cosine(y / 34.0)), 40);
            quay[p] = (float) ((wall ? 0.13 : 0.22) * (1 + 0.22 * stone) * (1 - 0.4 * joint));
        }
    }

    @Override
    public int width() {
        return WIDTH;
    }

    @Override
    public int height() {
        return HEIGHT;
    }

    /** The quay without anybody. */
    public RgbPicture empty() {
        RgbPicture picture = RgbPicture.black(WIDTH, HEIGHT);
        float[] tint = {1.05f, 1, 0.92f};
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < quay.length; p++) {
                picture.plane(c)[p] = tint[c] * quay[p];
            }
        }
        return picture;
    }

    @Override
    public RgbPicture frame(double timeSeconds) {
        RgbPicture picture = empty();
        paint(timeSeconds, picture, new float[0]);
        return picture;
    }

    /** Share of every pixel that somebody covers at an instant, 0 to 1. */
    public float[] cover(double timeSeconds) {
        float[] cover = new float[WIDTH * HEIGHT];
        paint(timeSeconds, RgbPicture.black(WIDTH, HEIGHT), cover);
        return cover;
    }

    private void paint(double t, RgbPicture picture, float[] cover) {
        for (int i = 0; i < walks.size(); i++) {
            Walk walk = walks.get(i);
            double x = walk.column(t);
            double h = HEIGHT_OF_A_PERSON;
            double feet = walk.feetRow;
            boolean walking = walk.column(t + 0.05) != x;
            double stride = walking ? 0.11 * h * Turns.sine(x / (0.8 * h)) : 0;
            float[] coat = {0.03f + 0.02f * (i % 3), 0.03f, 0.05f - 0.01f * (i % 2)};
            float[] face = {0.30f, 0.20f, 0.15f};
            float[] legs = {0.02f, 0.02f, 0.03f};
            double hip = feet - 0.47 * h;
            Brush.stroke(picture, x, hip, x + stride, feet, 0.055 * h, legs, cover);
            Brush.stroke(picture, x, hip, x - stride, feet, 0.055 * h, legs, cover);
            Brush.stroke(picture, x, hip, x, feet - 0.78 * h, 0.12 * h, coat, cover);
            Brush.stroke(picture, x, feet - 0.92 * h, x, feet - 0.94 * h, 0.065 * h, face, cover);
        }
    }

    /** All of it stands still; people pass in front of it. */
    @Override
    public Kind[] kinds(Work work) {
        Kind[] kinds = new Kind[WIDTH * HEIGHT];
        Arrays.fill(kinds, Kind.FIXED);
        return kinds;
    }
}
