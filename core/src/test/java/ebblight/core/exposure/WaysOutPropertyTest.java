package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;

/** Where no setting reaches the time, each way out does, tried by the forward calculation. */
class WaysOutPropertyTest {

    @Property(tries = 60)
    void inTooMuchLightEveryWayReachesTheTime(
            @ForAll @DoubleRange(min = 13, max = 16) double exposureValue,
            @ForAll @DoubleRange(min = 60, max = 900) double wanted) {
        SettingsRequest request = request(exposureValue, wanted, "3");
        SettingsAnswer answer = SettingsSolver.solve(request);
        assertThat(answer.choices()).isEmpty();
        assertThat(answer.ways().size()).isGreaterThanOrEqualTo(3);
        double missing = way(answer, WayOut.Kind.FILTER).stops();
        // f/22 and ISO 100 behind 3 stops, and what is missing
        double longest = 512 * Math.pow(2, 3 - exposureValue);
        assertThat(longest * Math.pow(2, missing)).isCloseTo(wanted, within(1e-6 * wanted));
        List<Filter> more = new ArrayList<>(request.bag());
        more.add(new Filter("other", Filter.Kind.NEUTRAL, missing, 0, true));
        assertThat(solved(request, exposureValue, wanted, more).choices()).isNotEmpty();
        double darker = exposureValue - way(answer, WayOut.Kind.WAIT).stops();
        assertThat(solved(request, darker, wanted, request.bag()).choices()).isNotEmpty();
        assertThat(Math.pow(2, way(answer, WayOut.Kind.BURST).stops()) * longest)
                .isCloseTo(wanted, within(1e-6 * wanted));
    }

    @Property(tries = 60)
    void inTooLittleLightEveryWayReachesTheTime(
            @ForAll @DoubleRange(min = -6, max = -2) double exposureValue,
            @ForAll @DoubleRange(min = 0.01, max = 0.2) double wanted) {
        SettingsRequest request = request(exposureValue, wanted);
        SettingsAnswer answer = SettingsSolver.solve(request);
        assertThat(answer.choices()).isEmpty();
        assertThat(answer.ways().size()).isGreaterThanOrEqualTo(3);
        // f/2.8 and ISO 6400: 2³·2⁻⁶ s at EV 0
        double shortest = Math.pow(2, -3 - exposureValue);
        double longer = wanted * Math.pow(2, way(answer, WayOut.Kind.TIME).stops());
        assertThat(longer).isCloseTo(shortest, within(1e-6 * shortest));
        assertThat(solved(request, exposureValue, longer, request.bag()).choices())
                .isNotEmpty();
        double brighter = exposureValue - way(answer, WayOut.Kind.WAIT).stops();
        assertThat(solved(request, brighter, wanted, request.bag()).choices()).isNotEmpty();
    }

    private static WayOut way(SettingsAnswer answer, WayOut.Kind kind) {
        return answer.ways().stream().filter(w -> w.kind() == kind).findFirst().orElseThrow();
    }

    private static SettingsAnswer solved(SettingsRequest like, double exposureValue, double seconds, List<Filter> bag) {
        return SettingsSolver.solve(new SettingsRequest(
                new MeterReading(1, Math.pow(2, -exposureValue), 100),
                0,
                seconds,
                seconds,
                bag,
                like.maxStack(),
                like.camera(),
                like.light(),
                like.reciprocity(),
                like.depth()));
    }

    private static SettingsRequest request(double exposureValue, double seconds, String... bag) {
        return new SettingsRequest(
                new MeterReading(1, Math.pow(2, -exposureValue), 100),
                0,
                seconds,
                seconds,
                List.of(bag).stream().map(Filter::parse).toList(),
                2,
                Camera.standard(),
                ChangingLight.steady(),
                Reciprocity.none(),
                Optional.empty());
    }
}
