package ebblight.core.motion;

import ebblight.core.numeric.RgbPicture;

/** What an exposure of any time will look like, in colour at survey width. */
public interface Preview {

    /**
     * One exposure.
     *
     * @param seconds exposure time
     * @param picture linear light, at survey width
     * @param detail by how much structure finer than a survey pixel is to be multiplied, 0 to 1 a pixel
     * @param fromFrames true when the picture is a plain mean of the first {@link #framesFor} frames
     * @param knownFraction share of the picture that the frames themselves show: 1 up to their length; beyond, the part of
     *     the streaks that starts inside the frame
     */
    record Exposure(double seconds, RgbPicture picture, float[] detail, boolean fromFrames, double knownFraction) {}

    /** Longest exposure in seconds that the frames show themselves. */
    double lengthSeconds();

    /** Number of frames whose mean is an exposure of {@code seconds}, 1 or more. */
    int framesFor(double seconds);

    /** The exposure of {@code seconds}, above 0. */
    Exposure render(double seconds);

    /**
     * The picture that the full-size picture of {@code seconds} starts from, at survey size: what {@link #render} made
     * its exposure of when that is no mean of frames.
     */
    RgbPicture base(double seconds);

    /** Index of the frame that {@link #base} is, or −1 when it is the mean of all. */
    int baseFrame(double seconds);
}
