package ebblight.imaging.print;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.IccProfile;
import ebblight.imaging.LightPicture;
import java.io.IOException;
import java.nio.file.Path;

/** A picture made small enough to show, in sRGB. */
public final class ScreenCopy {

    private ScreenCopy() {}

    /** The picture with its longer side of at most {@code side} pixels. */
    public static CodedPicture of(Path file, int side, Work work) throws IOException {
        LightPicture picture = LightPicture.read(file, work);
        return of(picture.light(), picture.profile(), side, work);
    }

    /** The same of a picture in memory, which stays as it is only where it is larger than wanted. */
    public static CodedPicture of(RgbPicture light, IccProfile profile, int side, Work work) {
        double scale = Math.min(1, (double) side / Math.max(light.width(), light.height()));
        RgbPicture small = Resized.to(
                light,
                (int) Math.max(1, Math.round(scale * light.width())),
                (int) Math.max(1, Math.round(scale * light.height())),
                work);
        Converted.to(small, profile, IccProfile.srgb(), work);
        return CodedPicture.of(small, IccProfile.srgb(), work);
    }
}
