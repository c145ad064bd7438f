package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** A watched shore whose washes are known row by row. */
class HighestWashTest {

    private static final int WIDTH = 160;
    private static final int HEIGHT = 112;
    private static final int EDGE = 56;
    private static final int FRAMES = 60;
    private static final int GREAT = 37;
    private static final int GREATEST_ROWS = 24;

    /** Rows of ground that the water covers in a frame: small washes, and one that is greater. */
    private static int rows(int frame) {
        return frame == GREAT ? GREATEST_ROWS : 3 + frame * 5 % 7;
    }

    private static Clip shore() {
        SplittableRandom dice = new SplittableRandom(5);
        float[] ground = new float[WIDTH * HEIGHT];
        for (int p = 0; p < ground.length; p++) {
            ground[p] = (float) (90 + 40 * dice.nextDouble());
        }
        List<byte[]> frames = new ArrayList<>();
        double[] times = new double[FRAMES];
        for (int i = 0; i < FRAMES; i++) {
            times[i] = 5.0 * i;
            byte[] rgb = new byte[3 * WIDTH * HEIGHT];
            double[][] waves = new double[HEIGHT / 4 + 1][WIDTH / 4 + 1];
            for (double[] row : waves) {
                for (int x = 0; x < row.length; x++) {
                    row[x] = dice.nextDouble();
                }
            }
            for (int y = 0; y < HEIGHT; y++) {
                for (int x = 0; x < WIDTH; x++) {
                    double value = ground[y * WIDTH + x];
                    if (y < EDGE) {
                        value = 60 + 110 * waves[y / 4][x / 4];
                    } else if (y < EDGE + rows(i)) {
                        value = 225;
                    } else if (i % 9 == 4 && y > 98 && y < 106 && x > 40 && x < 48) {
                        value = 20; // somebody walks by, above the water
                    }
                    for (int c = 0; c < 3; c++) {
                        rgb[3 * (y * WIDTH + x) + c] =
                                (byte) Math.max(0, Math.min(255, Math.rint(value + 2 * dice.nextDouble(-1, 1))));
                    }
                }
            }
            frames.add(rgb);
        }
        return Clip.of(WIDTH, HEIGHT, times, frames, Clip.Coding.SRGB8);
    }

    private final ViewSurvey survey = ViewSurvey.of(shore(), Strokes.none(), flowing(), Work.alone());

    /** All of it may be water: what the parts are told by is tested elsewhere. */
    private static RegionModel flowing() {
        double[][] weights = new double[RegionModel.FEATURES + 1][RegionModel.KINDS];
        weights[RegionModel.FEATURES][Kind.FLOWING.column()] = 20;
        return Coast.byRow(weights);
    }

    private static int lowest(byte[] places, int x, int crop) {
        int w = WIDTH - 2 * crop;
        int last = -1;
        for (int y = 0; y < places.length / w; y++) {
            last = places[y * w + x] == HighestWash.NEVER ? last : y;
        }
        return last + 1 + crop;
    }

    @Test
    void theLineLiesWhereTheGreatestWaveCame() {
        HighestWash wash = HighestWash.of(survey);
        assertThat(wash.highestFrame()).isEqualTo(GREAT);
        int crop = survey.crop();
        for (int x = 4; x < WIDTH - 2 * crop - 4; x++) {
            assertThat(lowest(wash.places(), x, crop)).as("column %d", x).isCloseTo(EDGE + GREATEST_ROWS, within(2));
        }
    }

    @Test
    void waterThatStandsHigherReachesAsMuchFartherOnTheSameSlope() {
        HighestWash wash = HighestWash.of(survey);
        int crop = survey.crop();
        int middle = WIDTH / 2;
        int before = lowest(wash.places(), middle, crop);
        assertThat(lowest(wash.places(0, WIDTH - 2 * crop), middle, crop)).isEqualTo(before);
        // small washes come up to 9 rows: one frame in five covers 8 of them, the greatest 16 more
        assertThat(wash.bandPixels()).isCloseTo(16, within(3.0));
        assertThat(lowest(wash.places(0.5, WIDTH - 2 * crop), middle, crop) - before)
                .isCloseTo((int) Math.rint(0.5 * wash.bandPixels()), within(1));
    }
}
