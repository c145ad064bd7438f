package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What can be asked for: the limits as the messages state them. */
class SettingsRequestTest {

    private static SettingsRequest request(double bias, double from, double to, int filters, int maxStack) {
        List<Filter> bag = Collections.nCopies(filters, Filter.parse("3"));
        return new SettingsRequest(
                Asked.meter(10),
                bias,
                from,
                to,
                bag,
                maxStack,
                Camera.standard(),
                ChangingLight.steady(),
                Reciprocity.none(),
                Optional.empty());
    }

    @ParameterizedTest
    @CsvSource({
        "10, 1, 1, 12, 4, ''",
        "-10, 1, 2, 0, 0, ''",
        "0, 0, 1, 1, 1, shutter time",
        "0, 2, 1, 1, 1, shutter time",
        "0, NaN, 1, 1, 1, shutter time",
        "10.1, 1, 1, 1, 1, 10 stops either way",
        "-10.1, 1, 1, 1, 1, 10 stops either way",
        "NaN, 1, 1, 1, 1, 10 stops either way",
        "0, 1, 1, 1, -1, 0 to 4 filters",
        "0, 1, 1, 1, 5, 0 to 4 filters",
        "0, 1, 1, 13, 1, at most 12 filters"
    })
    void aRequestLiesWithinWhatCanBe(double bias, double from, double to, int filters, int maxStack, String refused) {
        if (refused.isEmpty()) {
            assertThatCode(() -> request(bias, from, to, filters, maxStack)).doesNotThrowAnyException();
        } else {
            assertThatThrownBy(() -> request(bias, from, to, filters, maxStack))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining(refused);
        }
    }

    @Test
    void depthRunsFromNearToFar() {
        assertThatCode(() -> new SettingsRequest.Depth(2, 2)).doesNotThrowAnyException();
        assertThatCode(() -> new SettingsRequest.Depth(2, Double.POSITIVE_INFINITY))
                .doesNotThrowAnyException();
        assertThatThrownBy(() -> new SettingsRequest.Depth(0, 5)).hasMessageContaining("above 0 m");
        assertThatThrownBy(() -> new SettingsRequest.Depth(6, 5)).hasMessageContaining("not beyond farthest");
    }

    /** The middle of 2 to 32 s in stops is 8 s: two stops from either end. */
    @Test
    void theAimIsTheMiddleInStops() {
        assertThat(request(0, 2, 32, 0, 1).aimSeconds()).isCloseTo(8, within(1e-12));
        assertThat(request(0, 5, 5, 0, 1).aimSeconds()).isCloseTo(5, within(1e-12));
    }
}
