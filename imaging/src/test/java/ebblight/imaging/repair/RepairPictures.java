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

    private static Repair only(
            Optional<Path> darks,
            Optional<Path> frames,
            Optional<Path> reference,
            Optional<Cast> cast,
            Optional<Cast.Area> neutral) {
        return new Repair(
                darks, frames, reference, cast, neutral, OptionalDouble.empty(), List.of(), OptionalDouble.empty());
    }

    static final Repair NOTHING =
            only(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());

    static Repair frames(Path folder) {
        return only(Optional.empty(), Optional.of(folder), Optional.empty(), Optional.empty(), Optional.empty());
    }

    static Repair reference(Path file) {
        return only(Optional.empty(), Optional.empty(), Optional.of(file), Optional.empty(), Optional.empty());
    }

    static Repair cast(Cast cast) {
        return only(Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(cast), Optional.empty());
    }

    static Repair neutral(Cast.Area area) {
        return only(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(area));
    }

    private static Repair last(OptionalDouble cornerStops, List<Dust> dust, OptionalDouble levelDegrees) {
        return new Repair(
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                cornerStops,
                dust,
                levelDegrees);
    }

    static Repair corners(double stops) {
        return last(OptionalDouble.of(stops), List.of(), OptionalDouble.empty());
    }

    static Repair dust(Dust dust) {
        return last(OptionalDouble.empty(), List.of(dust), OptionalDouble.empty());
    }

    static Repair level(double degrees) {
        return last(OptionalDouble.empty(), List.of(), OptionalDouble.of(degrees));
    }

    static Repairer.Repaired byDarks(RgbPicture picture, Path darks) throws IOException {
        Repair repair =
                only(Optional.of(darks), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        return Repairer.repair(of(picture), repair, Work.alone());
    }
}
