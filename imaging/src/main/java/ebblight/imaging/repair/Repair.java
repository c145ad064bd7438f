package ebblight.imaging.repair;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What to repair; what is left out is not looked at.
 *
 * @param darks a dark frame or a folder of them, for hot pixels and glow
 * @param frames folder of frames of several views, for hot pixels without a dark frame
 * @param reference the same view without the leaked light
 * @param cast what the filter lets through
 * @param neutral part of the picture that is grey, in place of {@code cast}
 * @param cornerStops light that the corners lack against the middle, −4 to 4 stops
 * @param dust specks to spot out
 * @param levelDegrees clockwise, −45 to 45
 */
public record Repair(
        Optional<Path> darks,
        Optional<Path> frames,
        Optional<Path> reference,
        Optional<Cast> cast,
        Optional<Cast.Area> neutral,
        OptionalDouble cornerStops,
        List<Dust> dust,
        OptionalDouble levelDegrees) {

    public Repair {
        if (!(Math.abs(cornerStops.orElse(0)) <= 4)) {
            throw new IllegalArgumentException("vignetting must be -4 to 4 stops, was " + cornerStops.getAsDouble());
        }
        if (!(Math.abs(levelDegrees.orElse(0)) <= 45)) {
            throw new IllegalArgumentException("level must be -45 to 45 degrees, was " + levelDegrees.getAsDouble());
        }
        if (cast.isPresent() && neutral.isPresent()) {
            throw new IllegalArgumentException("cast: give either gains or a neutral area, not both");
        }
    }
}
