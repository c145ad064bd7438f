package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ebblight.core.numeric.Work;
import ebblight.imaging.raw.RawDeveloper;
import ebblight.imaging.raw.RawMosaic;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.bytedeco.opencv.opencv_core.Mat;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Means of mosaics, reopened by LibRaw, against what LibRaw makes of the camera's own files. */
class MosaicStackReferenceTest {

    private static final List<String> BAYER = List.of("CRW_0101.CRW", "CRW_0304.CRW", "tinydng_colorchart.dng");

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @BeforeEach
    void needLibRaw() throws Exception {
        OtherProgram.need("dcraw_emu (Debian: libraw-bin)", "sh", "-c", "command -v dcraw_emu");
    }

    private static RawMosaic mosaic(Path file) throws IOException {
        return RawDeveloper.shared().mosaic(ReadableFile.bytes(file));
    }

    private static PackedFrame developed(Path file) throws IOException {
        try (Mat memory = new Mat()) {
            return PictureReader.decode(file, ReadableFile.bytes(file), RawAs.DEVELOPED, memory)
                    .ofItsOwn();
        }
    }

    /** The mosaic of one frame, written and opened again, develops to the same picture within rounding. */
    @Test
    void aMeanOfOneFrameDevelopsAsTheFrameItself() throws Exception {
        for (String name : BAYER) {
            Path file = OtherProgram.shared("raw").resolve(name);
            Path dng = folder.resolve(name + ".dng");
            StackResult result =
                    MosaicStack.stack(Inputs.open(List.of(file), 0, false, RawAs.DEVELOPED), dng, true, Work.alone());
            PackedFrame camera = developed(file);
            CodedPicture ours = result.picture();
            assertThat(ours.width()).as(name).isEqualTo(camera.width());
            assertThat(ours.height()).as(name).isEqualTo(camera.height());
            int[] off = new int[camera.samples()];
            for (int i = 0; i < off.length; i++) {
                off[i] = Math.abs(ours.code(i) - camera.code(i));
            }
            Arrays.sort(off);
            assertThat(off[off.length / 100 * 99]).as(name + ", 99 of 100").isLessThanOrEqualTo(2);
        }
    }

    /** Two frames that differ by an even number everywhere: their mean is the frame between, sample by sample. */
    @Test
    void theMeanIsTakenSampleBySample() throws Exception {
        RawMosaic m = mosaic(OtherProgram.shared("raw").resolve(BAYER.get(0)));
        Path frames = Files.createDirectory(folder.resolve("frames"));
        for (int sign = -1; sign <= 1; sign += 2) {
            short[] samples = m.samples().clone();
            for (int i = 0; i < samples.length; i++) {
                samples[i] = (short) (500 + i % 300 + sign * (i % 7));
            }
            DngWriter.write(frames.resolve("f" + sign + ".dng"), with(m, samples), FrameFacts.none(), 1);
        }
        Path mean = folder.resolve("mean.dng");
        StackResult result =
                MosaicStack.stack(Inputs.open(List.of(frames), 0, false, RawAs.DEVELOPED), mean, false, Work.alone());
        assertThat(result.frames()).isEqualTo(2);
        short[] told = mosaic(mean).samples();
        int scale = 65535 / m.white();
        for (int i = 0; i < told.length; i++) {
            assertThat(told[i] & 0xFFFF).isEqualTo(scale * (500 + i % 300));
        }
    }

    private static RawMosaic with(RawMosaic m, short[] samples) {
        return new RawMosaic(
                m.width(),
                m.height(),
                m.colours(),
                m.black(),
                m.white(),
                m.flip(),
                m.cameraGains(),
                m.daylightGains(),
                m.toSrgb(),
                m.camera(),
                samples);
    }

    /** ExifTool, which reads DNG by itself. */
    @Test
    void whatTheFileSaysOfItselfIsReadByAnother() throws Exception {
        OtherProgram.need("ExifTool", "exiftool", "-ver");
        Path dng = folder.resolve("m.dng");
        Path file = OtherProgram.shared("raw").resolve(BAYER.get(0));
        MosaicStack.stack(Inputs.open(List.of(file), 0, false, RawAs.DEVELOPED), dng, true, Work.alone());
        String told = OtherProgram.output(
                "exiftool",
                "-T",
                "-PhotometricInterpretation",
                "-CFAPattern2",
                "-DNGVersion",
                "-Model",
                "-Software",
                "-Warning",
                "-validate",
                dng.toString());
        assertThat(told.strip()).startsWith("Color Filter Array\t0 1 1 2\t1.4.0.0\tPowerShot S40\tEbblight");
    }

    @Test
    void framesThatDoNotBelongTogetherAreNamedAndOblongPixelsRefused() throws Exception {
        Path raws = OtherProgram.shared("raw");
        List<Path> mixed = List.of(raws.resolve(BAYER.get(0)), raws.resolve(BAYER.get(1)), raws.resolve("P003908.KDC"));
        StackResult result = MosaicStack.stack(
                Inputs.open(mixed, 0, false, RawAs.DEVELOPED), folder.resolve("x.dng"), false, Work.alone());
        assertThat(result.frames()).isEqualTo(1);
        assertThat(result.skipped()).hasSize(2);
        Path other = Files.writeString(folder.resolve("mine.dng"), "a file of yours");
        assertThatThrownBy(() -> MosaicStack.stack(
                        Inputs.open(mixed.subList(0, 1), 0, false, RawAs.DEVELOPED), other, false, Work.alone()))
                .hasMessageContaining("is there already");
        assertThat(other).hasContent("a file of yours");
    }
}
