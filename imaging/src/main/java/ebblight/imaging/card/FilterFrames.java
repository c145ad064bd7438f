package ebblight.imaging.card;

import ebblight.core.exposure.ChangingLight;
import ebblight.core.exposure.Exposure;
import ebblight.core.exposure.FilterPair;
import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Quantiles;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.OpenedPicture;
import ebblight.imaging.RawAs;
import ebblight.imaging.UnreadableInputException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads pairs of one view without and with a filter, and what light did between them. */
public final class FilterFrames {

    private static final int BLOCKS_ACROSS = 6;
    private static final int BLOCKS_DOWN = 4;
    /** Where nothing tells how the light changed: common practice of a low sun, one standard deviation. */
    private static final double UNKNOWN_STOPS_PER_MINUTE = 0.1;
    /** How well a given rate or the line between two frames is known. */
    private static final double GIVEN_STOPS_PER_MINUTE = 0.02;

    private static final double UNEVEN = 0.1;
    /** Blades and amplifiers set twice, in stops (common practice). */
    private static final double OTHER_APERTURE = 0.05;

    private static final double OTHER_ISO = 0.05;
    /** What the tone curve of a camera's JPEG adds per stop by which the two pictures differ in brightness. */
    private static final double TONE = 0.02;
    /** When nothing stood still and moving parts had to do. */
    private static final double MOVING = 0.1;

    private final List<String> warnings = new ArrayList<>();

    private record Read(Path file, ColourCells cells, Exposure exposure, OptionalDouble opens, boolean linear) {
        double middle() {
            return opens.orElse(0) + exposure.seconds() / 2;
        }
    }

    /**
     * Reads a pair.
     *
     * @param after a frame without the filter that was taken after the pair
     * @param fadingStopsPerMinute by which the light faded, when it was measured otherwise
     */
    public FilterPair pair(Path without, Path with, Optional<Path> after, OptionalDouble fadingStopsPerMinute)
            throws UnreadableInputException {
        Read clear = read(without);
        Read filtered = read(with);
        boolean[] still = still(clear, filtered);
        double light;
        double lightRange;
        double minutes = minutes(clear, filtered);
        if (after.isPresent()) {
            Read last = read(after.get());
            double total = change(clear, last);
            double span = last.middle() - clear.middle();
            boolean timed = clear.opens.isPresent() && filtered.opens.isPresent() && last.opens.isPresent();
            double share = timed && span > 0 ? (filtered.middle() - clear.middle()) / span : 0.5;
            light = share * total;
            lightRange = Math.hypot(UNEVEN * total, timed ? 0 : total / 4);
        } else if (fadingStopsPerMinute.isPresent()) {
            ChangingLight changing = new ChangingLight(fadingStopsPerMinute.getAsDouble());
            double opened = opens(clear, filtered);
            light = -fadingStopsPerMinute.getAsDouble() * opened / 60
                    + changing.meanStops(filtered.exposure.seconds())
                    - changing.meanStops(clear.exposure.seconds());
            lightRange = GIVEN_STOPS_PER_MINUTE * Math.abs(minutes);
        } else {
            light = 0;
            lightRange = UNKNOWN_STOPS_PER_MINUTE * Math.abs(minutes);
            if (lightRange > 0.02) {
                warnings.add(with.getFileName() + ": the light may have changed in the "
                        + Math.round(60 * minutes) + " s between the frames; a frame without the filter afterwards"
                        + " (--after) or the rate of fading (--fading) narrows the range");
            }
        }
        return sampled(clear, filtered, still, light, lightRange);
    }

    /** What could be said against the pairs. */
    public List<String> warnings() {
        return List.copyOf(warnings);
    }

    /** Seconds from the opening of the first to that of the second; unknown: it followed at once. */
    private static double opens(Read first, Read second) {
        return first.opens.isPresent() && second.opens.isPresent()
                ? second.opens.getAsDouble() - first.opens.getAsDouble()
                : first.exposure.seconds();
    }

    private static double minutes(Read first, Read second) {
        return (opens(first, second) + (second.exposure.seconds() - first.exposure.seconds()) / 2) / 60;
    }

    private Read read(Path file) throws UnreadableInputException {
        try (OpenedPicture picture = OpenedPicture.open(file, RawAs.DEVELOPED)) {
            FrameFacts facts = picture.facts();
            Exposure exposure = Exposure.fromFile(
                    needed(file, "exposure time", facts.exposureSeconds()),
                    needed(file, "f-number", facts.fNumber()),
                    needed(file, "ISO", facts.isoSpeed()));
            boolean linear = picture.bits() == 16;
            return new Read(file, ColourCells.of(picture), exposure, picture.takenSeconds(), linear);
        }
    }

    private static double needed(Path file, String name, OptionalDouble value) throws UnreadableInputException {
        return value.orElseThrow(() -> new UnreadableInputException(
                file, "does not say its " + name + " (Exif); give the file as it came from the camera"));
    }

    private boolean[] still(Read clear, Read filtered) throws UnreadableInputException {
        if (clear.cells.width() != filtered.cells.width() || clear.cells.height() != filtered.cells.height()) {
            throw new UnreadableInputException(
                    filtered.file, "has another size than " + clear.file.getFileName() + "; pairs show one view");
        }
        return StillCells.of(clear.cells, filtered.cells);
    }

    /** Stops by which the scene had become brighter, from two frames without the filter. */
    private double change(Read before, Read after) throws UnreadableInputException {
        boolean[] still = still(before, after);
        double[] ratios = new double[still.length];
        int n = 0;
        for (int i = 0; i < still.length; i++) {
            if (still[i]) {
                ratios[n++] = Powers.log2(after.cells.light(1, i) / before.cells.light(1, i));
            }
        }
        if (n < FilterPair.LEAST_PARTS) {
            throw new UnreadableInputException(
                    after.file, "shows too little that stands still as in " + before.file.getFileName());
        }
        return Quantiles.median(ratios, n) - after.exposure.stopsOver(before.exposure);
    }

    private FilterPair sampled(Read clear, Read filtered, boolean[] still, double light, double lightRange)
            throws UnreadableInputException {
        double extra = 0;
        boolean[] used = still;
        if (count(still) < 4 * FilterPair.LEAST_PARTS) {
            used = new boolean[still.length];
            for (int i = 0; i < used.length; i++) {
                used[i] = clear.cells.known(i) && filtered.cells.known(i);
            }
            extra = MOVING;
            warnings.add(filtered.file.getFileName() + ": hardly anything with a pattern stands still; all of the"
                    + " picture was used, and the range is wider");
        }
        int n = count(used);
        if (n < FilterPair.LEAST_PARTS) {
            throw new UnreadableInputException(
                    filtered.file,
                    "shares too little with " + clear.file.getFileName() + " that is neither clipped nor black in both"
                            + " pictures; expose both alike");
        }
        float[][] ratio = new float[3][n];
        int[] block = new int[n];
        float[] radius = new float[n];
        double[] levels = new double[n];
        int w = clear.cells.width();
        int h = clear.cells.height();
        int at = 0;
        for (int i = 0; i < used.length; i++) {
            if (used[i]) {
                for (int c = 0; c < 3; c++) {
                    ratio[c][at] = (float) Powers.log2(filtered.cells.light(c, i) / clear.cells.light(c, i));
                }
                levels[at] = ratio[1][at];
                int x = i % w;
                int y = i / w;
                block[at] = y * BLOCKS_DOWN / h * BLOCKS_ACROSS + x * BLOCKS_ACROSS / w;
                radius[at++] =
                        (float) (Math.hypot(x + 0.5 - w / 2.0, y + 0.5 - h / 2.0) / Math.hypot(w / 2.0, h / 2.0));
            }
        }
        return new FilterPair(
                filtered.exposure.stopsOver(clear.exposure),
                light,
                lightRange,
                Math.sqrt(settings(clear, filtered, Quantiles.median(levels, n)) + extra * extra),
                ratio,
                block,
                radius);
    }

    /** Variance of what the settings and the tone curve may add. */
    private double settings(Read clear, Read filtered, double levelStops) {
        double variance = 0;
        if (clear.exposure.fNumber() != filtered.exposure.fNumber()) {
            variance += OTHER_APERTURE * OTHER_APERTURE;
            warnings.add(filtered.file.getFileName()
                    + ": the apertures differ, so that the lens's own vignetting counts as the filter's");
        }
        if (clear.exposure.iso() != filtered.exposure.iso()) {
            variance += OTHER_ISO * OTHER_ISO;
        }
        double tone = clear.linear && filtered.linear ? 0 : TONE * levelStops;
        return variance + tone * tone;
    }

    private static int count(boolean[] flags) {
        int n = 0;
        for (boolean flag : flags) {
            n += flag ? 1 : 0;
        }
        return n;
    }
}
