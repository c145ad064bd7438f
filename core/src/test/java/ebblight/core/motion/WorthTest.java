package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Pictures of known colour and contrast against one frame. */
class WorthTest {

    private static final int WIDTH = Coast.WIDTH;
    private static final int HEIGHT = Coast.HEIGHT;

    /**
     * The red and the blue of sRGB have chroma 104.55 and 133.81 in L*a*b* (a*, b* of 80.09, 67.20 and of 79.19, −107.86: the
     * usual tables, from memory): against a red frame blue has 1.280 of its colour, grey none.
     */
    @Test
    void colourIsChromaAgainstTheFrames() {
        Clip red = even(255, 0, 0);
        assertThat(worth(red, picture(1, 0, 0)).colour()).isCloseTo(1, within(1e-3));
        assertThat(worth(red, picture(0, 0, 1)).colour()).isCloseTo(133.81 / 104.55, within(2e-3));
        assertThat(worth(red, picture(0.5f, 0.5f, 0.5f)).colour()).isCloseTo(0, within(1e-3));
        // the dark branch: CIELAB is linear below 216/24389, so black has none and half of dark red has half
        double dark = worth(red, picture(0.004f, 0, 0)).colour();
        assertThat(worth(red, picture(0.002f, 0, 0)).colour()).isCloseTo(dark / 2, within(1e-4));
        assertThat(dark).isPositive();
    }

    /** A quarter of the picture differs by a tenth, another by a hundredth. */
    @Test
    void whatDiffersByMoreThanNoiseCounts() {
        RgbPicture other = picture(0.5f, 0.5f, 0.5f);
        Clip grey = even(188, 188, 188);
        RgbPicture frame = RgbPicture.black(WIDTH, HEIGHT);
        for (int c = 0; c < 3; c++) {
            grey.channel(0, c, frame.plane(c));
            System.arraycopy(frame.plane(c), 0, other.plane(c), 0, WIDTH * HEIGHT);
        }
        float light = frame.green()[0];
        for (int p = 0; p < WIDTH * HEIGHT / 4; p++) {
            for (int c = 0; c < 3; c++) {
                other.plane(c)[p] = light * 1.1f;
                other.plane(c)[WIDTH * HEIGHT / 4 + p] = light * 0.99f;
            }
        }
        Worth worth = worth(grey, other);
        assertThat(worth.changedFraction()).isEqualTo(0.25);
        assertThat(worth.seconds()).isEqualTo(8);
    }

    /** Rock at 0.1 under water at 0.4: a step of ln 4 = 1.386 before even water separates wholly. */
    @Test
    void evenWaterSetsTheRockOff() {
        assertThat(worth(even(99, 99, 99), rockAndWater(0)).separation()).isCloseTo(1, within(1e-3));
    }

    /** Checks of ± 0.2 in ln Y in the water: 1.386/(1.386 + 0.2) = 0.874. */
    @Test
    void restlessWaterTakesFromIt() {
        assertThat(worth(even(99, 99, 99), rockAndWater(0.2)).separation()).isCloseTo(1.386 / 1.586, within(0.03));
        assertThat(worth(even(99, 99, 99), rockAndWater(0.6)).separation()).isCloseTo(1.386 / 1.986, within(0.06));
    }

    @Test
    void withoutContrastNothingStandsOff() {
        assertThat(worth(even(99, 99, 99), picture(0.3f, 0.3f, 0.3f)).separation())
                .isZero();
    }

    /** What the picture keeps is told as the contrast of a sine: amplitude/√2 over the mean, between the two blurs. */
    @Test
    void whatIsLeftIsTheLocalContrast() {
        float[] sine = new float[WIDTH * HEIGHT];
        float[] mask = new float[WIDTH * HEIGHT];
        for (int p = 0; p < sine.length; p++) {
            sine[p] = (float) (0.4 + 0.1 * Math.sin(Math.PI / 2 * (p % WIDTH) + 0.3));
            mask[p] = p / WIDTH >= HEIGHT / 2 ? 1 : 0;
        }
        // blurs of 0.128 and 1.28 px leave exp(−(π σ/2)²/2) of a period of 4 px: 0.98 and 0.133
        double band = Math.exp(-0.0202) - Math.exp(-2.021);
        assertThat(LeftSeen.of(sine, WIDTH, HEIGHT, mask)).isCloseTo(band * 0.1 / Math.sqrt(2) / 0.4, within(0.012));
        float[] turned = sine.clone();
        for (int p = 0; p < sine.length; p++) {
            turned[p] = 0.8f - sine[p];
        }
        assertThat(Standing.between(WIDTH, HEIGHT, sine, turned, mask)).isZero();
        assertThat(Standing.between(WIDTH, HEIGHT, sine, sine, new float[WIDTH * HEIGHT]))
                .isZero();
        assertThat(LeftSeen.of(new float[WIDTH * HEIGHT], WIDTH, HEIGHT, mask)).isZero();
        assertThatThrownBy(() -> LeftSeen.of(sine, WIDTH, 7, mask)).hasMessageContaining("64 × 7");
    }

    private static RgbPicture rockAndWater(double checks) {
        RgbPicture picture = RgbPicture.black(WIDTH, HEIGHT);
        int edge = edge();
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            int row = p / WIDTH;
            double wave = Math.exp((p + row) % 2 == 0 ? checks : -checks);
            float light = (float) (row >= edge ? 0.1 : 0.4 * wave);
            for (int c = 0; c < 3; c++) {
                picture.plane(c)[p] = light;
            }
        }
        return picture;
    }

    /** First row of rock, as the model by rows tells it. */
    private static int edge() {
        byte[] labels = survey(even(99, 99, 99)).regions().labels();
        int row = 0;
        while (labels[row * WIDTH] != Kind.FIXED.column()) {
            row++;
        }
        return row;
    }

    private static Worth worth(Clip clip, RgbPicture shown) {
        Preview preview = new Preview() {
            @Override
            public Exposure render(double seconds) {
                return new Exposure(seconds, shown, new float[WIDTH * HEIGHT], false, 1);
            }

            @Override
            public double lengthSeconds() {
                return 1;
            }

            @Override
            public int framesFor(double seconds) {
                return 1;
            }

            @Override
            public RgbPicture base(double seconds) {
                return shown;
            }

            @Override
            public int baseFrame(double seconds) {
                return -1;
            }
        };
        return new Worth.Meter(Measurement.of(survey(clip), Work.alone()), preview).at(8);
    }

    private static ViewSurvey survey(Clip clip) {
        return ViewSurvey.of(clip, Strokes.none(), Coast.model(), Work.alone());
    }

    private static RgbPicture picture(float red, float green, float blue) {
        RgbPicture picture = RgbPicture.black(WIDTH, HEIGHT);
        Arrays.fill(picture.red(), red);
        Arrays.fill(picture.green(), green);
        Arrays.fill(picture.blue(), blue);
        return picture;
    }

    private static Clip even(int red, int green, int blue) {
        byte[] frame = new byte[3 * WIDTH * HEIGHT];
        for (int p = 0; p < frame.length; p += 3) {
            frame[p] = (byte) red;
            frame[p + 1] = (byte) green;
            frame[p + 2] = (byte) blue;
        }
        double[] times = new double[6];
        List<byte[]> frames = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            times[i] = i;
            frames.add(frame);
        }
        return Clip.of(WIDTH, HEIGHT, times, frames, Clip.Coding.SRGB8);
    }
}
