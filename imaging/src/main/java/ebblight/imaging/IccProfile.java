package ebblight.imaging;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Optional;

/**
 * An RGB profile of the matrix kind (ICC.1:2010): the transfer curve and the primaries. Profiles that need a look-up
 * table are not read.
 */
public final class IccProfile {

    private static final int HEADER = 128;

    private static final IccProfile SRGB = ofJdk();
    private static final IccProfile PRO_PHOTO = ofPrimaries();

    private final byte[] bytes;
    private final TransferCurve curve;
    private final double[] toXyz;
    /** Whether the curve is that of the bytes. */
    private final boolean asWritten;

    private IccProfile(byte[] bytes, TransferCurve curve, double[] toXyz, boolean asWritten) {
        this.bytes = bytes;
        this.curve = curve;
        this.toXyz = toXyz;
        this.asWritten = asWritten;
    }

    /** The profile that pictures without one are taken to have. */
    public static IccProfile srgb() {
        return SRGB;
    }

    private static IccProfile ofJdk() {
        byte[] bytes = ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
        double[] matrix = matrix(bytes).orElseThrow(() -> new IllegalStateException("the JDK's sRGB has no primaries"));
        return new IccProfile(bytes, TransferCurve.SRGB, matrix, true);
    }

    /** ROMM RGB primaries (ISO 22028-2, matrix from memory) with a plain power of 1.8, as near as profiles can say it. */
    static IccProfile proPhoto() {
        return PRO_PHOTO;
    }

    private static IccProfile ofPrimaries() {
        double[] toXyz = {0.7976749, 0.1351917, 0.0313534, 0.2880402, 0.7118741, 0.0000857, 0, 0, 0.8252100};
        byte[] white = IccWriter.xyz(IccWriter.D50[0], 1, IccWriter.D50[2]);
        byte[] curve = IccWriter.powerCurve((int) Math.round(1.8 * 256));
        return read(IccWriter.matrixProfile(SRGB.bytes, "ROMM primaries, gamma 1.8", white, toXyz, curve))
                .orElseThrow(() -> new IllegalStateException("the profile that was just made cannot be read"));
    }

    /** Reads a profile; empty when it is not an RGB profile of the matrix kind. */
    public static Optional<IccProfile> read(byte[] bytes) {
        try {
            if (bytes.length < HEADER + 4
                    || !"RGB ".equals(new String(bytes, 16, 4, StandardCharsets.US_ASCII))
                    || tag(bytes, "A2B0").isPresent()) {
                return Optional.empty();
            }
            Optional<TransferCurve> curve = tag(bytes, "gTRC").flatMap(IccProfile::curve);
            Optional<double[]> matrix = matrix(bytes);
            return curve.isPresent() && matrix.isPresent()
                    ? Optional.of(new IccProfile(bytes, curve.get(), matrix.get(), true))
                    : Optional.empty();
        } catch (IndexOutOfBoundsException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** The profile as it stands in files; not a copy. */
    public byte[] bytes() {
        return bytes;
    }

    /** Linear RGB of this profile to CIE XYZ under D50 with white at Y = 1, row by row. */
    public double[] toXyz() {
        return toXyz.clone();
    }

    /** The same primaries with another curve; the bytes stay those of this profile. */
    IccProfile with(TransferCurve other) {
        return other == curve ? this : new IccProfile(bytes, other, toXyz, false);
    }

    public TransferCurve curve() {
        return curve;
    }

    /** The profile to write with: this one, or that of its bytes where the light in memory has another curve. */
    IccProfile forWriting() {
        return Arrays.equals(bytes, SRGB.bytes) ? SRGB : Arrays.equals(bytes, PRO_PHOTO.bytes) ? PRO_PHOTO : this;
    }

    boolean sameAs(IccProfile other) {
        boolean sameCurve = curve == other.curve || (asWritten && other.asWritten);
        return this == other || (sameCurve && Arrays.equals(bytes, other.bytes));
    }

    /** The other way round. */
    public double[] fromXyz() {
        return inverse(toXyz);
    }

    /** Linear RGB of this profile to linear RGB of {@code other}, row by row. */
    public double[] to(IccProfile other) {
        return product(inverse(other.toXyz), toXyz);
    }

    /** A profile of the same primaries whose code values are the light itself. */
    public IccProfile linear() {
        byte[] white = tag(bytes, "wtpt").orElseGet(() -> IccWriter.xyz(IccWriter.D50[0], 1, IccWriter.D50[2]));
        byte[] written = IccWriter.matrixProfile(bytes, "Linear light", white, toXyz, IccWriter.linearCurve());
        return new IccProfile(written, TransferCurve.LINEAR, toXyz, true);
    }

    private static Optional<byte[]> tag(byte[] bytes, String name) {
        ByteBuffer b = ByteBuffer.wrap(bytes);
        int count = b.getInt(HEADER);
        for (int k = 0; k < count; k++) {
            int entry = HEADER + 4 + 12 * k;
            if (name.equals(new String(bytes, entry, 4, StandardCharsets.US_ASCII))) {
                int at = b.getInt(entry + 4);
                return Optional.of(Arrays.copyOfRange(bytes, at, at + b.getInt(entry + 8)));
            }
        }
        return Optional.empty();
    }

    private static Optional<double[]> matrix(byte[] bytes) {
        double[] m = new double[9];
        String[] names = {"rXYZ", "gXYZ", "bXYZ"};
        for (int c = 0; c < 3; c++) {
            Optional<byte[]> data = tag(bytes, names[c]);
            if (data.isEmpty()) {
                return Optional.empty();
            }
            ByteBuffer b = ByteBuffer.wrap(data.get());
            for (int r = 0; r < 3; r++) {
                m[3 * r + c] = b.getInt(8 + 4 * r) / 65536.0;
            }
        }
        return Optional.of(m);
    }

    /** Tags of types curv and para (ICC.1:2010, 10.5 and 10.15). */
    private static Optional<TransferCurve> curve(byte[] data) {
        ByteBuffer b = ByteBuffer.wrap(data);
        String type = new String(data, 0, 4, StandardCharsets.US_ASCII);
        if (type.equals("curv")) {
            int n = b.getInt(8);
            if (n == 0) {
                return Optional.of(TransferCurve.LINEAR);
            }
            if (n == 1) {
                return Optional.of(TransferCurve.gamma((b.getShort(12) & 0xFFFF) / 256.0));
            }
            double[] samples = new double[n];
            for (int i = 0; i < n; i++) {
                samples[i] = (b.getShort(12 + 2 * i) & 0xFFFF) / 65535.0;
            }
            return Optional.of(TransferCurve.sampled(samples));
        }
        if (!type.equals("para")) {
            return Optional.empty();
        }
        int kind = b.getShort(8);
        int[] counts = {1, 3, 4, 5, 7};
        if (kind < 0 || kind > 4) {
            return Optional.empty();
        }
        double[] p = new double[7];
        for (int i = 0; i < counts[kind]; i++) {
            p[i] = b.getInt(12 + 4 * i) / 65536.0;
        }
        double[] samples = new double[4097];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = parametric(kind, p, i / (samples.length - 1.0));
        }
        return Optional.of(TransferCurve.sampled(samples));
    }

    private static double parametric(int kind, double[] p, double x) {
        double g = p[0];
        double a = p[1];
        double b = p[2];
        double c = p[3];
        double d = p[4];
        return switch (kind) {
            case 0 -> Math.pow(x, g);
            case 1 -> x >= -b / a ? Math.pow(a * x + b, g) : 0;
            case 2 -> x >= -b / a ? Math.pow(a * x + b, g) + c : c;
            case 3 -> x >= d ? Math.pow(a * x + b, g) : c * x;
            default -> x >= d ? Math.pow(a * x + b, g) + p[5] : c * x + p[6];
        };
    }

    static double[] product(double[] a, double[] b) {
        double[] out = new double[9];
        for (int r = 0; r < 3; r++) {
            for (int c = 0; c < 3; c++) {
                out[3 * r + c] = a[3 * r] * b[c] + a[3 * r + 1] * b[3 + c] + a[3 * r + 2] * b[6 + c];
            }
        }
        return out;
    }

    static double[] inverse(double[] m) {
        double[] adjoint = {
            m[4] * m[8] - m[5] * m[7], m[2] * m[7] - m[1] * m[8], m[1] * m[5] - m[2] * m[4],
            m[5] * m[6] - m[3] * m[8], m[0] * m[8] - m[2] * m[6], m[2] * m[3] - m[0] * m[5],
            m[3] * m[7] - m[4] * m[6], m[1] * m[6] - m[0] * m[7], m[0] * m[4] - m[1] * m[3]
        };
        double determinant = m[0] * adjoint[0] + m[1] * adjoint[3] + m[2] * adjoint[6];
        for (int i = 0; i < 9; i++) {
            adjoint[i] /= determinant;
        }
        return adjoint;
    }
}
