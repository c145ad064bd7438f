package ebblight.benchmarks;

import static org.bytedeco.opencv.global.opencv_imgcodecs.IMREAD_COLOR_RGB;
import static org.bytedeco.opencv.global.opencv_imgcodecs.imdecode;

import ebblight.core.numeric.Work;
import ebblight.imaging.Inputs;
import ebblight.imaging.StackOptions;
import ebblight.imaging.StackResult;
import ebblight.imaging.Stacker;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;
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

/**
 * The mean of eight JPEG frames of 24 MP in linear light against decoding them alone, by the same libjpeg-turbo. Goal:
 * 1.15 times the processor time.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 1, time = 5)
@Measurement(iterations = 3, time = 3)
public class StackBenchmark {

    private List<Path> frames = List.of();

    @Setup
    public void find() {
        frames = Footage.given().frames(Footage.Size.MP24);
    }

    @Benchmark
    public StackResult mean() throws IOException {
        return Stacker.stack(Inputs.open(frames, 0, false), StackOptions.mean(), new Cores());
    }

    /** All frames into the same memory, on all cores. */
    @Benchmark
    public int decodeAlone() {
        Work work = new Cores();
        int[] rows = new int[frames.size()];
        work.forEach(rows.length, i -> {
            try (BytePointer bytes = new BytePointer(Files.readAllBytes(frames.get(i)));
                    Mat coded = new Mat(1, (int) bytes.capacity(), opencv_core.CV_8UC1, bytes);
                    Mat decoded = imdecode(coded, IMREAD_COLOR_RGB)) {
                rows[i] = decoded.rows();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        return rows[0];
    }
}
