package ebblight.imaging;

import ebblight.core.motion.Clip;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A source at survey size, with what the answers must say of the source itself.
 *
 * @param clip frames of 480 px width or less
 * @param cut which part of the source the clip shows
 * @param sourceWidth width of a source frame, upright
 * @param sourceHeight height of a source frame, upright
 * @param sourceFrames frames of the source, byte-identical repeats left out
 * @param framesPerSecond of the source: (n − 1) / (last − first)
 * @param medianGapSeconds median time between source frames
 * @param sourceIndices which source frame each frame of the clip is
 * @param exposureSeconds exposure time of each frame of the clip, when known
 * @param cutOff true when a longer source was cut to what a survey takes
 */
public record SurveyFrames(
        Clip clip,
        ViewCut cut,
        int sourceWidth,
        int sourceHeight,
        int sourceFrames,
        double framesPerSecond,
        double medianGapSeconds,
        int[] sourceIndices,
        List<OptionalDouble> exposureSeconds,
        boolean cutOff) {}
