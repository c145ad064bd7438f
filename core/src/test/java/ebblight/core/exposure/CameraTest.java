package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a camera can be, and what can be asked of it. */
class CameraTest {

    /** The limits as the messages state them, each end of each once inside and once outside. */
    @ParameterizedTest
    @CsvSource({
        // f-numbers, ISO from, to, base, timed, sharpest, sensor, focal length
        "2.8, 22, 100, 6400, 100, 32, 5.6, 11, 36, 24, 24, ''",
        "0.5, 128, 1, 1000000, 1, 0.001, 0.5, 128, 1, 1, 1, ''",
        "0.5, 128, 1, 1000000, 1000000, 86400, 0.5, 128, 500, 500, 5000, ''",
        "8, 8, 100, 100, 100, 32, 8, 8, 36, 24, 24, ''",
        "0.4, 22, 100, 6400, 100, 32, 5.6, 11, 36, 24, 24, f-numbers",
        "2.8, 129, 100, 6400, 100, 32, 5.6, 11, 36, 24, 24, f-numbers",
        "22, 2.8, 100, 6400, 100, 32, 5.6, 11, 36, 24, 24, f-numbers",
        "2.8, 22, 100, 6400, 100, 32, 11, 5.6, 36, 24, 24, sharpest",
        "2.8, 22, 0.9, 6400, 100, 32, 5.6, 11, 36, 24, 24, ISO",
        "2.8, 22, 100, 1000001, 100, 32, 5.6, 11, 36, 24, 24, ISO",
        "2.8, 22, 100, 6400, 99, 32, 5.6, 11, 36, 24, 24, base ISO",
        "2.8, 22, 100, 6400, 6401, 32, 5.6, 11, 36, 24, 24, base ISO",
        "2.8, 22, 100, 6400, 100, 0.0009, 5.6, 11, 36, 24, 24, timed limit",
        "2.8, 22, 100, 6400, 100, 86401, 5.6, 11, 36, 24, 24, timed limit",
        "2.8, 22, 100, 6400, 100, 32, 5.6, 11, 0.9, 24, 24, sensor width",
        "2.8, 22, 100, 6400, 100, 32, 5.6, 11, 501, 24, 24, sensor width",
        "2.8, 22, 100, 6400, 100, 32, 5.6, 11, 36, 501, 24, sensor height",
        "2.8, 22, 100, 6400, 100, 32, 5.6, 11, 36, NaN, 24, sensor height",
        "2.8, 22, 100, 6400, 100, 32, 5.6, 11, 36, 24, 5001, focal length"
    })
    void aCameraLiesWithinWhatCanBe(
            double widest,
            double narrowest,
            double low,
            double high,
            double base,
            double timed,
            double sharpFrom,
            double sharpTo,
            double width,
            double height,
            double focal,
            String refused) {
        ThrowingCallable make = () -> new Camera(
                widest, narrowest, low, high, base, timed, sharpFrom, sharpTo, false, width, height, focal, true);
        if (refused.isEmpty()) {
            assertThatCode(make).doesNotThrowAnyException();
        } else {
            assertThatThrownBy(make)
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith(refused);
        }
    }

    /** Common practice: an in-camera dark frame takes as long again, after exposures of a second and longer. */
    @Test
    void aDarkFrameDoublesTheWait() {
        Camera dark = new Camera(2.8, 22, 100, 6400, 100, 32, 5.6, 11, true, 36, 24, 24, true);
        assertThat(dark.busySeconds(1)).isEqualTo(2);
        assertThat(dark.busySeconds(240)).isEqualTo(480);
        assertThat(dark.busySeconds(0.5)).isEqualTo(0.5);
        assertThat(Camera.standard().busySeconds(240)).isEqualTo(240);
    }

    /** Diagonal over 1500: 43.27 mm over 1500 is 0.0288 mm (REFERENCES: optics). */
    @Test
    void theStandardCameraIsAsTheHandbooksHaveIt() {
        Camera camera = Camera.standard();
        assertThat(camera.circleMillimetres()).isCloseTo(0.0288, within(1e-4));
        assertThat(ThirdStops.fLabel(camera.widestFNumber())).isEqualTo("f/2.8");
        assertThat(ThirdStops.fLabel(camera.narrowestFNumber())).isEqualTo("f/22");
        assertThat(ThirdStops.fLabel(camera.sharpestFrom())).isEqualTo("f/5.6");
        assertThat(ThirdStops.fLabel(camera.sharpestTo())).isEqualTo("f/11");
    }
}
