package ebblight.imaging.print;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.ColorConvertOp;
import java.awt.image.DataBufferUShort;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/**
 * A profile of any kind, a printer's above all, through the LittleCMS of the JDK in 16 bits. The JDK always takes the
 * tables of one intent: the wanted ones are put in their place inside the profile first.
 */
public final class PrinterProfile {

    private static final int HEADER = 128;
    private static final int CONNECTION_XYZ = ColorSpace.CS_CIEXYZ;

    /** How colours that paper cannot show are brought to it (ICC.1:2010, 6.2). */
    public enum Intent {
        PERCEPTUAL('0'),
        RELATIVE('1'),
        SATURATION('2'),
        /** As relative, and the white of the paper shown. */
        ABSOLUTE('1');

        private final char table;

        Intent(char table) {
            this.table = table;
        }

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }

        public static Optional<Intent> of(String word) {
            return Arrays.stream(values()).filter(i -> i.word().equals(word)).findFirst();
        }
    }

    private final byte[] bytes;
    private final ICC_Profile profile;

    private PrinterProfile(byte[] bytes, ICC_Profile profile) {
        this.bytes = bytes;
        this.profile = profile;
    }

    /** Reads a profile; empty when it is none, or one between other spaces than a device's and the connection's. */
    public static Optional<PrinterProfile> read(byte[] bytes) {
        try {
            ICC_Profile profile = ICC_Profile.getInstance(bytes);
            int kind = profile.getProfileClass();
            boolean device = kind == ICC_Profile.CLASS_OUTPUT
                    || kind == ICC_Profile.CLASS_DISPLAY
                    || kind == ICC_Profile.CLASS_COLORSPACECONVERSION;
            return device ? Optional.of(new PrinterProfile(bytes, profile)) : Optional.empty();
        } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    /** Inks, or 3 for red, green, blue. */
    public int channels() {
        return profile.getNumComponents();
    }

    public boolean rgb() {
        return profile.getColorSpaceType() == ColorSpace.TYPE_RGB;
    }

    byte[] bytes() {
        return bytes;
    }

    /** What the profile calls itself; empty when it does not say. */
    public String name() {
        byte[] said = profile.getData(ICC_Profile.icSigProfileDescriptionTag);
        if (said == null || said.length < 12) {
            return "";
        }
        ByteBuffer b = ByteBuffer.wrap(said);
        String type = new String(said, 0, 4, StandardCharsets.US_ASCII);
        if (type.equals("desc")) {
            int length = Math.max(0, Math.min(b.getInt(8) - 1, said.length - 12));
            return new String(said, 12, length, StandardCharsets.US_ASCII).strip();
        }
        if (type.equals("mluc") && said.length >= 28) {
            int length = b.getInt(20);
            int at = b.getInt(24);
            return at >= 0 && length >= 0 && at + length <= said.length
                    ? new String(said, at, length, StandardCharsets.UTF_16BE).strip()
                    : "";
        }
        return "";
    }

    /** White of the paper as XYZ under D50; that of D50 where the profile does not say. */
    double[] white() {
        byte[] tag = profile.getData(ICC_Profile.icSigMediaWhitePointTag);
        if (tag == null || tag.length < 20) {
            return new double[] {0.9642, 1, 0.8249};
        }
        ByteBuffer b = ByteBuffer.wrap(tag);
        return new double[] {b.getInt(8) / 65536.0, b.getInt(12) / 65536.0, b.getInt(16) / 65536.0};
    }

    /** Device codes of pixels given in the codes of {@code source}, 16 bits, pixel by pixel. */
    short[] fromSource(byte[] source, short[] codes, int pixels, Intent intent) {
        return convert(ICC_Profile.getInstance(source), 3, withTables(intent), channels(), codes, pixels);
    }

    /** XYZ of device codes, 16 bits that stand for 0 to 1 + 32767/32768, relative to the paper's white. */
    short[] toXyz(short[] device, int pixels) {
        return convert(
                withTables(Intent.RELATIVE), channels(), ICC_Profile.getInstance(CONNECTION_XYZ), 3, device, pixels);
    }

    private static short[] convert(
            ICC_Profile from, int channelsFrom, ICC_Profile to, int channelsTo, short[] codes, int pixels) {
        short[] out = new short[channelsTo * pixels];
        WritableRaster source = raster(codes, channelsFrom, pixels);
        WritableRaster target = raster(out, channelsTo, pixels);
        new ColorConvertOp(new ICC_Profile[] {from, to}, null).filter(source, target);
        return out;
    }

    private static WritableRaster raster(short[] codes, int channels, int pixels) {
        int[] offsets = new int[channels];
        Arrays.setAll(offsets, i -> i);
        return Raster.createInterleavedRaster(
                new DataBufferUShort(codes, codes.length), pixels, 1, channels * pixels, channels, offsets, null);
    }

    /** The profile with the tables of an intent under the names of all intents. */
    private ICC_Profile withTables(Intent intent) {
        byte[] copy = bytes.clone();
        ByteBuffer b = ByteBuffer.wrap(copy);
        int count = b.getInt(HEADER);
        for (String way : new String[] {"A2B", "B2A"}) {
            int wanted = entry(b, count, way + intent.table);
            for (char each : new char[] {'0', '1', '2'}) {
                int other = entry(b, count, way + each);
                if (wanted >= 0 && other >= 0) {
                    b.putInt(other + 4, b.getInt(wanted + 4));
                    b.putInt(other + 8, b.getInt(wanted + 8));
                }
            }
        }
        return ICC_Profile.getInstance(copy);
    }

    /** Place of an entry of the tag table, or −1. */
    private static int entry(ByteBuffer b, int count, String name) {
        for (int k = 0; k < count; k++) {
            int at = HEADER + 4 + 12 * k;
            byte[] signature = new byte[4];
            b.get(at, signature);
            if (name.equals(new String(signature, StandardCharsets.US_ASCII))) {
                return at;
            }
        }
        return -1;
    }
}
