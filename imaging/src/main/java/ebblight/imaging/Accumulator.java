package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/**
 * Sums, maxima or minima of the light of frames. Light counts in whole numbers, so that sums are exact and do not
 * depend on their order; frames are added in bands that can run at once.
 */
final class Accumulator implements Combination {

    private static final int BANDS = 16;
    /** Samples added at a time: what all frames of a batch have of them stays in the processor's nearest memory. */
    private static final int PIECE = 4096;

    private final int width;
    private final int height;
    private final StackOptions.As as;
    private final int[] sums;
    private final double white;
    /** Frames that had something at each pixel; absent while all had everywhere. */
    private int @Nullable [] counts;

    private int frames;
    private final LightTable tables;

    Accumulator(int width, int height, StackOptions.As as, int mostFrames) {
        this.width = width;
        this.height = height;
        this.as = as;
        sums = new int[3 * width * height];
        white = LightTable.white(as == StackOptions.As.MEAN ? mostFrames : 1);
        tables = new LightTable(white);
        if (as == StackOptions.As.DARKEST) {
            Arrays.fill(sums, Integer.MAX_VALUE);
        }
    }

    @Override
    public void add(List<Part> parts, Work work) {
        int[][] light = new int[parts.size()][];
        boolean plain = as == StackOptions.As.MEAN && counts == null;
        for (int k = 0; k < light.length; k++) {
            Part part = parts.get(k);
            light[k] = tables.of(part.frame(), part.gain());
            plain &= part.frame() instanceof PackedFrame && part.frame().bits() == 8;
            if (part.frame() instanceof ShiftedFrame && counts == null) {
                counts = new int[width * height];
                Arrays.fill(counts, frames);
            }
        }
        if (plain) {
            PackedFrame[] packed =
                    parts.stream().map(p -> (PackedFrame) p.frame()).toArray(PackedFrame[]::new);
            work.forEach(BANDS, b -> addBytes(packed, light, b));
        } else {
            work.forEach(BANDS, b -> addRows(parts, light, height * b / BANDS, height * (b + 1) / BANDS));
        }
        frames += light.length;
    }

    /** The common case, fast: bytes of several frames summed in one pass, by twos. */
    private void addBytes(PackedFrame[] packed, int[][] light, int band) {
        int from = (int) ((long) sums.length * band / BANDS);
        int to = (int) ((long) sums.length * (band + 1) / BANDS);
        byte[] one = new byte[PIECE];
        byte[] other = new byte[PIECE];
        for (int at = from; at < to; at += PIECE) {
            int n = Math.min(PIECE, to - at);
            int k = 0;
            for (; k + 1 < packed.length; k += 2) {
                packed[k].bytes(at, one, n);
                packed[k + 1].bytes(at, other, n);
                addTwo(one, light[k], other, light[k + 1], at, n);
            }
            if (k < packed.length) {
                packed[k].bytes(at, one, n);
                addOne(one, light[k], at, n);
            }
        }
    }

    private void addTwo(byte[] one, int[] light, byte[] other, int[] otherLight, int at, int n) {
        for (int i = 0; i < n; i++) {
            sums[at + i] += light[one[i] & 0xFF] + otherLight[other[i] & 0xFF];
        }
    }

    private void addOne(byte[] one, int[] light, int at, int n) {
        for (int i = 0; i < n; i++) {
            sums[at + i] += light[one[i] & 0xFF];
        }
    }

    private void addRows(List<Part> parts, int[][] light, int from, int to) {
        for (int k = 0; k < light.length; k++) {
            DecodedFrame frame = parts.get(k).frame();
            DecodedFrame.RowReader rows = frame.rows();
            int[][] row = frame.rowMemory();
            for (int y = from; y < to; y++) {
                rows.read(y, row[0], row[1], row[2]);
                for (int c = 0; c < 3; c++) {
                    addRow(row[c], light[k], 3 * y * width + c);
                }
                count(row[0], y);
            }
        }
    }

    private void addRow(int[] codes, int[] light, int first) {
        switch (as) {
            case MEAN, MEDIAN -> {
                for (int x = 0, i = first; x < width; x++, i += 3) {
                    sums[i] += codes[x] < 0 ? 0 : light[codes[x]];
                }
            }
            case BRIGHTEST -> {
                for (int x = 0, i = first; x < width; x++, i += 3) {
                    sums[i] = codes[x] < 0 ? sums[i] : Math.max(sums[i], light[codes[x]]);
                }
            }
            case DARKEST -> {
                for (int x = 0, i = first; x < width; x++, i += 3) {
                    sums[i] = codes[x] < 0 ? sums[i] : Math.min(sums[i], light[codes[x]]);
                }
            }
        }
    }

    private void count(int[] codes, int y) {
        int[] seen = counts;
        if (seen != null) {
            for (int x = 0; x < width; x++) {
                seen[y * width + x] += codes[x] < 0 ? 0 : 1;
            }
        }
    }

    /** Linear light of sample {@code i}, 0 to 1. */
    double light(int i) {
        if (as != StackOptions.As.MEAN) {
            return sums[i] / white;
        }
        int[] seen = counts;
        return sums[i] / (white * (seen == null ? frames : seen[i / 3]));
    }

    @Override
    public IntToDoubleFunction light(Work work) {
        return this::light;
    }

    @Override
    public void close() {}
}
