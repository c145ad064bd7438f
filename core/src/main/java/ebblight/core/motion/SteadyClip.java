package ebblight.core.motion;

import ebblight.core.numeric.Resample;
import ebblight.core.numeric.Rounding;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;

/** Puts the frames of a moved camera back on the middle frame, by cubic convolution, and cuts the border off. */
final class SteadyClip {

    private SteadyClip() {}

    /** Pixels to cut at every side so that no frame shows a place it did not see. */
    static int crop(Placement[] placements, int width) {
        double farthest = 0;
        for (Placement q : placements) {
            double turn = Math.abs(q.angle()) * width / 2;
            farthest = Math.max(farthest, Math.max(Math.abs(q.dx()), Math.abs(q.dy())) + turn);
        }
        return (int) Math.ceil(farthest) + 1;
    }

    /** The clip put back, {@code crop} pixels smaller at every side. */
    static Clip of(Clip clip, Placement[] placements, int crop, Work work) {
        int w = clip.width();
        int h = clip.height();
        int nw = w - 2 * crop;
        int nh = h - 2 * crop;
        byte[][] frames = new byte[clip.frames()][];
        work.forEach(frames.length, i -> {
            float[][] planes = new float[3][w * h];
            for (int c = 0; c < 3; c++) {
                clip.channel(i, c, planes[c]);
            }
            frames[i] = placed(planes, w, h, Placing.of(placements[i], w, h), crop, nw, nh);
        });
        double[] times = new double[frames.length];
        List<byte[]> list = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            times[i] = clip.timeSeconds(i);
            list.add(frames[i]);
        }
        return Clip.of(nw, nh, times, list, Clip.Coding.LINEAR16);
    }

    private static byte[] placed(float[][] planes, int w, int h, Placing placing, int crop, int nw, int nh) {
        byte[] out = new byte[6 * nw * nh];
        double[] across = new double[4];
        double[] down = new double[4];
        for (int v = 0; v < nh; v++) {
            for (int u = 0; u < nw; u++) {
                double x = placing.x(u + crop, v + crop);
                double y = placing.y(u + crop, v + crop);
                int x0 = (int) Math.floor(x);
                int y0 = (int) Math.floor(y);
                Resample.cubicWeights(x - x0, across);
                Resample.cubicWeights(y - y0, down);
                int q = 6 * (v * nw + u);
                for (int c = 0; c < 3; c++) {
                    double sum = 0;
                    for (int j = 0; j < 4; j++) {
                        int row = Math.max(0, Math.min(h - 1, y0 + j - 1)) * w;
                        for (int i = 0; i < 4; i++) {
                            int column = Math.max(0, Math.min(w - 1, x0 + i - 1));
                            sum += down[j] * across[i] * planes[c][row + column];
                        }
                    }
                    int code = (int) Math.max(0, Math.min(65535, Rounding.even(65535 * sum)));
                    out[q + 2 * c] = (byte) code;
                    out[q + 2 * c + 1] = (byte) (code >> 8);
                }
            }
        }
        return out;
    }
}
