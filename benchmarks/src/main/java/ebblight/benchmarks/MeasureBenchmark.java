package ebblight.benchmarks;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.SurveyRequest;
import ebblight.imaging.Inputs;
import ebblight.imaging.SurveyFrames;
import ebblight.imaging.SurveyReader;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** A clip of 10 s in 1080p, from its file to the answer. Goal: half of what it lasts, decoding included. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 1, time = 5)
@Measurement(iterations = 2, time = 5)
public class MeasureBenchmark {

    private final Footage footage = Footage.given();

    @Benchmark
    public JsonObject measureAClip() throws IOException {
        SurveyRequest request = SurveyRequest.read(
                Inputs.open(List.of(footage.clip()), 0, true), SurveyReader.SURVEY_WIDTH, null, new Cores());
        return request.ask("measure/1", new JsonObject(), new Cores());
    }

    @Benchmark
    public SurveyFrames readAClip() throws IOException {
        return SurveyReader.read(Inputs.open(List.of(footage.clip()), 0, true), SurveyReader.SURVEY_WIDTH, new Cores());
    }
}
