package ebblight.imaging;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.lang.GeoLocation;
import com.drew.metadata.exif.GpsDirectory;
import ebblight.core.sky.Place;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** Where a picture says that it was taken. */
public final class Whereabouts {

    private Whereabouts() {}

    /** The place in the Exif of a file; empty when there is none that can be read. */
    public static Optional<Place> of(Path file) throws IOException {
        try {
            for (GpsDirectory gps :
                    ImageMetadataReader.readMetadata(file.toFile()).getDirectoriesOfType(GpsDirectory.class)) {
                GeoLocation at = gps.getGeoLocation();
                if (at != null && !at.isZero()) {
                    return Optional.of(Place.of(at.getLatitude(), at.getLongitude()));
                }
            }
        } catch (ImageProcessingException | IllegalArgumentException e) {
            return Optional.empty(); // damaged metadata count as none
        }
        return Optional.empty();
    }
}
