package ebblight.imaging;

/** What is taken of a RAW file. */
public enum RawAs {
    /** The JPEG that the camera put into it: fast, often reduced; the file is developed only where there is none. */
    EMBEDDED,
    /** The sensor's light, developed in full: linear, ProPhoto primaries, the camera's white balance. */
    DEVELOPED
}
