package ebblight.imaging;

import ebblight.core.sky.Place;
import ebblight.imaging.grain.Grain;
import java.util.List;
import java.util.Optional;

/**
 * What the photographer wants a written picture to say, and how large it is meant; empty texts are left out of the file.
 *
 * @param place where it was taken, only when it may be known
 * @param pixelsPerInch on paper
 * @param grain noise of the picture, where it was measured on its frames
 */
public record PictureNotes(
        String title,
        String caption,
        String creator,
        String copyright,
        List<String> keywords,
        Optional<Place> place,
        double pixelsPerInch,
        Optional<Grain> grain) {

    /** Nothing to say, 300 pixels an inch. */
    public static final PictureNotes NONE =
            new PictureNotes("", "", "", "", List.of(), Optional.empty(), 300, Optional.empty());

    /** Nothing to say but how much noise there is. */
    public static PictureNotes of(Optional<Grain> grain) {
        return new PictureNotes("", "", "", "", List.of(), Optional.empty(), 300, grain);
    }

    public PictureNotes {
        keywords = List.copyOf(keywords);
        if (!(pixelsPerInch >= 1 && pixelsPerInch <= 100_000)) {
            throw new IllegalArgumentException("pixels per inch must lie between 1 and 100000, was " + pixelsPerInch);
        }
    }
}
