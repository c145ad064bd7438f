package ebblight.imaging.raw;

/** What the two processes say to each other over the worker's standard streams, in big-endian order. */
final class Wire {

    /** Begins every request and every answer: whatever native code prints in between is noticed. */
    static final int MARK = 0x45425241;

    /** Request: develop. Then the length of the file and its bytes. Answer: width, height, samples. */
    static final int DEVELOP = 1;

    /**
     * Request: tell how it was taken. Then the file as above. Answer: exposure time in seconds, f-number, ISO, focal
     * length in millimetres (float), seconds from 1970 on the camera's clock (long), maker and model; 0 for unknown.
     */
    static final int FACTS = 2;

    /** Request: the sensor's mosaic. Then the file as above. Answer: what {@link RawMosaic} holds, in its order. */
    static final int MOSAIC = 3;

    static final int DONE = 0;
    /** The answer is a sentence that continues the file's name. */
    static final int REFUSED = 1;

    /** Bytes handed on at a time. */
    static final int PIECE = 1 << 16;

    private Wire() {}
}
