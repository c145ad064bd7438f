package ebblight.imaging.card;

import ebblight.imaging.OpenedPicture;
import ebblight.imaging.UnreadableInputException;
import java.nio.file.Path;
import java.util.Optional;

/**
 * The tilt of the horizon of a picture, where one is clear.
 *
 * @param degrees by which its right end lies lower
 * @param rangeDegrees either way, in which the true tilt lies about 19 times in 20
 * @param alone whether no other edge of the picture is nearly as strong
 */
public record MeasuredHorizon(double degrees, double rangeDegrees, boolean alone) {

    /** A wider range is no measured tilt: a turn by less than this is hardly seen (common practice). */
    private static final double MOST_RANGE = 0.25;

    MeasuredHorizon with(boolean standsAlone) {
        return new MeasuredHorizon(degrees, rangeDegrees, standsAlone);
    }

    /** Reads a picture; empty unless a straight edge runs across most of it and its tilt is sure. */
    public static Optional<MeasuredHorizon> of(Path picture) throws UnreadableInputException {
        try (OpenedPicture opened = OpenedPicture.open(picture)) {
            MeasuredHorizon found = HorizonTilt.measured(new CellPass(opened).run(new LonePixels(opened)));
            return found.alone && found.rangeDegrees <= MOST_RANGE ? Optional.of(found) : Optional.empty();
        }
    }
}
