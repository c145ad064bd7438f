package ebblight.demo;

import ebblight.core.motion.Kind;
import ebblight.core.numeric.Powers;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.List;

/** The coast through one lens in one picture size. Immutable and shared between threads. */
public final class View implements Scene {

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

    @Override
    public int width() {
        return lens.width();
    }

    @Override
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
    @Override
    public RgbPicture frame(double timeSeconds) {
        RgbPicture picture = RgbPicture.black(width(), height());
        paint(timeSeconds, picture, space());
        return picture;
    }

    /**
     * True exposures that open together at {@code startSeconds}: means of frames spread evenly over the time,
     * {@code perSecond} a second, {@link Exposures#FRAMES_AT_LEAST} at least and {@link Exposures#FRAMES_AT_MOST} at
     * most from one exposure to the next longer one. Shorter ones are part of the longer.
     *
     * @param seconds how long each stays open, above 0, in rising order
     */
    public List<RgbPicture> exposures(double startSeconds, List<Double> seconds, double perSecond, Work work) {
        return new Exposures(this, work).from(startSeconds, seconds, perSecond);
    }

    /** One true exposure, as {@link #exposures}. */
    public RgbPicture exposure(double startSeconds, double seconds, double perSecond, Work work) {
        return exposures(startSeconds, List.of(seconds), perSecond, work).get(0);
    }

    /** How every pixel truly moves, row by row. */
    @Override
    public Kind[] kinds(Work work) {
        return truth(work).kinds();
    }

    /** The same, and where rock and water take turns. */
    public ViewTruth truth(Work work) {
        return new TrueKinds(this, coast, lens).all(work);
    }

    /**
     * True drift of the clouds where a pixel shows sky, in pixels a second to the right and down: the plane of clouds
     * is seen in perspective, so that they go slower near the horizon.
     */
    public Drift drift(double x, double y) {
        return SkyPatch.drift(lens, x, y);
    }

    /**
     * The way a point of cloud goes in a second.
     *
     * @param right pixels to the right
     * @param down pixels downwards
     */
    public record Drift(double right, double down) {}

    /** True mean drift over all pixels that {@link #kinds} calls drifting. */
    public Drift meanDrift(Kind[] kinds) {
        double right = 0;
        double down = 0;
        int n = 0;
        for (int i = 0; i < kinds.length; i++) {
            if (kinds[i] == Kind.DRIFTING) {
                int row = i / width();
                Drift here = drift(i % width() + 0.5, row + 0.5);
                right += here.right();
                down += here.down();
                n++;
            }
        }
        if (n == 0) {
            throw new IllegalArgumentException("nothing drifts in these kinds");
        }
        return new Drift(right / n, down / n);
    }

    Space space() {
        return new Space();
    }

    Water water() {
        return water;
    }

    Sea sea() {
        return coast.sea;
    }

    /** Whether a pixel shows water that nothing stands in and that never carries foam. */
    boolean open(int x, int y) {
        return still.cover[y * width() + x] == 0 && water.deep(x, y);
    }

    /** Mirrors an even sky in {@code space} from now on; returns its light at the horizon of each column. */
    float[] steadySky(Space space) {
        mirror.at(space.clouds, space.mirror);
        float[] edge = new float[3 * width()];
        horizon.light(space.clouds, 0, width(), edge);
        return edge;
    }

    /** Paints an instant into {@code picture}, which must be black. */
    void paint(double timeSeconds, RgbPicture picture, Space space) {
        coast.sea.at(timeSeconds, space.sea);
        coast.clouds.at(timeSeconds, space.clouds);
        coast.lace.at(timeSeconds, space.lace);
        mirror.at(space.clouds, space.mirror);
        float light = (float) Powers.exp2(-coast.fadingStopsPerMinute() * timeSeconds / 60);
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
                c *= dry(still.height[i], x, down, sea);
                picture.red()[i] += c * (light * still.rgb[3 * i] - picture.red()[i]);
                picture.green()[i] += c * (light * still.rgb[3 * i + 1] - picture.green()[i]);
                picture.blue()[i] += c * (light * still.rgb[3 * i + 2] - picture.blue()[i]);
            }
        }
    }

    /** How much of something that stands {@code height} metres over still water the waves leave dry, 0 to 1. */
    private float dry(float height, int x, double down, Sea.State sea) {
        if (height >= WASHED_METRES || down <= 0) {
            return 1;
        }
        double ahead = (Lens.HEIGHT_METRES - height) / down;
        double level = Water.SHOALING * Water.height(sea, lens.right(x + 0.5) * ahead, ahead);
        return (float) Math.max(0, Math.min(1, (height - level) / 0.05 + 0.5));
    }

    /** Share of a pixel that what stands still covers at that instant. */
    float stillShare(int x, int y, Sea.State sea) {
        int i = y * width() + x;
        return still.cover[i] * dry(still.height[i], x, -lens.up(y + 0.5), sea);
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
