package ebblight.benchmarks;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.PreviewPicture;
import ebblight.app.ask.SurveyRequest;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.Inputs;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.PreviewMeans;
import ebblight.imaging.SurveyReader;
import java.io.IOException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
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

/** The picture at a time not asked for before, 1280 px wide, of a clip that was measured. Goal: 50 ms. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 3)
@Measurement(iterations = 4, time = 2)
public class PreviewBenchmark {

    private static final int WIDTH = 1280;
    private static final double THIRD_OF_A_STOP = Math.cbrt(2);
    private static final double LONGEST_SECONDS = 960;

    private final Work work = new Cores();
    private @Nullable SurveyRequest request;
    private @Nullable PreviewMeans means;
    private double within = 1;
    private double beyond = 2 * Footage.CLIP_SECONDS;

    @Setup
    public void measure() throws IOException {
        SurveyRequest read = SurveyRequest.read(
                Inputs.open(List.of(Footage.given().clip()), 0, true), SurveyReader.SURVEY_WIDTH, null, work);
        JsonObject answer = ask(read, 2 * Footage.CLIP_SECONDS);
        double[] nodes = new double[20];
        for (int k = 0; k < nodes.length; k++) {
            nodes[k] = Math.pow(THIRD_OF_A_STOP, k - 9);
        }
        means = PreviewMeans.of(
                read.source(),
                WIDTH,
                nodes,
                PreviewPicture.placements(answer),
                read.frames().sourceIndices(),
                read.frames().clip().width(),
                work);
        request = read;
    }

    /** A time that the frames themselves give. */
    @Benchmark
    public RgbPicture withinTheClip() {
        within = within < 0.8 * Footage.CLIP_SECONDS ? within * THIRD_OF_A_STOP : 0.13;
        return picture(within);
    }

    /** A time beyond the clip, predicted and laid over the mean of the frames. */
    @Benchmark
    public RgbPicture beyondTheClip() {
        return picture(nextBeyond());
    }

    /** The same as the page gets it. */
    @Benchmark
    public byte[] beyondTheClipAsJpeg() throws IOException {
        PictureFacts facts = new PictureFacts(
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                1,
                List.of(),
                "");
        return JpegWriter.encode(CodedPicture.srgb(picture(nextBeyond()), work), facts);
    }

    private double nextBeyond() {
        beyond = beyond < LONGEST_SECONDS ? beyond * THIRD_OF_A_STOP : 1.5 * Footage.CLIP_SECONDS;
        return beyond;
    }

    private RgbPicture picture(double seconds) {
        SurveyRequest asked = Objects.requireNonNull(request);
        PreviewMeans known = Objects.requireNonNull(means);
        JsonObject answer = ask(asked, seconds);
        return PreviewPicture.fromFrames(answer)
                ? known.at(seconds)
                : PreviewPicture.laidOver(known.ofAll(), asked.blobs(), answer, asked.frames(), work);
    }

    private JsonObject ask(SurveyRequest asked, double seconds) {
        return asked.ask("preview/1", PreviewPicture.withPictures(new JsonObject(), seconds + "s"), work);
    }
}
