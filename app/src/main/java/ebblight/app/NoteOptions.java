package ebblight.app;

import ebblight.app.ask.UsageException;
import ebblight.core.sky.Place;
import ebblight.imaging.PictureNotes;
import ebblight.imaging.Whereabouts;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What a written picture says of itself. */
final class NoteOptions {

    @Option(names = "--title", paramLabel = "T", description = "Title of the picture.")
    private String title = "";

    @Option(names = "--caption", paramLabel = "T", description = "Caption, into the XMP, IPTC and Exif fields.")
    private String caption = "";

    @Option(names = "--creator", paramLabel = "NAME", description = "Who made the picture.")
    private String creator = "";

    @Option(names = "--copyright", paramLabel = "T", description = "Copyright notice.")
    private String copyright = "";

    @Option(names = "--keywords", paramLabel = "W", split = ",", description = "Keywords, with commas between.")
    private List<String> keywords = List.of();

    @Option(
            names = "--place",
            paramLabel = "keep|LAT,LON",
            description = "Write where it was taken: that of the input, or this one. Left out, no place is written.")
    private @Nullable String place;

    String title() {
        return title;
    }

    String creator() {
        return creator;
    }

    PictureNotes notes(Path input, double pixelsPerInch) throws IOException {
        return new PictureNotes(
                title,
                caption,
                creator,
                copyright,
                keywords.stream().map(String::strip).filter(w -> !w.isEmpty()).toList(),
                place(input),
                pixelsPerInch,
                Optional.empty());
    }

    private Optional<Place> place(Path input) throws IOException {
        if (place == null) {
            return Optional.empty();
        }
        if (!place.equals("keep")) {
            return Optional.of(TideCommand.place("--place", place));
        }
        Optional<Place> found = Whereabouts.of(input);
        if (found.isEmpty()) {
            throw new UsageException("--place: " + input + " does not say where it was taken; give LAT,LON");
        }
        return found;
    }
}
