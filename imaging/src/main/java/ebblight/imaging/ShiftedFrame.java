package ebblight.imaging;

import ebblight.core.numeric.Resample;
import java.util.Arrays;

/**
 * A frame of a moved camera put back in place, by cubic convolution of its linear light. Where it saw nothing its codes
 * are {@link DecodedFrame#ABSENT}.
 */
final class ShiftedFrame extends DecodedFrame {

    private static final int BITS = 16;

    private final PackedFrame source;
    private final RigidMove move;
    private final float[] linear;
    private final CodeTable encode;

    ShiftedFrame(DecodedFrame source, RigidMove move) {
        super(source.width(), source.height(), BITS, source.profile());
        this.source = PackedFrame.of(source);
        this.move = move;
        this.linear = source.profile().curve().table(source.bits());
        this.encode = CodeTable.of(source.profile().curve());
    }

    @Override
    RowReader rows() {
        int w = width();
        int h = height();
        double[] across = new double[4];
        double[] down = new double[4];
        int[] columns = new int[4];
        double[] light = new double[3];
        return (y, red, green, blue) -> {
            for (int x = 0; x < w; x++) {
                double px = move.x(x, y);
                double py = move.y(x, y);
                int x0 = (int) Math.floor(px);
                int y0 = (int) Math.floor(py);
                if (px < -0.5 || py < -0.5 || px > w - 0.5 || py > h - 0.5) {
                    red[x] = ABSENT;
                    green[x] = ABSENT;
                    blue[x] = ABSENT;
                    continue;
                }
                Resample.cubicWeights(px - x0, across);
                Resample.cubicWeights(py - y0, down);
                for (int i = 0; i < 4; i++) {
                    columns[i] = 3 * Math.max(0, Math.min(w - 1, x0 + i - 1));
                }
                Arrays.fill(light, 0);
                for (int j = 0; j < 4; j++) {
                    int row = 3 * w * Math.max(0, Math.min(h - 1, y0 + j - 1));
                    addRow(row, columns, down[j], across, light);
                }
                red[x] = code(light[0]);
                green[x] = code(light[1]);
                blue[x] = code(light[2]);
            }
        };
    }

    private void addRow(int row, int[] columns, double weight, double[] across, double[] light) {
        for (int i = 0; i < 4; i++) {
            double both = weight * across[i];
            int q = row + columns[i];
            light[0] += both * linear[source.code(q)];
            light[1] += both * linear[source.code(q + 1)];
            light[2] += both * linear[source.code(q + 2)];
        }
    }

    private int code(double light) {
        return WholeCode.nearest(encode.code16(light));
    }
}
