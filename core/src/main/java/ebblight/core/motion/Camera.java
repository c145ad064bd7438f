package ebblight.core.motion;

/**
 * What the camera itself did during a clip.
 *
 * @param verdict what follows from it
 * @param rmsPixels root mean square over the frames of the movement at the picture's edge against the middle frame, in
 *     survey pixels, before correction
 * @param largestPixels the largest such movement
 */
public record Camera(Verdict verdict, double rmsPixels, double largestPixels) {

    /** RMS movement up to this share of the width is a tripod's. */
    private static final double STILL = 0.0006;

    /** A movement beyond this share of the width cannot be put right. */
    private static final double TOO_FAR = 0.08;

    private static final double ENOUGH_AGREEMENT = 0.5;
    private static final double ENOUGH_STILL_AREA = 0.05;

    /** An empty sky and still water in the dark hold a frame by 1.1 to 1.4 across the line between them, rock by 10 and more. */
    private static final double ENOUGH_HOLD = 3;

    /** What is done about it. */
    public enum Verdict {
        /** It stood still. */
        STILL,
        /** It moved, and the frames were put back in place. */
        CORRECTED,
        /** It moved too far for anything to be measured. */
        REFUSED,
        /** Too little stands still in the picture to tell; the frames are used as they are. */
        UNSURE
    }

    static Camera judge(CameraTrack track, int width) {
        double sum = 0;
        double largest = 0;
        for (Placement q : track.placements()) {
            double d = q.atEdge(width);
            sum += d * d;
            largest = Math.max(largest, d);
        }
        double rms = Math.sqrt(sum / track.placements().length);
        boolean sure = track.agreement() >= ENOUGH_AGREEMENT
                && track.stillArea() >= ENOUGH_STILL_AREA
                && track.hold() >= ENOUGH_HOLD;
        Verdict verdict = !sure
                ? Verdict.UNSURE
                : rms <= STILL * width
                        ? Verdict.STILL
                        : largest <= TOO_FAR * width ? Verdict.CORRECTED : Verdict.REFUSED;
        return new Camera(verdict, rms, largest);
    }
}
