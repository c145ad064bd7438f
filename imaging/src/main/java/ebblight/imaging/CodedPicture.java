package ebblight.imaging;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/** A picture as code values of red, green, blue in 16 bits, pixel by pixel, with the profile that gives them meaning. */
public final class CodedPicture {

    private final int width;
    private final int height;
    private final short[] codes;
    private final IccProfile profile;

    /** A picture over the given codes, {@code 3 · width · height} of them. */
    public CodedPicture(int width, int height, short[] codes, IccProfile profile) {
        this.width = width;
        this.height = height;
        this.codes = codes;
        this.profile = profile;
    }

    /** Linear sRGB light written with the sRGB curve. */
    public static CodedPicture srgb(RgbPicture picture, Work work) {
        return of(picture, IccProfile.srgb(), work);
    }

    /** Linear light of the primaries of {@code profile}, written with its curve; light outside 0 to 1 is clipped. */
    public static CodedPicture of(RgbPicture picture, IccProfile profile, Work work) {
        CodeTable table = CodeTable.of(profile.curve());
        int w = picture.width();
        short[] codes = new short[3 * w * picture.height()];
        work.forEach(picture.height(), y -> {
            for (int p = y * w; p < (y + 1) * w; p++) {
                for (int c = 0; c < 3; c++) {
                    codes[3 * p + c] = (short) WholeCode.nearest(table.code16(picture.plane(c)[p]));
                }
            }
        });
        return new CodedPicture(w, picture.height(), codes, profile);
    }

    /** A picture from 8-bit sRGB codes of red, green, blue, pixel by pixel. */
    public static CodedPicture srgb8(int width, int height, byte[] codes8) {
        short[] codes = new short[3 * width * height];
        for (int i = 0; i < codes.length; i++) {
            codes[i] = (short) (257 * (codes8[i] & 0xFF));
        }
        return new CodedPicture(width, height, codes, IccProfile.srgb());
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    /** The codes themselves, not a copy. */
    public short[] codes() {
        return codes;
    }

    public IccProfile profile() {
        return profile;
    }

    /** Code value of sample {@code i}, 0 to 65535. */
    public int code(int i) {
        return codes[i] & 0xFFFF;
    }
}
