package ebblight.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.RgbPicture;
import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SensorReferenceTest {

    /**
     * Signal to noise of the linear camera model of EMVA 1288 with 3 electrons of dark noise, worked outside the project
     * with its noise of quantisation (⅓ of an electron squared, left out here: 0.25 % at 60 electrons).
     */
    @ParameterizedTest
    @CsvSource({"60, 7.2058", "600, 24.3066", "6000, 77.3995"})
    void signalToNoiseIsThatOfTheLinearCameraModel(double electrons, double signalToNoise) {
        double level = electrons / 12_000;
        assertThat(level / Math.sqrt(new Sensor(100).variance(level)))
                .isCloseTo(signalToNoise, within(0.003 * signalToNoise));
    }

    /**
     * A grey field's codes, read with the curve of IEC 61966-2-1 (constants from memory), scatter as the model says; the
     * rounding to codes adds a twelfth of a step squared.
     */
    @ParameterizedTest
    @CsvSource({"0.2, 100", "0.05, 100", "0.2, 800"})
    void theCodesScatterAsTheModelSays(double level, double iso) {
        Sensor sensor = new Sensor(iso);
        RgbPicture grey = RgbPicture.black(200, 200);
        for (int c = 0; c < 3; c++) {
            Arrays.fill(grey.plane(c), (float) level);
        }
        double sum = 0;
        double squares = 0;
        byte[] codes = sensor.srgb8(grey, 77);
        for (byte code : codes) {
            double v = linear((code & 0xFF) / 255.0);
            sum += v;
            squares += v * v;
        }
        double mean = sum / codes.length;
        double code = 255 * (1.055 * Math.pow(level, 1 / 2.4) - 0.055);
        double step = linear((code + 0.5) / 255) - linear((code - 0.5) / 255);
        double expected = sensor.variance(level) + step * step / 12;
        assertThat(mean).isCloseTo(level, within(0.004 * level));
        assertThat(squares / codes.length - mean * mean).isCloseTo(expected, within(0.04 * expected));
    }

    private static double linear(double v) {
        return v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
    }
}
