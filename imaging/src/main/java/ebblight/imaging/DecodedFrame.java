package ebblight.imaging;

/**
 * A frame as its file holds it: code values of red, green, blue, pixel by pixel, in 8 or 16 bits, and the profile that
 * says what light they stand for.
 */
final class DecodedFrame {

    private final int width;
    private final int height;
    private final byte[] codes8;
    private final short[] codes16;
    private final IccProfile profile;

    private DecodedFrame(int width, int height, byte[] codes8, short[] codes16, IccProfile profile) {
        this.width = width;
        this.height = height;
        this.codes8 = codes8;
        this.codes16 = codes16;
        this.profile = profile;
    }

    static DecodedFrame of8(int width, int height, byte[] codes, IccProfile profile) {
        return new DecodedFrame(width, height, codes, new short[0], profile);
    }

    static DecodedFrame of16(int width, int height, short[] codes, IccProfile profile) {
        return new DecodedFrame(width, height, new byte[0], codes, profile);
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    int samples() {
        return 3 * width * height;
    }

    int bits() {
        return codes16.length > 0 ? 16 : 8;
    }

    IccProfile profile() {
        return profile;
    }

    byte[] codes8() {
        return codes8;
    }

    short[] codes16() {
        return codes16;
    }

    /** Code value of sample {@code i}, 0 to 255 or 0 to 65535. */
    int code(int i) {
        return codes16.length > 0 ? codes16[i] & 0xFFFF : codes8[i] & 0xFF;
    }

    /** The frame in 16 bits of another profile; light outside its gamut is clipped. */
    DecodedFrame in(IccProfile other) {
        double[] m = profile.to(other);
        float[] linear = profile.curve().table(bits());
        CodeTable encode = CodeTable.of(other.curve());
        short[] out = new short[samples()];
        for (int i = 0; i < out.length; i += 3) {
            double r = linear[code(i)];
            double g = linear[code(i + 1)];
            double b = linear[code(i + 2)];
            for (int c = 0; c < 3; c++) {
                out[i + c] = (short) Math.round(encode.code16(m[3 * c] * r + m[3 * c + 1] * g + m[3 * c + 2] * b));
            }
        }
        return of16(width, height, out, other);
    }
}
