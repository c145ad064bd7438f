package ebblight.checks;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.numeric.Work;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.GreyPng;
import ebblight.imaging.Inputs;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.StackOptions;
import ebblight.imaging.StackResult;
import ebblight.imaging.Stacker;
import ebblight.imaging.TiffWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Written stacks read back by programs that are not ours. */
class StackReferenceTest {

    private static final int WIDTH = 120;
    private static final int HEIGHT = 80;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @Test
    void theMeanIsThatOfNumpyInLinearLightToOneCode() throws Exception {
        Assumptions.assumeTrue(runs("/usr/bin/python3", "-c", "import numpy"), "no NumPy for /usr/bin/python3");
        List<byte[]> frames = frames(12);
        StackResult result = Stacker.stack(Inputs.open(List.of(folder), 10, false), StackOptions.mean(), Work.alone());
        // The frames go to NumPy as TIFF-free raw codes, so that only the arithmetic is compared.
        Path raw = folder.resolve("codes.bin");
        try (var out = Files.newOutputStream(raw)) {
            for (byte[] frame : frames) {
                out.write(frame);
            }
        }
        Path mean = folder.resolve("mean.bin");
        String program = "import numpy as np,sys\n"
                + "a=np.fromfile(sys.argv[1],np.uint8).reshape(" + frames.size() + ",-1).astype(np.float64)/255\n"
                + "l=np.where(a<=.04045,a/12.92,((a+.055)/1.055)**2.4).mean(0)\n"
                + "c=np.where(l<=.0031308,12.92*l,1.055*l**(1/2.4)-.055)\n"
                + "np.rint(c*65535).astype('<u2').tofile(sys.argv[2])\n";
        Path script = folder.resolve("mean.py");
        Files.writeString(script, program, StandardCharsets.UTF_8);
        assertThat(runs("/usr/bin/python3", script.toString(), raw.toString(), mean.toString()))
                .isTrue();
        byte[] expected = Files.readAllBytes(mean);
        for (int i = 0; i < 3 * WIDTH * HEIGHT; i++) {
            int code = (expected[2 * i] & 0xFF) | (expected[2 * i + 1] & 0xFF) << 8;
            assertThat(Math.abs(result.picture().code(i) - code)).isLessThanOrEqualTo(1);
        }
    }

    @Test
    void theResultDoesNotDependOnTheNumberOfThreads() throws Exception {
        frames(9);
        StackResult one = Stacker.stack(Inputs.open(List.of(folder), 10, false), StackOptions.mean(), Work.alone());
        StackResult many = Stacker.stack(Inputs.open(List.of(folder), 10, false), StackOptions.mean(), parallel());
        for (int i = 0; i < 3 * WIDTH * HEIGHT; i++) {
            assertThat(many.picture().code(i)).isEqualTo(one.picture().code(i));
        }
    }

    @Test
    void otherProgramsReadTheFile() throws Exception {
        frames(4);
        StackResult result = Stacker.stack(Inputs.open(List.of(folder), 10, false), StackOptions.mean(), Work.alone());
        Path file = folder.resolve("out.tif");
        PictureFacts facts =
                PictureFacts.of(FrameFacts.none(), OptionalDouble.of(12.5), 4, List.of(Path.of("a.png")), "A stack");
        TiffWriter.write(file, result.picture(), facts, Work.alone());
        Path jpeg = folder.resolve("out.jpg");
        JpegWriter.write(jpeg, result.picture(), facts);
        Assumptions.assumeTrue(runs("exiftool", "-ver"), "no exiftool");
        for (Path each : List.of(file, jpeg)) {
            String told = output(
                    "exiftool",
                    "-s",
                    "-ExposureTime#",
                    "-Error",
                    "-Warning",
                    "-ProfileDescription",
                    "-FrameCount",
                    "-ImageWidth",
                    each.toString());
            assertThat(told)
                    .contains("ExposureTime")
                    .contains("12.5")
                    .contains("120")
                    .contains("FrameCount");
            assertThat(told)
                    .contains("ProfileDescription")
                    .doesNotContain("Error")
                    .doesNotContain("Warning");
        }
        Assumptions.assumeTrue(runs("tiffinfo", file.toString()), "no tiffinfo");
        assertThat(output("tiffinfo", file.toString()))
                .contains("Bits/Sample: 16")
                .contains("ICC Profile");
    }

    /** Random frames as PNG files in the folder. */
    private List<byte[]> frames(int count) throws Exception {
        Random random = new Random(7);
        List<byte[]> frames = new ArrayList<>();
        for (int k = 0; k < count; k++) {
            byte[] codes = new byte[3 * WIDTH * HEIGHT];
            random.nextBytes(codes);
            frames.add(codes);
            GreyPng.writeColour(folder.resolve(String.format("f%02d.png", k)), codes, WIDTH, HEIGHT);
        }
        return frames;
    }

    private static Work parallel() {
        return new Work() {
            @Override
            public boolean cancelled() {
                return false;
            }

            @Override
            public void progress(double fraction, String stage) {}

            @Override
            public void forEach(int n, IntConsumer body) {
                IntStream.range(0, n).parallel().forEach(body);
            }
        };
    }

    private static boolean runs(String... command) {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor(60, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException | InterruptedException e) {
            return false;
        }
    }

    private static String output(String... command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return text;
    }
}
