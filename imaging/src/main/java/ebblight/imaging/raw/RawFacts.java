package ebblight.imaging.raw;

import java.time.LocalDateTime;
import java.util.Optional;

/**
 * What LibRaw finds in a file's head; 0 and empty for unknown.
 *
 * @param exposureSeconds exposure time
 * @param fNumber aperture
 * @param isoSpeed sensitivity
 * @param focalMillimetres focal length
 * @param taken on the camera's clock, whole seconds
 * @param camera maker and model
 */
public record RawFacts(
        float exposureSeconds,
        float fNumber,
        float isoSpeed,
        float focalMillimetres,
        Optional<LocalDateTime> taken,
        String camera) {}
