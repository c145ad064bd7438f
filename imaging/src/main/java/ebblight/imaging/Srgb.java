package ebblight.imaging;

/** The curve by which screens expect light to be written (IEC 61966-2-1). */
public final class Srgb {

    private Srgb() {}

    /** Code value, 0 to 1, of linear light; light outside 0 to 1 is clipped. */
    public static double code(double linear) {
        return TransferCurve.SRGB.toCode(linear);
    }
}
