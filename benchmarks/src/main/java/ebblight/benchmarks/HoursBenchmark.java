package ebblight.benchmarks;

import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import com.grack.nanojson.JsonWriter;
import ebblight.app.plan.WishesFile;
import ebblight.core.numeric.Work;
import ebblight.engine.Blobs;
import ebblight.engine.Engine;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** All windows of a year, to the minute, in which sun, tide and light are as wished. Goal: 1 s. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 2)
public class HoursBenchmark {

    private static final String WISHES =
            """
            {"schema": "wishes/1", "at": "48.65,-2.03", "zone": "Europe/Paris", "from": "2027-01-01",
             "to": "2028-01-01", "station": "nearest", "minMinutes": 20, "sunAltitude": [-6, 5],
             "tideMetres": [4, 9], "tideDirection": "falling", "ev100": [2, 11]}""";

    private String request = "";

    @Setup
    public void read() throws IOException, JsonParserException {
        request = JsonWriter.string(WishesFile.request(JsonParser.object().from(WISHES), Path.of("")));
    }

    @Benchmark
    public String sunTideAndLightOverAYear() {
        return new Engine().answer(request, new Blobs(), Work.alone());
    }
}
