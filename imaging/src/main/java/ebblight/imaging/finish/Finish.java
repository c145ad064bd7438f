package ebblight.imaging.finish;

import java.util.List;
import java.util.Optional;

/**
 * What is done to a picture, in this order: grain, level, crop, exposure, black and white, parts, tone and local contrast,
 * grade, edges, toning.
 *
 * @param levelDegrees by which the picture is turned clockwise, −45 to 45
 * @param exposureStops −5 to 5, in linear light
 * @param parts that are printed lighter or darker than the rest
 * @param grade 0 soft to 5 hard, 2 unchanged
 * @param localContrastStops −1 to 1: detail is multiplied by two to this power
 * @param grain how much of the measured noise is taken out, 0 to 2; 1 is as much as was measured
 * @param printWidthCentimetres of the picture where no paper is given
 */
public record Finish(
        double levelDegrees,
        Crop crop,
        double exposureStops,
        Tone tone,
        List<Part> parts,
        double grade,
        Optional<Monochrome> blackAndWhite,
        Toning toning,
        double localContrastStops,
        double grain,
        Optional<Sharpness> sharpness,
        Optional<Double> printWidthCentimetres) {

    public static final double UNCHANGED_GRADE = 2;

    /** Nothing done. */
    public static final Finish UNTOUCHED = new Finish(
            0,
            new Crop.Whole(),
            0,
            new Tone(0, 0),
            List.of(),
            UNCHANGED_GRADE,
            Optional.empty(),
            Toning.NONE,
            0,
            0,
            Optional.empty(),
            Optional.empty());

    /**
     * A part of the picture.
     *
     * @param region its name, or a kind of parts
     * @param stops by which it is lighter, −3 to 3
     */
    public record Part(String region, double stops) {
        public Part {
            if (!(Math.abs(stops) <= 3)) {
                throw new IllegalArgumentException("must lie between −3 and 3 stops, was " + stops);
            }
        }

        /** What a photographer calls it. */
        String word() {
            return switch (region) {
                case "flowing" -> "water";
                case "drifting" -> "cloud";
                case "swaying" -> "branch";
                case "fixed" -> "rock";
                default -> region;
            };
        }
    }

    public Finish {
        parts = List.copyOf(parts);
        check("level", levelDegrees, -45, 45);
        check("exposure", exposureStops, -5, 5);
        check("grade", grade, 0, 5);
        check("localContrast", localContrastStops, -1, 1);
        check("grain", grain, 0, 2);
        printWidthCentimetres.ifPresent(w -> check("printWidthCentimetres", w, 1, 1000));
        if (sharpness.isPresent() && printWidthCentimetres.isEmpty() && !(crop instanceof Crop.Paper)) {
            throw new IllegalArgumentException(
                    "sharpness: the size of the print is not known;" + " give crop.paper or printWidthCentimetres");
        }
    }

    private static void check(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(name + ": must lie between " + low + " and " + high + ", was " + value);
        }
    }

    /** Width of the picture on paper, in centimetres, where it is known. */
    public Optional<Double> pictureCentimetres() {
        return crop instanceof Crop.Paper p ? Optional.of(p.pictureWidth()) : printWidthCentimetres;
    }

    boolean changesTones() {
        return exposureStops != 0
                || !tone.untouched()
                || !parts.isEmpty()
                || grade != UNCHANGED_GRADE
                || localContrastStops != 0
                || blackAndWhite.isPresent()
                || sharpness.isPresent();
    }

    /** The same where nobody knows where parts lie. */
    public Finish withoutParts() {
        return parts.isEmpty() ? this : with(List.of(), grade, grain);
    }

    /** The same with another grade and grain left: for test strips, which are small. */
    Finish withGrade(double other) {
        return with(parts, other, 0);
    }

    private Finish with(List<Part> parts, double grade, double grain) {
        return new Finish(
                levelDegrees,
                crop,
                exposureStops,
                tone,
                parts,
                grade,
                blackAndWhite,
                toning,
                localContrastStops,
                grain,
                sharpness,
                printWidthCentimetres);
    }
}
