package ebblight.app;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.core.sky.Place;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.IccProfile;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.PictureNotes;
import ebblight.imaging.TiffWriter;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;

/** A picture with a blue sky over a warm shore, as a 16-bit TIFF that says where it was taken. */
final class TestScene {

    static final Place PLACE = Place.of(48.65, -2.03);

    private TestScene() {}

    static Path write(Path file, int width, int height) throws IOException {
        RgbPicture picture = RgbPicture.black(width, height);
        SplittableRandom dice = new SplittableRandom(11);
        for (int p = 0; p < width * height; p++) {
            boolean sky = p / width < height / 2;
            double light = sky ? 0.3 + 0.3 * p / (width * height) : 0.08 + 0.04 * Math.sin(p % width / 3.0);
            double grain = 0.004 * dice.nextDouble();
            picture.red()[p] = (float) (light * (sky ? 0.6 : 1.3) + grain);
            picture.green()[p] = (float) (light * 0.9 + grain);
            picture.blue()[p] = (float) (light * (sky ? 1.4 : 0.5) + grain);
        }
        PictureNotes where = new PictureNotes("", "", "", "", List.of(), Optional.of(PLACE), 300, Optional.empty());
        TiffWriter.write(
                file,
                CodedPicture.of(picture, IccProfile.srgb(), Work.alone()),
                PictureFacts.of(FrameFacts.none(), OptionalDouble.of(30), 1, List.of(), "test scene"),
                where,
                Work.alone());
        return file;
    }
}
