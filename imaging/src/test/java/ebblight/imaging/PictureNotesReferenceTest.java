package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.core.sky.Place;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the photographer says of a picture, as ExifTool reads it; JPEG by size of file; profiles there and back. */
class PictureNotesReferenceTest {

    private static final int WIDTH = 320;
    private static final int HEIGHT = 200;
    private static final PictureFacts FACTS =
            PictureFacts.of(FrameFacts.none(), OptionalDouble.of(30), 1, List.of(), "Written from a.tif");
    private static final PictureNotes NOTES = new PictureNotes(
            "Türme",
            "Dämmerung über den Türmen & <Wasser>",
            "A. Müller",
            "© 2027 A. Müller",
            List.of("sea", "Langzeit, lang"),
            Optional.empty(),
            240,
            Optional.empty());

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private CodedPicture picture = CodedPicture.srgb8(1, 1, new byte[3]);

    @BeforeEach
    void makeThePicture() {
        int[] grain = TestPictures.random(3 * WIDTH * HEIGHT, 6000, 8);
        short[] codes = new short[grain.length];
        for (int i = 0; i < codes.length; i++) {
            codes[i] = (short) (20_000 + 60 * (i / 3 % WIDTH) + grain[i]);
        }
        picture = new CodedPicture(WIDTH, HEIGHT, codes, IccProfile.srgb());
    }

    private static String told(Path file, String... tags) throws Exception {
        String[] command = new String[4 + tags.length];
        command[0] = "exiftool";
        command[1] = "-s";
        command[2] = "-G1";
        System.arraycopy(tags, 0, command, 3, tags.length);
        command[3 + tags.length] = file.toString();
        return OtherProgram.output(command).replaceAll(" +: ", "=").replaceAll("\\] +", "]");
    }

    @Test
    void exifToolReadsWhatTheyAreCalled() throws Exception {
        OtherProgram.need("ExifTool", "exiftool", "-ver");
        Path jpeg = Files.write(folder.resolve("n.jpg"), JpegWriter.encode(picture, FACTS, NOTES, 90));
        Path tiff = folder.resolve("n.tif");
        TiffWriter.write(tiff, picture, FACTS, NOTES, Work.alone());
        for (Path file : List.of(jpeg, tiff)) {
            assertThat(told(file, "-IPTC:all", "-XMP-dc:all", "-XMP-xmpRights:all", "-IFD0:all"))
                    .contains("[IPTC]Caption-Abstract=" + NOTES.caption())
                    .contains("[IPTC]CopyrightNotice=" + NOTES.copyright())
                    .contains("[IPTC]By-line=" + NOTES.creator())
                    .contains("[IPTC]ObjectName=" + NOTES.title())
                    .contains("[IPTC]Keywords=sea, Langzeit, lang")
                    .contains("[XMP-dc]Description=" + NOTES.caption())
                    .contains("[XMP-dc]Rights=" + NOTES.copyright())
                    .contains("[XMP-dc]Creator=" + NOTES.creator())
                    .contains("[XMP-dc]Title=" + NOTES.title())
                    .contains("[XMP-dc]Subject=sea, Langzeit, lang")
                    .contains("[XMP-xmpRights]Marked=True")
                    .contains("[IFD0]XResolution=240")
                    .contains("[IFD0]YResolution=240")
                    .contains("[IFD0]ResolutionUnit=inches")
                    .contains("[IFD0]Copyright=(c) 2027 A. Muller");
            assertThat(OtherProgram.output("exiftool", "-s3", "-warning", "-validate", "-a", file.toString())
                            .replace("Invalid value for IFD0 tag 0x0103 Compression", ""))
                    .doesNotContain("IPTC")
                    .doesNotContain("XMP");
        }
    }

    @Test
    void thePlaceIsWrittenOnlyWhenAsked() throws Exception {
        OtherProgram.need("ExifTool", "exiftool", "-ver");
        Place place = Place.of(-33.8587, 151.2140);
        PictureNotes known = new PictureNotes("", "", "", "", List.of(), Optional.of(place), 300, Optional.empty());
        Path tiff = folder.resolve("p.tif");
        TiffWriter.write(tiff, picture, FACTS, known, Work.alone());
        Path jpeg = Files.write(folder.resolve("p.jpg"), JpegWriter.encode(picture, FACTS, known, 90));
        for (Path file : List.of(tiff, jpeg)) {
            String[] at = OtherProgram.output("exiftool", "-n", "-s3", "-GPSLatitude", "-GPSLongitude", file.toString())
                    .strip()
                    .split("\\s+", -1);
            // the composite tags carry the sign
            assertThat(Double.parseDouble(at[0])).isCloseTo(-33.8587, within(1e-6));
            assertThat(Double.parseDouble(at[1])).isCloseTo(151.2140, within(1e-6));
            Place back = Whereabouts.of(file).orElseThrow();
            assertThat(back.latitudeDegrees()).isCloseTo(-33.8587, within(1e-6));
        }
        Path without = Files.write(folder.resolve("w.jpg"), JpegWriter.encode(picture, FACTS, NOTES, 90));
        assertThat(told(without, "-GPS:all")).isEmpty();
        assertThat(Whereabouts.of(without)).isEmpty();
    }

    @Test
    void theBestQualityThatFits() throws Exception {
        for (long most : new long[] {20_000, 40_000, 60_000}) {
            JpegWriter.Sized sized =
                    JpegWriter.atMost(picture, FACTS, NOTES, most).orElseThrow();
            assertThat(sized.bytes().length).isLessThanOrEqualTo((int) most);
            assertThat(JpegWriter.encode(picture, FACTS, NOTES, sized.quality()))
                    .isEqualTo(sized.bytes());
            assertThat(JpegWriter.encode(picture, FACTS, NOTES, sized.quality() + 1).length)
                    .isGreaterThan((int) most);
        }
        assertThat(JpegWriter.atMost(picture, FACTS, NOTES, 3000)).isEmpty();
    }

    /** Every code of 16 bits through light and back, in sRGB and in a profile of gamma 2.2. */
    @Test
    void everyCodeOfAProfileComesBack() throws Exception {
        Path wide = Path.of("/usr/share/color/icc/ghostscript/a98.icc");
        Assumptions.assumeTrue(Files.exists(wide), "no profile at " + wide);
        for (IccProfile profile : List.of(
                IccProfile.srgb(), IccProfile.read(Files.readAllBytes(wide)).orElseThrow())) {
            short[] codes = new short[3 * 65536];
            for (int i = 0; i < codes.length; i++) {
                codes[i] = (short) (i / 3);
            }
            Path file = folder.resolve("all.tif");
            TiffWriter.write(file, new CodedPicture(256, 256, codes, profile), FACTS, Work.alone());
            LightPicture read = LightPicture.read(file, Work.alone());
            assertThat(read.bits()).isEqualTo(16);
            assertThat(read.profile().bytes()).isEqualTo(profile.bytes());
            RgbPicture light = read.light();
            CodedPicture back = CodedPicture.of(light, read.profile(), Work.alone());
            for (int i = 0; i < codes.length; i++) {
                assertThat(back.code(i)).as("code").isEqualTo(i / 3);
            }
        }
    }

    /** The profile inside, byte for byte, as ExifTool takes it out. */
    @Test
    void theProfileInsideIsTheOneGiven() throws Exception {
        OtherProgram.need("ExifTool", "exiftool", "-ver");
        Path wide = Path.of("/usr/share/color/icc/ghostscript/rommrgb.icc");
        Assumptions.assumeTrue(Files.exists(wide), "no profile at " + wide);
        IccProfile profile = IccProfile.read(Files.readAllBytes(wide)).orElseThrow();
        Path file = folder.resolve("wide.tif");
        TiffWriter.write(file, new CodedPicture(WIDTH, HEIGHT, picture.codes(), profile), FACTS, NOTES, Work.alone());
        Path taken = folder.resolve("taken.icc");
        OtherProgram.output("exiftool", "-icc_profile", "-b", "-w", "%d%f.out", file.toString());
        Files.move(folder.resolve("wide.out"), taken);
        assertThat(Files.readAllBytes(taken)).isEqualTo(Files.readAllBytes(wide));
        assertThat(told(file, "-ICC_Profile:ProfileDescription", "-ICC_Profile:ColorSpaceData")
                        .toLowerCase(Locale.ROOT))
                .contains("colorspacedata=rgb")
                .contains("romm");
        // Exif 2.32, tag 40961: 1 is sRGB, 65535 anything else
        assertThat(OtherProgram.output("exiftool", "-n", "-s3", "-EXIF:ColorSpace", file.toString())
                        .strip())
                .isEqualTo("65535");
    }
}
