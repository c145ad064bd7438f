package ebblight.imaging.repair;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.IccProfile;
import ebblight.imaging.LightPicture;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.TiffWriter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Pictures for the tests of repairs, in linear light. */
final class RepairPictures {

    static final IccProfile LINEAR = IccProfile.srgb().linear();

    private RepairPictures() {}

    /** Writes 16-bit codes of linear light, and no exposure time. */
    static void writeLinear(Path file, int[] codes, int width, int height) throws IOException {
        writeLinear(file, codes, width, height, OptionalDouble.empty());
    }

    static void writeLinear(Path file, int[] codes, int width, int height, OptionalDouble seconds) throws IOException {
        short[] data = new short[codes.length];
        for (int i = 0; i < data.length; i++) {
            data[i] = (short) codes[i];
        }
        PictureFacts facts = PictureFacts.of(FrameFacts.none(), seconds, 1, List.of(), "test picture");
        TiffWriter.write(file, new CodedPicture(width, height, data, LINEAR), facts, Work.alone());
    }

    static void write(Path file, RgbPicture picture) throws IOException {
        PictureFacts facts = PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "test picture");
        TiffWriter.write(file, CodedPicture.of(picture, LINEAR, Work.alone()), facts, Work.alone());
    }

    static LightPicture of(RgbPicture picture) {
        return new LightPicture(picture, LINEAR, 16, FrameFacts.none(), Optional.empty(), List.of());
    }

    static Repair nothing() {
        return new Repair(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                List.of(),
                OptionalDouble.empty());
    }

    static Repairer.Repaired byDarks(RgbPicture picture, Path darks) throws IOException {
        Repair repair = new Repair(
                Optional.of(darks),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                List.of(),
                OptionalDouble.empty());
        return Repairer.repair(of(picture), repair, Work.alone());
    }
}
