package ebblight.imaging;

/** A frame as 16-bit codes of another profile; light outside its gamut is clipped. */
final class ConvertedFrame extends DecodedFrame {

    private static final int BITS = 16;

    private final DecodedFrame source;
    private final double[] matrix;
    private final float[] linear;
    private final CodeTable encode;

    ConvertedFrame(DecodedFrame source, IccProfile profile) {
        super(source.width(), source.height(), BITS, profile);
        this.source = source;
        this.matrix = source.profile().to(profile);
        this.linear = source.profile().curve().table(source.bits());
        this.encode = CodeTable.of(profile.curve());
    }

    @Override
    RowReader rows() {
        RowReader rows = source.rows();
        int n = width();
        double[] m = matrix;
        return (y, red, green, blue) -> {
            rows.read(y, red, green, blue);
            for (int x = 0; x < n; x++) {
                double r = linear[red[x]];
                double g = linear[green[x]];
                double b = linear[blue[x]];
                red[x] = code(m[0] * r + m[1] * g + m[2] * b);
                green[x] = code(m[3] * r + m[4] * g + m[5] * b);
                blue[x] = code(m[6] * r + m[7] * g + m[8] * b);
            }
        };
    }

    private int code(double light) {
        return WholeCode.nearest(encode.code16(light));
    }
}
