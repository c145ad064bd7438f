package ebblight.imaging;

import ebblight.core.motion.Placement;
import ebblight.core.numeric.Resample;
import ebblight.core.numeric.Work;

/** Puts a full-size frame of a moved camera back in place, by cubic convolution of its linear light. */
final class ShiftedFrame {

    private ShiftedFrame() {}

    static DecodedFrame of(DecodedFrame frame, Placement placement, int surveyWidth, Work work) {
        int w = frame.width();
        int h = frame.height();
        double scale = (double) w / surveyWidth;
        double c = Math.cos(placement.angle());
        double s = Math.sin(placement.angle());
        double cx = (w - 1) / 2.0;
        double cy = (h - 1) / 2.0;
        double ox = placement.dx() * scale + cx - c * cx + s * cy;
        double oy = placement.dy() * scale + cy - s * cx - c * cy;
        float[] linear = frame.profile().curve().table(frame.bits());
        CodeTable encode = CodeTable.of(frame.profile().curve());
        short[] out = new short[frame.samples()];
        work.forEach(h, y -> {
            double[] across = new double[4];
            double[] down = new double[4];
            for (int x = 0; x < w; x++) {
                double px = c * x - s * y + ox;
                double py = s * x + c * y + oy;
                int x0 = (int) Math.floor(px);
                int y0 = (int) Math.floor(py);
                Resample.cubicWeights(px - x0, across);
                Resample.cubicWeights(py - y0, down);
                for (int k = 0; k < 3; k++) {
                    double sum = 0;
                    for (int j = 0; j < 4; j++) {
                        int row = Math.max(0, Math.min(h - 1, y0 + j - 1)) * w;
                        for (int i = 0; i < 4; i++) {
                            int column = Math.max(0, Math.min(w - 1, x0 + i - 1));
                            sum += down[j] * across[i] * linear[frame.code(3 * (row + column) + k)];
                        }
                    }
                    out[3 * (y * w + x) + k] = (short) Math.round(encode.code16(sum));
                }
            }
        });
        return DecodedFrame.of16(w, h, out, frame.profile());
    }
}
