package ebblight.imaging;

import ebblight.core.numeric.RgbPicture;
import java.io.IOException;
import java.nio.file.Path;

/** Single pictures as linear light. */
public final class PictureFile {

    private PictureFile() {}

    /** A picture in linear light of its own primaries, reduced to {@code width} pixels by area means. */
    public static RgbPicture linearAt(Path file, int width) throws IOException {
        DecodedFrame frame = PictureReader.decode(file, ReadableFile.bytes(file));
        int w = Math.min(width, frame.width());
        int h = Math.max(1, (int) Math.round((double) frame.height() * w / frame.width()));
        byte[] light = new AreaMean(frame.width(), frame.height(), w, h).linear16(frame);
        RgbPicture picture = RgbPicture.black(w, h);
        for (int i = 0; i < 3 * w * h; i++) {
            picture.plane(i % 3)[i / 3] = ((light[2 * i] & 0xFF) | (light[2 * i + 1] & 0xFF) << 8) / 65535f;
        }
        return picture;
    }
}
