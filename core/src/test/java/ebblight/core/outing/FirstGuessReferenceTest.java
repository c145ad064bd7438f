package ebblight.core.outing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.sky.CameraView;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Speeds of clouds and periods of waves against worked values of the reference tables, section "Cloud, wind, waves". */
class FirstGuessReferenceTest {

    @ParameterizedTest
    @CsvSource({
        "1000, 10, 20, 11.758, 4.021, 13.68, 4.68",
        "2000, 10, 30, 8.594, 4.297, 10.0, 5.0",
        "2000, 10, 90, 17.189, 17.189, 20.0, 20.0",
        "9000, 40, 20, 5.226, 1.787, 6.08, 2.08"
    })
    void cloudsCrossTheSky(
            double base, double wind, double elevation, double across, double along, double fast, double slow) {
        CloudLayer layer = new CloudLayer(base, wind);
        assertThat(layer.acrossDegreesPerMinute(elevation)).isCloseTo(across, within(1e-3));
        assertThat(layer.alongDegreesPerMinute(elevation)).isCloseTo(along, within(1e-3));
        CameraView view = new CameraView(270, 0, 24, 36, 24);
        // pixels of 6 µm
        assertThat(CloudLayer.millimetresPerSecond(layer.acrossDegreesPerMinute(elevation), view) / 0.006)
                .isCloseTo(fast, within(0.006));
        assertThat(CloudLayer.millimetresPerSecond(layer.alongDegreesPerMinute(elevation), view) / 0.006)
                .isCloseTo(slow, within(0.006));
    }

    /** Stewart, Introduction to Physical Oceanography, eqs 16.29 to 16.33. */
    @ParameterizedTest
    @CsvSource({"5, 3.75, 0.56", "7.5, 5.62, 1.27", "10, 7.50, 2.25", "15, 11.24, 5.07"})
    void wavesFollowTheWind(double wind, double period, double height) {
        WindSea sea = new WindSea(wind);
        // the table was computed with rounder constants: a hundredth
        assertThat(sea.periodSeconds()).isCloseTo(period, within(0.01));
        assertThat(sea.heightMetres()).isCloseTo(height, within(0.01));
    }

    /** Common practice: the surf of a long swell is mist at one to four minutes; lake ripples still show at 2 s. */
    @Test
    void guessesAgreeWithCommonPractice() {
        FirstGuess.Limit mist = FirstGuess.water(12).get(2);
        assertThat(mist.word()).isEqualTo("mist");
        assertThat(mist.seconds()).isBetween(60.0, 240.0);
        FirstGuess.Limit silky =
                FirstGuess.water(new WindSea(3).periodSeconds()).get(1);
        assertThat(silky.seconds()).isBetween(2.0, 4.0);
        assertThat(silky.low()).isLessThan(silky.seconds());
    }

    /** At 24 mm on 36 × 24 mm: a level view's sky has its middle at atan(6/24) = 14.04°. */
    @Test
    void cloudsAreSharpUpToATimeAndStreakedFromAnother() {
        CameraView view = new CameraView(270, 0, 24, 36, 24);
        assertThat(CloudLayer.elevationDegrees(view)).isCloseTo(14.036, within(1e-3));
        FirstGuess.Limit sharp =
                FirstGuess.cloud(new CloudLayer(1000, 10), view).get(0);
        FirstGuess.Limit streaked =
                FirstGuess.cloud(new CloudLayer(1000, 10), view).get(1);
        // 43.27/1500 mm at 10 m/s · sin 14.036° / 1000 m · 24 mm = 0.0582 mm/s: 0.496 s; 1.8 mm: 30.9 s
        assertThat(sharp.low()).isCloseTo(0.4956, within(1e-3));
        assertThat(streaked.low()).isCloseTo(30.93, within(0.02));
        assertThat(streaked.high()).isCloseTo(30.93 / 0.24254, within(0.1));
    }

    @Test
    void whatCannotBeIsRefused() {
        assertThatThrownBy(() -> new CloudLayer(0, 10)).hasMessageContaining("50 to 20000");
        assertThatThrownBy(() -> new WindSea(0)).hasMessageContaining("0.5 to 40");
        assertThatThrownBy(() -> CloudLayer.Usual.of("pink")).hasMessageContaining("low, middle or high");
        assertThatThrownBy(() -> FirstGuess.water(0)).hasMessageContaining("30 s");
    }
}
