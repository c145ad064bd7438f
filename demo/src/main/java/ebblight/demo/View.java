package ebblight.demo;

import ebblight.core.numeric.Powers;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/** The coast in one picture size. Immutable and shared between threads. */
public final class View {

    private static final float[] NO_COVER = {};

    /** No wave of the scene reaches higher than this. */
    private static final float WASHED_METRES = 0.8f;

    private final Lens lens;
    private final Coast coast;
    private final Mirror mirror;
    private final SkyPatch sky;
    private final SkyPatch horizon;
    private final Water water;
    private final StillLife still;

    View(Coast coast, Lens lens, Work work) {
        this.lens = lens;
        this.coast = coast;
        this.mirror = new Mirror();
        this.water = new Water(lens, coast.sea, work);
        this.still = new StillLife(lens, work);
        int rows = (int) Math.ceil(lens.horizonPixels());
        sky = new SkyPatch(lens.width() * rows);
        horizon = new SkyPatch(lens.width());
        double[] rgb = new double[3];
        for (int x = 0; x < lens.width(); x++) {
            double u = lens.right(x + 0.5);
            for (int y = 0; y < rows; y++) {
                place(sky, y * lens.width() + x, u, Math.max(0, lens.up(y + 0.5)), rgb);
            }
            place(horizon, x, u, 0, rgb);
        }
    }

    private static void place(SkyPatch patch, int i, double right, double up, double[] rgb) {
        double n = 1 / Math.sqrt(1 + right * right + up * up);
        patch.place(i, right * n, up * n, rgb);
    }

    public int width() {
        return lens.width();
    }

    public int height() {
        return lens.height();
    }

    /** Work arrays for one thread. */
    final class Space {
        final Sea.State sea = coast.sea.state();
        final DriftingField.State clouds = coast.clouds.state();
        final DriftingField.State lace = coast.lace.state();
        final Mirror.State mirror = new Mirror.State();
        final WaterRow water = new WaterRow(width());
    }

    /** The scene at an instant in scene-linear light without noise. */
    public RgbPicture frame(double timeSeconds) {
        RgbPicture picture = RgbPicture.black(width(), height());
        paint(timeSeconds, picture, space());
        return picture;
    }

    Space space() {
        return new Space();
    }

    void paint(double timeSeconds, RgbPicture picture, Space space) {
        coast.sea.at(timeSeconds, space.sea);
        coast.clouds.at(timeSeconds, space.clouds);
        coast.lace.at(timeSeconds, space.lace);
        mirror.at(space.clouds, space.mirror);
        float light = (float) Powers.exp2(-Coast.FADING_STOPS_PER_MINUTE * timeSeconds / 60);
        int w = width();
        float[] row = new float[3 * w];
        float[] edge = new float[3 * w];
        horizon.light(space.clouds, 0, w, edge);
        for (int y = 0; y < height(); y++) {
            double wet = Math.max(0, Math.min(1, y + 1 - lens.horizonPixels()));
            if (wet < 1) {
                sky.light(space.clouds, y * w, (y + 1) * w, row);
                store(picture, y, row, light * (float) (1 - wet));
            }
            if (wet > 0) {
                water.light(y, space, edge);
                store(picture, y, space.water.rgb, light * (float) wet);
            }
            cover(picture, y, light, space.sea);
        }
        coast.tuft.paint(timeSeconds, lens, picture, light, NO_COVER);
    }

    /** Puts what stands still over row {@code y}; where it is low, as far as the water leaves it dry. */
    private void cover(RgbPicture picture, int y, float light, Sea.State sea) {
        int w = width();
        double down = -lens.up(y + 0.5);
        for (int x = 0; x < w; x++) {
            int i = y * w + x;
            float c = still.cover[i];
            if (c > 0) {
                float h = still.height[i];
                if (h < WASHED_METRES && down > 0) {
                    double ahead = (Lens.HEIGHT_METRES - h) / down;
                    double level = Water.SHOALING * Water.height(sea, lens.right(x + 0.5) * ahead, ahead);
                    c *= Math.max(0, Math.min(1, (h - (float) level) / 0.05f + 0.5f));
                }
                picture.red()[i] += c * (light * still.rgb[3 * i] - picture.red()[i]);
                picture.green()[i] += c * (light * still.rgb[3 * i + 1] - picture.green()[i]);
                picture.blue()[i] += c * (light * still.rgb[3 * i + 2] - picture.blue()[i]);
            }
        }
    }

    private void store(RgbPicture picture, int y, float[] row, float weight) {
        int w = width();
        for (int x = 0; x < w; x++) {
            picture.red()[y * w + x] += weight * row[3 * x];
            picture.green()[y * w + x] += weight * row[3 * x + 1];
            picture.blue()[y * w + x] += weight * row[3 * x + 2];
        }
    }
}
