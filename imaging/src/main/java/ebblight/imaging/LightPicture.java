package ebblight.imaging;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.grain.Grain;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A picture file as linear light at full size.
 *
 * @param light in the primaries of {@code profile}, 1 = the file's white
 * @param profile of the file; sRGB where it has none that can be read, ProPhoto for RAW
 * @param bits of a sample in the file, 8 or 16
 * @param facts what the file says of how it was taken
 * @param grain noise of the picture, where it says so itself
 * @param warnings what could not be read
 */
public record LightPicture(
        RgbPicture light,
        IccProfile profile,
        int bits,
        FrameFacts facts,
        Optional<Grain> grain,
        List<String> warnings) {

    /** Reads a JPEG, PNG or TIFF, or develops a RAW, upright. */
    public static LightPicture read(Path file, Work work) throws IOException {
        FrameFacts facts = ReadableFile.facts(file);
        byte[] bytes = ReadableFile.bytes(file);
        PackedFrame frame = PictureReader.decode(file, bytes, RawAs.DEVELOPED);
        List<String> warnings = new ArrayList<>(facts.warnings());
        // developed light has another curve in memory than the profile it is written with
        IccProfile profile = PictureReader.isRaw(file) ? frame.profile().forWriting() : frame.profile();
        boolean unread =
                IccBytes.of(bytes).filter(icc -> IccProfile.read(icc).isEmpty()).isPresent();
        if (unread) {
            warnings.add("the colour profile inside is not of the RGB matrix kind; sRGB was assumed");
        }
        int w = frame.width();
        RgbPicture light = RgbPicture.black(w, frame.height());
        float[] linear = frame.profile().curve().table(frame.bits());
        work.forEach(frame.height(), y -> {
            int[][] row = frame.rowMemory();
            frame.rows().read(y, row[0], row[1], row[2]);
            for (int c = 0; c < 3; c++) {
                float[] plane = light.plane(c);
                for (int x = 0; x < w; x++) {
                    plane[y * w + x] = linear[row[c][x]];
                }
            }
        });
        return new LightPicture(light, profile, frame.bits(), facts, SaidGrain.of(file), List.copyOf(warnings));
    }
}
