package ebblight.benchmarks;

import ebblight.core.exposure.Camera;
import ebblight.core.exposure.ChangingLight;
import ebblight.core.exposure.Filter;
import ebblight.core.exposure.MeterReading;
import ebblight.core.exposure.Reciprocity;
import ebblight.core.exposure.SettingsAnswer;
import ebblight.core.exposure.SettingsRequest;
import ebblight.core.exposure.SettingsSolver;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Settings for a shutter time with six filters in the bag. Goal: 1 ms. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
public class SettingsBenchmark {

    private final SettingsRequest request = new SettingsRequest(
            MeterReading.parse("f/11 1/30 ISO100"),
            0,
            20,
            60,
            Stream.of("1", "2", "3", "6", "10", "16").map(Filter::parse).toList(),
            3,
            Camera.standard(),
            ChangingLight.steady(),
            Reciprocity.none(),
            Optional.of(new SettingsRequest.Depth(1.2, 200)));

    @Benchmark
    public SettingsAnswer sixFilters() {
        return SettingsSolver.solve(request);
    }
}
