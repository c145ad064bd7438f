package ebblight.imaging;

import ebblight.core.numeric.Resample;
import ebblight.core.numeric.Work;

/** Puts a full-size frame of a moved camera back in place, by cubic convolution of its linear light. */
final class ShiftedFrame {

    private ShiftedFrame() {}

    static DecodedFrame of(DecodedFrame frame, RigidMove move, Work work) {
        int w = frame.width();
        int h = frame.height();
        float[] linear = frame.profile().curve().table(frame.bits());
        CodeTable encode = CodeTable.of(frame.profile().curve());
        short[] out = new short[frame.samples()];
        work.forEach(h, y -> {
            double[] across = new double[4];
            double[] down = new double[4];
            int[] columns = new int[4];
            for (int x = 0; x < w; x++) {
                double px = move.x(x, y);
                double py = move.y(x, y);
                int x0 = (int) Math.floor(px);
                int y0 = (int) Math.floor(py);
                Resample.cubicWeights(px - x0, across);
                Resample.cubicWeights(py - y0, down);
                for (int i = 0; i < 4; i++) {
                    columns[i] = 3 * Math.max(0, Math.min(w - 1, x0 + i - 1));
                }
                double red = 0;
                double green = 0;
                double blue = 0;
                for (int j = 0; j < 4; j++) {
                    int row = 3 * w * Math.max(0, Math.min(h - 1, y0 + j - 1));
                    for (int i = 0; i < 4; i++) {
                        double weight = down[j] * across[i];
                        int q = row + columns[i];
                        red += weight * linear[frame.code(q)];
                        green += weight * linear[frame.code(q + 1)];
                        blue += weight * linear[frame.code(q + 2)];
                    }
                }
                int q = 3 * (y * w + x);
                out[q] = (short) Math.round(encode.code16(red));
                out[q + 1] = (short) Math.round(encode.code16(green));
                out[q + 2] = (short) Math.round(encode.code16(blue));
            }
        });
        return DecodedFrame.of16(w, h, out, frame.profile());
    }
}
