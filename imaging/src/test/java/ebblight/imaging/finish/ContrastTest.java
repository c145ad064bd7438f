package ebblight.imaging.finish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.imaging.IccProfile;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Laws of grades, tones, lens filters and toning. */
class ContrastTest {

    @Test
    void gradesKeepBlackMiddleAndWhite() {
        for (double grade = 0; grade <= 5; grade += 0.5) {
            Grade curve = Grade.of(grade);
            assertThat(curve.lightness(0)).isCloseTo(0, within(1e-4));
            assertThat(curve.lightness(50)).isCloseTo(50, within(1e-4));
            assertThat(curve.lightness(100)).isCloseTo(100, within(1e-4));
            double last = -1;
            for (double l = 0; l <= 100; l += 0.1) {
                assertThat(curve.lightness(l)).isGreaterThan(last);
                last = curve.lightness(l);
            }
        }
    }

    /** Ranges of ISO 6846 as handbooks give them (from memory): R110 for grade 2, R70 for 4, R150 for 0. */
    @Test
    void slopeInTheMiddleIsTheRatioOfTheRanges() {
        double[][] known = {{0, 110.0 / 150}, {2, 1}, {3, 110.0 / 90}, {4, 110.0 / 70}, {5, 110.0 / 50}};
        for (double[] each : known) {
            Grade curve = Grade.of(each[0]);
            assertThat((curve.lightness(50.5) - curve.lightness(49.5))).isCloseTo(each[1], within(0.003));
        }
    }

    @Test
    void tonesNeverChangePlaces() {
        for (double shadows = -1.5; shadows <= 1.5; shadows += 0.5) {
            for (double lights = -1.5; lights <= 1.5; lights += 0.5) {
                float[] table = new Tone(shadows, lights).table();
                assertThat(Tone.at(table, 0)).isCloseTo(0, within(1e-6)); // middle grey stays
                for (int i = 1; i < table.length; i++) {
                    assertThat(table[i]).isGreaterThanOrEqualTo(table[i - 1]);
                }
            }
        }
        assertThat(Tone.at(new Tone(1, 0).table(), -5)).isCloseTo(-4, within(1e-5));
        assertThat(Tone.at(new Tone(0, -1).table(), 2.47)).isCloseTo(1.47, within(0.02));
    }

    /** White keeps its tone; what the filter passes gets lighter, what it holds back darker. */
    @Test
    void aRedFilterDarkensTheBlueSky() {
        double[] seen = {0.2126, 0.7152, 0.0722};
        double[] red = new LensFilter(0, 3).weights(seen);
        assertThat(red[0] + red[1] + red[2]).isCloseTo(1, within(1e-9));
        double skyBefore = 0.2 * seen[0] + 0.35 * seen[1] + 0.7 * seen[2];
        double skyAfter = 0.2 * red[0] + 0.35 * red[1] + 0.7 * red[2];
        assertThat(skyAfter).isLessThan(0.8 * skyBefore);
        // a factor of 3 weakens white light to a third
        assertThat((red[0] + red[1] + red[2]) / 3).isCloseTo(1 / 3.0, within(1e-9));
        assertThat(new LensFilter(30, 1).weights(seen)).containsExactly(seen, within(1e-9));
        assertThatThrownBy(() -> new LensFilter(120, 30).weights(seen))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("factor")
                .hasMessageContaining("at most");
    }

    @Test
    void toningLeavesBlackAndWhite() {
        double[][] table = new Toning(70, 10, 250, 5).table(100);
        assertThat(table[0][0]).isZero();
        assertThat(table[1][0]).isZero();
        assertThat(table[0][100]).isCloseTo(0, within(1e-9));
        // shadows towards 70°, lights towards 250°, the opposite
        assertThat(table[1][25]).isPositive();
        assertThat(table[1][90]).isNegative();
    }

    /** Three patches of one lightness come apart; a grey picture has one colour and stays as it is. */
    @Test
    void coloursOfOneLightnessComeApart() {
        List<OwnColour> colours = List.of(
                new OwnColour(50, 0, 0, 0.4, 0), new OwnColour(50, 5, 40, 0.3, 0), new OwnColour(50, 0, -40, 0.3, 0));
        List<OwnColour> apart = OwnColours.separated(colours);
        assertThat(apart.get(1).stops()).isGreaterThan(0.3); // the warm one lighter
        assertThat(apart.get(2).stops()).isLessThan(-0.3);
        assertThat(OwnColours.separated(List.of(new OwnColour(40, 0, 1, 1, 0)))
                        .get(0)
                        .stops())
                .isZero();
    }

    @Test
    void asManyColoursAsThePictureHas() {
        Colours space = Colours.of(IccProfile.srgb());
        assertThat(OwnColours.of(TestScenes.grey(60, 40, new float[2400]), space))
                .hasSize(1);
        assertThat(OwnColours.of(TestScenes.scene(240, 160, 4), space).size()).isBetween(2, 4);
    }
}
