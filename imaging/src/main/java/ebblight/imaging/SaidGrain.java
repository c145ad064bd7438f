package ebblight.imaging;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.ImageProcessingException;
import com.drew.metadata.xmp.XmpDirectory;
import ebblight.imaging.grain.Grain;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;

/** The noise that a stack wrote into its XMP. */
final class SaidGrain {

    private SaidGrain() {}

    /** What the file says; empty when it says nothing that can be meant. */
    static Optional<Grain> of(Path file) throws IOException {
        try {
            for (XmpDirectory xmp :
                    ImageMetadataReader.readMetadata(file.toFile()).getDirectoriesOfType(XmpDirectory.class)) {
                Map<String, String> said = xmp.getXmpProperties();
                String slope = said.get("ebblight:noiseSlope");
                String floor = said.get("ebblight:noiseFloor");
                if (slope != null && floor != null) {
                    return Optional.of(
                            new Grain(Double.parseDouble(slope), Double.parseDouble(floor), "the frames of the stack"));
                }
            }
        } catch (ImageProcessingException | IllegalArgumentException e) {
            return Optional.empty(); // damaged metadata count as none
        }
        return Optional.empty();
    }
}
