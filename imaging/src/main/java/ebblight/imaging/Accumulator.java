package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.util.Arrays;

/** Sums, maxima or minima of the light of frames, in bands of rows that can run at once. */
final class Accumulator {

    private static final int BANDS = 16;

    private final StackOptions.As as;
    private final int[] sums;
    private final double white;
    private int frames;
    private int[] table = new int[0];
    private double tableGain = Double.NaN;
    private IccProfile tableProfile = IccProfile.srgb();

    Accumulator(int samples, StackOptions.As as, int mostFrames) {
        this.as = as;
        sums = new int[samples];
        white = as == StackOptions.As.MEAN ? LightTable.white(mostFrames) : LightTable.white(1);
        if (as == StackOptions.As.DARKEST) {
            Arrays.fill(sums, Integer.MAX_VALUE);
        }
    }

    int frames() {
        return frames;
    }

    /** Adds a frame whose light counts {@code gain} times. */
    void add(DecodedFrame frame, double gain, Work work) {
        if (gain != tableGain
                || table.length != 1 << frame.bits()
                || !frame.profile().sameAs(tableProfile)) {
            table = LightTable.of(frame, gain, white);
            tableGain = gain;
            tableProfile = frame.profile();
        }
        int n = sums.length;
        work.forEach(BANDS, b -> {
            int from = (int) ((long) n * b / BANDS);
            int to = (int) ((long) n * (b + 1) / BANDS);
            if (frame.bits() == 8) {
                add8(frame.codes8(), from, to);
            } else {
                add16(frame.codes16(), from, to);
            }
        });
        frames++;
    }

    private void add8(byte[] codes, int from, int to) {
        int[] light = table;
        switch (as) {
            case BRIGHTEST -> {
                for (int i = from; i < to; i++) {
                    sums[i] = Math.max(sums[i], light[codes[i] & 0xFF]);
                }
            }
            case DARKEST -> {
                for (int i = from; i < to; i++) {
                    sums[i] = Math.min(sums[i], light[codes[i] & 0xFF]);
                }
            }
            case MEAN, MEDIAN -> {
                for (int i = from; i < to; i++) {
                    sums[i] += light[codes[i] & 0xFF];
                }
            }
        }
    }

    private void add16(short[] codes, int from, int to) {
        int[] light = table;
        switch (as) {
            case BRIGHTEST -> {
                for (int i = from; i < to; i++) {
                    sums[i] = Math.max(sums[i], light[codes[i] & 0xFFFF]);
                }
            }
            case DARKEST -> {
                for (int i = from; i < to; i++) {
                    sums[i] = Math.min(sums[i], light[codes[i] & 0xFFFF]);
                }
            }
            case MEAN, MEDIAN -> {
                for (int i = from; i < to; i++) {
                    sums[i] += light[codes[i] & 0xFFFF];
                }
            }
        }
    }

    /** Linear light of sample {@code i}, 0 to 1. */
    double light(int i) {
        return sums[i] / (as == StackOptions.As.MEAN ? white * frames : white);
    }
}
