package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

class SettingsPropertyTest {

    @Property(tries = 100)
    void solvingThenExposingGivesBackTheLight(
            @ForAll @DoubleRange(min = 0.01, max = 30) double metered,
            @ForAll @DoubleRange(min = 0.5, max = 500) double wanted,
            @ForAll @DoubleRange(min = -0.3, max = 0.3) double fading) {
        ChangingLight light = new ChangingLight(fading);
        for (Choice choice : SettingsSolver.solve(request(metered, wanted, light, "3", "6", "10"))
                .choices()) {
            // the forward calculation, written anew: light of the open time against light asked for
            double ev = new MeterReading(8, metered, 100).exposureValue100();
            double asked = choice.fNumber() * choice.fNumber() * 100 / choice.iso() * Math.pow(2, choice.stops() - ev);
            double error = Math.log(light.gathered(choice.correctedSeconds()) / asked) / Math.log(2);
            assertThat(choice.errorStops()).isCloseTo(error, within(1e-9));
            assertThat(Math.abs(error)).isLessThan(choice.timed() ? 0.35 : 1e-9);
        }
    }

    @Property(tries = 50)
    void theOrderOfFiltersDoesNotMatter(
            @ForAll @DoubleRange(min = 0.01, max = 5) double metered,
            @ForAll @DoubleRange(min = 0.5, max = 200) double wanted) {
        SettingsAnswer one = SettingsSolver.solve(request(metered, wanted, ChangingLight.steady(), "3", "6", "10"));
        SettingsAnswer other = SettingsSolver.solve(request(metered, wanted, ChangingLight.steady(), "10", "3", "6"));
        assertThat(one.choices().stream().map(Choice::totalCost).toList())
                .isEqualTo(other.choices().stream().map(Choice::totalCost).toList());
    }

    private static SettingsRequest request(double metered, double wanted, ChangingLight light, String... bag) {
        return new SettingsRequest(
                new MeterReading(8, metered, 100),
                0,
                wanted,
                wanted,
                List.of(bag).stream().map(Filter::parse).toList(),
                2,
                Camera.standard(),
                light,
                Reciprocity.none(),
                Optional.empty());
    }
}
