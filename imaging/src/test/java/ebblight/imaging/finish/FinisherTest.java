package ebblight.imaging.finish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.IccProfile;
import ebblight.imaging.ShareGrid;
import ebblight.imaging.Threads;
import ebblight.imaging.TransferCurve;
import ebblight.imaging.grain.Grain;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What a finish does to pictures whose right answer is known beforehand. */
class FinisherTest {

    private static final IccProfile SRGB = IccProfile.srgb();

    private static Finish with(double exposure, Tone tone, double grade, double local, double grain) {
        return new Finish(
                0,
                new Crop.Whole(),
                exposure,
                tone,
                List.of(),
                grade,
                Optional.empty(),
                Toning.NONE,
                local,
                grain,
                Optional.empty(),
                Optional.empty());
    }

    private static CodedPicture finish(RgbPicture picture, Finish finish) {
        return Finisher.finish(TestScenes.copy(picture), SRGB, Optional.empty(), finish, Work.alone())
                .picture();
    }

    private static double light(CodedPicture picture, int sample) {
        return TransferCurve.SRGB.toLinear(picture.code(sample) / 65535.0);
    }

    @Test
    void nothingAskedChangesNothing() {
        RgbPicture scene = TestScenes.scene(120, 80, 1);
        assertThat(finish(scene, Finish.UNTOUCHED).codes())
                .isEqualTo(CodedPicture.of(scene, SRGB, Work.alone()).codes());
    }

    /** One stop is twice the light, by definition. */
    @Test
    void aStopDoublesTheLight() {
        RgbPicture scene = TestScenes.scene(120, 80, 2);
        CodedPicture lifted = finish(scene, with(-1, new Tone(0, 0), 2, 0, 0));
        for (int p = 0; p < 120 * 80; p += 7) {
            assertThat(light(lifted, 3 * p + 1)).isCloseTo(scene.green()[p] / 2, within(1e-5));
        }
    }

    /** One stop is twice the light, by definition; the part beside it keeps its own. */
    @Test
    void aPartAloneIsLighter() {
        int w = 120;
        int h = 80;
        float[] flat = new float[w * h];
        float[] left = new float[w * h];
        float[] right = new float[w * h];
        for (int p = 0; p < flat.length; p++) {
            flat[p] = 0.2f;
            left[p] = p % w < w / 2 ? 1 : 0;
            right[p] = 1 - left[p];
        }
        Finish lifted = new Finish(
                0,
                new Crop.Blades(0, 0, 1, 0.5),
                0,
                new Tone(0, 0),
                List.of(new Finish.Part("flowing", 1)),
                Finish.UNCHANGED_GRADE,
                Optional.empty(),
                Toning.NONE,
                0,
                0,
                Optional.empty(),
                Optional.empty());
        PartTones tones = new PartTones(new ShareGrid(w, h, 0), List.of(left, right), List.of(1.0, 0.0));
        Finished finished =
                Finisher.finish(TestScenes.grey(w, h, flat), SRGB, Optional.empty(), lifted, tones, Work.alone());
        assertThat(finished.picture().height()).isEqualTo(h / 2);
        assertThat(light(finished.picture(), 3 * (10 * w + 10))).isCloseTo(0.4, within(1e-4));
        assertThat(light(finished.picture(), 3 * (10 * w + w - 10))).isCloseTo(0.2, within(1e-4));
        assertThat(finished.done()).contains("water 1.00 stop lighter");
        assertThatThrownBy(() -> finish(TestScenes.grey(w, h, flat), lifted)).hasMessageContaining("--frames");
    }

    /** Bit for bit, with everything on. */
    @Test
    void threadsChangeNothing() {
        Finish all = new Finish(
                1.3,
                new Crop.Paper(30, 20, 1, 0.4, 0.5),
                0.4,
                new Tone(0.5, -0.4),
                List.of(),
                3,
                Optional.of(new Monochrome(List.of(), Optional.of(new LensFilter(30, 2)))),
                new Toning(70, 6, 250, 4),
                0.4,
                1,
                Optional.of(new Sharpness(60, Sharpness.Paper.MATT)),
                Optional.empty());
        RgbPicture scene = TestScenes.scene(400, 300, 3);
        short[] alone = finish(scene, all).codes();
        try (Threads three = new Threads(3)) {
            assertThat(Finisher.finish(TestScenes.copy(scene), SRGB, Optional.empty(), all, three)
                            .picture()
                            .codes())
                    .isEqualTo(alone);
        }
    }

    /** A sky of 16 bits keeps its levels through a steep grade: no level of the result is more than a few codes wide. */
    @Test
    void aSmoothSkyDoesNotBand() {
        int width = 4096;
        int height = 16;
        float[] light = new float[width * height];
        for (int p = 0; p < light.length; p++) {
            double code = 0.45 + 0.1 * (p % width) / width; // 6553 codes of 16 bits over 4096 pixels
            light[p] = (float) TransferCurve.SRGB.toLinear(Math.rint(65535 * code) / 65535);
        }
        CodedPicture graded = finish(TestScenes.grey(width, height, light), with(0.3, new Tone(0.4, -0.3), 4, 0.3, 0));
        Set<Integer> levels = new HashSet<>();
        int widest = 0;
        for (int x = 0; x < width; x++) {
            int code = graded.code(3 * (5 * width + x) + 1);
            levels.add(code);
            if (x > 0) {
                int step = code - graded.code(3 * (5 * width + x - 1) + 1);
                assertThat(step).isGreaterThanOrEqualTo(0); // a gradient stays one
                widest = Math.max(widest, step);
            }
        }
        assertThat(levels.size()).isGreaterThan((int) (0.98 * width));
        // an 8-bit step is 257 codes
        assertThat(widest).isLessThan(26);
    }

    /** Beside a step of four stops the lifted detail must not leave a bright or dark line. */
    @Test
    void localContrastDrawsNoHaloAlongAnEdge() {
        int width = 600;
        int height = 100;
        float[] light = new float[width * height];
        for (int p = 0; p < light.length; p++) {
            light[p] = p % width < width / 2 ? 0.03f : 0.48f;
        }
        CodedPicture lifted = finish(TestScenes.grey(width, height, light), with(0, new Tone(0, 0), 2, 0.5, 0));
        double dark = light(lifted, 3 * (50 * width + 20));
        double bright = light(lifted, 3 * (50 * width + width - 20));
        for (int x = 0; x < width; x++) {
            double v = light(lifted, 3 * (50 * width + x));
            double far = x < width / 2 ? dark : bright;
            assertThat(Math.abs(Math.log(v / far) / Math.log(2))).isLessThan(0.1); // an eighth of a stop is seen
        }
    }

    @Test
    void localContrastLiftsDetail() {
        int width = 400;
        float[] light = new float[width * 60];
        for (int p = 0; p < light.length; p++) {
            light[p] = (float) (0.2 * Math.pow(2, 0.1 * Math.sin(p % width / 1.5)));
        }
        CodedPicture lifted = finish(TestScenes.grey(width, 60, light), with(0, new Tone(0, 0), 2, 1, 0));
        double least = 1;
        double most = 0;
        for (int x = 100; x < 300; x++) {
            least = Math.min(least, light(lifted, 3 * (30 * width + x)));
            most = Math.max(most, light(lifted, 3 * (30 * width + x)));
        }
        // ±0.1 stop becomes ±0.2 stop but for what the base took of it
        assertThat(Math.log(most / least) / Math.log(2)).isBetween(0.3, 0.4);
    }

    /** Noise of known variance: flat parts lose most of it, a line of ten sigma stays. */
    @Test
    void grainGoesAndDetailStays() {
        int width = 300;
        int height = 200;
        double sigma = 0.01;
        float[] light = new float[width * height];
        SplittableRandom dice = new SplittableRandom(5);
        for (int p = 0; p < light.length; p++) {
            double line = p % width == 150 ? 10 * sigma : 0;
            light[p] = (float) (0.3 + line + sigma * dice.nextGaussian());
        }
        CodedPicture calm = Finisher.finish(
                        TestScenes.grey(width, height, light),
                        SRGB,
                        Optional.of(new Grain(0, sigma * sigma, "known")),
                        with(0, new Tone(0, 0), 2, 0, 1),
                        Work.alone())
                .picture();
        double squares = 0;
        double line = 0;
        for (int y = 20; y < 180; y++) {
            for (int x = 20; x < 130; x++) {
                double d = light(calm, 3 * (y * width + x)) - 0.3;
                squares += d * d;
            }
            line += light(calm, 3 * (y * width + 150)) - 0.3;
        }
        assertThat(Math.sqrt(squares / (160 * 110))).isLessThan(0.4 * sigma);
        assertThat(line / 160).isGreaterThan(8 * sigma);
    }

    /** A turn of a straight ramp is a ramp along the turned axis: clockwise, so that right goes down. */
    @Test
    void levelTurnsClockwise() {
        int size = 200;
        RgbPicture ramp = RgbPicture.black(size, size);
        for (int p = 0; p < size * size; p++) {
            ramp.green()[p] = (float) (0.2 + 0.6 * (p % size) / size);
        }
        Easel easel = new Easel(size, size, 10);
        RgbPicture turned = easel.lay(ramp, easel.cut(new Crop.Whole()), Work.alone());
        int w = turned.width();
        int middle = w / 2 * w + w / 2;
        double across = (turned.green()[middle + 20] - turned.green()[middle - 20]) / 40.0;
        double down = (turned.green()[middle + 20 * w] - turned.green()[middle - 20 * w]) / 40.0;
        assertThat(across).isCloseTo(0.6 / size * Math.cos(Math.toRadians(10)), within(1e-6));
        assertThat(down).isCloseTo(0.6 / size * Math.sin(Math.toRadians(10)), within(1e-6));
        // the largest square in a turned one has 1/(sin + cos) of its side
        assertThat(w).isBetween((int) (size / (Math.sin(Math.toRadians(10)) + Math.cos(Math.toRadians(10)))) - 3, size);
    }

    @Test
    void paperSetsTheRatio() {
        Easel.Cut cut = new Easel(6000, 4000, 0).cut(new Crop.Paper(40, 30, 3, 0.5, 0.5));
        assertThat((double) cut.width() / cut.height()).isCloseTo(34.0 / 24, within(5e-4));
        assertThat(cut.height()).isEqualTo(4000);
        assertThat(cut.left()).isEqualTo((6000 - cut.width() + 1) / 2);
    }
}
