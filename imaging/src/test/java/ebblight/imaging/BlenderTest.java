package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Blends of drawn frames: rock left, water right that gets brighter from frame to frame. */
class BlenderTest {

    private static final int WIDTH = 96;
    private static final int HEIGHT = 60;
    private static final int FRAMES = 8;
    private static final float[] STILL = half(true);

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private final List<Path> files = new ArrayList<>();

    @BeforeEach
    void frames() throws Exception {
        for (int k = 0; k < FRAMES; k++) {
            write(k, 1);
        }
    }

    private void write(int k, double light) throws Exception {
        int[] codes = new int[3 * WIDTH * HEIGHT];
        for (int p = 0; p < codes.length / 3; p++) {
            boolean rock = p % WIDTH < WIDTH / 2;
            double linear = light * (rock ? 0.1 + 0.02 * ((p / 3) % 5) : 0.3 + 0.05 * k);
            for (int c = 0; c < 3; c++) {
                codes[3 * p + c] = (int) Math.round(65535 * Srgb.code(linear));
            }
        }
        Path file = folder.resolve("f" + k + ".png");
        TestPictures.write16(file, codes, WIDTH, HEIGHT);
        if (!files.contains(file)) {
            files.add(file);
        }
    }

    private static float[] half(boolean left) {
        float[] share = new float[WIDTH * HEIGHT];
        for (int p = 0; p < share.length; p++) {
            share[p] = (p % WIDTH < WIDTH / 2) == left ? 1 : 0;
        }
        return share;
    }

    private BlendResult blend(List<BlendLayer> layers, Work work) throws Exception {
        FrameSource source = Inputs.open(files, 1, true);
        return Blender.blend(source, layers, STILL, new ShareGrid(WIDTH, HEIGHT, 0), Placed.still(), work);
    }

    private static List<BlendLayer> twoSecondsAndAll() {
        return List.of(
                new BlendLayer(StackOptions.As.MEAN, 0, Double.POSITIVE_INFINITY, -1, half(true), 0),
                new BlendLayer(StackOptions.As.MEAN, 0, 1.5, -1, half(false), 0));
    }

    /** Linear light at a pixel, by the standard's curve (IEC 61966-2-1). */
    private static double light(BlendResult result, int x, int y) {
        double v = result.picture().code(3 * (y * WIDTH + x)) / 65535.0;
        return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }

    @Test
    void everyPartIsTheMeanOfItsOwnFrames() throws Exception {
        BlendResult result = blend(twoSecondsAndAll(), Work.alone());
        // the mean of 0.30 and 0.35; all eight would be 0.475
        assertThat(light(result, 80, 30)).isCloseTo(0.325, within(2e-4));
        assertThat(light(result, 0, 0)).isCloseTo(0.1, within(2e-4));
        assertThat(result.layers()).extracting(BlendResult.Layer::frames).containsExactly(FRAMES, 2);
    }

    @Test
    void oneFrameAloneIsTaken() throws Exception {
        BlendResult result = blend(
                List.of(
                        new BlendLayer(StackOptions.As.MEAN, 0, Double.POSITIVE_INFINITY, -1, half(true), 0),
                        new BlendLayer(StackOptions.As.MEAN, 0, Double.POSITIVE_INFINITY, 5, half(false), 0)),
                Work.alone());
        assertThat(light(result, 80, 30)).isCloseTo(0.55, within(2e-4));
    }

    @Test
    void layersAreBroughtToTheLightOfWhatStandsStill() throws Exception {
        // the two frames of the short layer came out half a stop darker than the others
        write(0, Math.sqrt(0.5));
        write(1, Math.sqrt(0.5));
        BlendResult result = blend(twoSecondsAndAll(), Work.alone());
        double gain = result.layers().get(1).gains()[1];
        // six frames as they were and two darker ones
        double mean = (6 + 2 * Math.sqrt(0.5)) / 8;
        assertThat(gain).isCloseTo(mean / Math.sqrt(0.5), within(0.002));
        assertThat(light(result, 80, 30)).isCloseTo(0.325 * mean, within(5e-4));
    }

    /** Between 10 and 90 % of a step softened by a normal distribution lie 2.563 standard deviations (tables of it). */
    @Test
    void aPulledEdgeRunsOverItsWidthFromTenToNinetyPerCent() throws Exception {
        double edge = 0.1;
        List<BlendLayer> layers = List.of(
                new BlendLayer(StackOptions.As.MEAN, 0, Double.POSITIVE_INFINITY, -1, half(true), 0),
                new BlendLayer(StackOptions.As.MEAN, 0, 1.5, -1, half(false), edge));
        BlendResult result = blend(layers, Work.alone());
        byte[] rock = result.layers().get(0).mask();
        byte[] water = result.layers().get(1).mask();
        for (int p = 0; p < rock.length; p++) {
            assertThat((rock[p] & 0xFF) + (water[p] & 0xFF)).isBetween(254, 256);
        }
        double low = crossing(water, 0.1);
        double high = crossing(water, 0.9);
        assertThat(high - low).isCloseTo(edge * WIDTH, within(0.2 * edge * WIDTH));
        assertThat((high + low) / 2).isCloseTo(WIDTH / 2.0 - 0.5, within(1.0));
        assertThat(water[30 * WIDTH + WIDTH - 1] & 0xFF).isEqualTo(255);
    }

    /** Column at which the middle row of a mask rises through a level, between pixels. */
    private static double crossing(byte[] mask, double level) {
        int row = 30 * WIDTH;
        int x = 0;
        while ((mask[row + x + 1] & 0xFF) < 255 * level) {
            x++;
        }
        double before = (mask[row + x] & 0xFF) / 255.0;
        double after = (mask[row + x + 1] & 0xFF) / 255.0;
        return x + (level - before) / (after - before);
    }

    @Test
    void masksSumToOneAndFollowTheEdge() throws Exception {
        BlendResult result = blend(twoSecondsAndAll(), Work.alone());
        byte[] rock = result.layers().get(0).mask();
        byte[] water = result.layers().get(1).mask();
        for (int p = 0; p < rock.length; p++) {
            assertThat((rock[p] & 0xFF) + (water[p] & 0xFF)).isBetween(254, 256);
        }
        int row = 30 * WIDTH;
        assertThat(rock[row + WIDTH / 2 - 2] & 0xFF).isGreaterThan(200);
        assertThat(water[row + WIDTH / 2 + 1] & 0xFF).isGreaterThan(200);
    }

    @Test
    void theResultIsTheSameBitsForAnyNumberOfThreads() throws Exception {
        BlendResult alone = blend(twoSecondsAndAll(), Work.alone());
        for (int threads : new int[] {1, 2, 4}) {
            try (Threads work = new Threads(threads)) {
                assertThat(blend(twoSecondsAndAll(), work).picture().codes())
                        .as(threads + " threads")
                        .isEqualTo(alone.picture().codes());
            }
        }
    }
}
