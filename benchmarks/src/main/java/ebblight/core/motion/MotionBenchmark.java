package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.demo.Sensor;
import ebblight.demo.View;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
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

/**
 * The kernels of measuring on the demo's coast: 10 s at survey width, 12 frames a second, one thread. In the package of
 * the kernels because they are not for others.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 2)
@Measurement(iterations = 3, time = 2)
public class MotionBenchmark {

    private static final int WIDTH = 480;
    private static final int FRAMES = 120;
    private static final double RATE = 12;

    private final Work work = Work.alone();
    private int width;
    private int height;
    private float[] mean = {};
    private float[] destination = {};
    private float[] workspace = {};
    private float[] all = {};
    private float[][] meanColour = {};
    private @Nullable Clip clip;
    private @Nullable LuminanceFrames frames;
    private @Nullable NoiseModel noise;
    private @Nullable PixelSeries series;
    private @Nullable FrameAligner aligner;
    private FrameAligner.@Nullable Scratch scratch;

    @Setup
    public void film() {
        View view = Coast.evening().view(WIDTH, work);
        Sensor sensor = new Sensor(100);
        width = view.width();
        height = view.height();
        List<byte[]> shots = new ArrayList<>();
        double[] times = new double[FRAMES];
        for (int i = 0; i < FRAMES; i++) {
            times[i] = i / RATE;
            RgbPicture light = view.frame(times[i]);
            shots.add(sensor.srgb8(light, i));
        }
        Clip filmed = Clip.of(width, height, times, shots, Clip.Coding.SRGB8);
        LuminanceFrames luminance = LuminanceFrames.of(filmed, work);
        clip = filmed;
        frames = luminance;
        mean = luminance.mean(0, FRAMES);
        meanColour = Moments.of(filmed, luminance.drift().gain(), work).mean();
        noise = NoiseModel.of(luminance, mean);
        all = new float[width * height];
        Arrays.fill(all, 1);
        series = PixelSeries.where(all, luminance.all(), times);
        aligner = FrameAligner.of(luminance.frame(FRAMES / 2), width, height, all);
        scratch = aligner.scratch();
        destination = new float[width * height];
        workspace = new float[width * height];
    }

    @Benchmark
    public Object variogramOfTenThousandPixels() {
        return Variogram.of(given(series), 1e-5);
    }

    @Benchmark
    public Object regionFeatures() {
        return RegionFeatures.of(given(frames), mean, given(noise), meanColour, work);
    }

    @Benchmark
    public Object alignmentOfOneFrame() {
        return given(aligner).align(given(frames).frame(0), Placement.HERE, given(scratch));
    }

    @Benchmark
    public float[] gaussianOf3Pixels() {
        Blur.gaussian(mean, destination, workspace, width, height, 3);
        return destination;
    }

    @Benchmark
    public float[] gaussianOf25Pixels() {
        Blur.gaussian(mean, destination, workspace, width, height, 25);
        return destination;
    }

    @Benchmark
    public Object luminanceOfAllFrames() {
        return LuminanceFrames.of(given(clip), work);
    }

    @Benchmark
    public Object noiseModel() {
        return NoiseModel.of(given(frames), mean);
    }

    private static <T> T given(@Nullable T value) {
        return Objects.requireNonNull(value);
    }
}
