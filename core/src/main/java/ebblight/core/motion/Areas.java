package ebblight.core.motion;

import java.util.Arrays;

/** Connected areas of equal label (neighbours by edge, not by corner). */
public final class Areas {

    private final int[] at;
    private final int[] sizes;
    private final byte[] labels;

    private Areas(int[] at, int[] sizes, byte[] labels) {
        this.at = at;
        this.sizes = sizes;
        this.labels = labels;
    }

    /** The areas of {@code picture}, one label a pixel, row by row. */
    public static Areas of(byte[] picture, int w, int h) {
        int[] at = new int[w * h];
        Arrays.fill(at, -1);
        int[] stack = new int[w * h];
        int[] sizes = new int[16];
        byte[] labels = new byte[16];
        int count = 0;
        for (int start = 0; start < at.length; start++) {
            if (at[start] >= 0) {
                continue;
            }
            if (count == sizes.length) {
                sizes = Arrays.copyOf(sizes, 2 * count);
                labels = Arrays.copyOf(labels, 2 * count);
            }
            byte label = picture[start];
            int top = 0;
            stack[top++] = start;
            at[start] = count;
            int size = 0;
            while (top > 0) {
                int p = stack[--top];
                size++;
                int x = p % w;
                if (x > 0 && at[p - 1] < 0 && picture[p - 1] == label) {
                    at[p - 1] = count;
                    stack[top++] = p - 1;
                }
                if (x < w - 1 && at[p + 1] < 0 && picture[p + 1] == label) {
                    at[p + 1] = count;
                    stack[top++] = p + 1;
                }
                if (p >= w && at[p - w] < 0 && picture[p - w] == label) {
                    at[p - w] = count;
                    stack[top++] = p - w;
                }
                if (p < at.length - w && at[p + w] < 0 && picture[p + w] == label) {
                    at[p + w] = count;
                    stack[top++] = p + w;
                }
            }
            sizes[count] = size;
            labels[count] = label;
            count++;
        }
        return new Areas(at, Arrays.copyOf(sizes, count), Arrays.copyOf(labels, count));
    }

    /** How many there are. */
    public int count() {
        return sizes.length;
    }

    /** The area that holds pixel {@code p}. */
    public int at(int p) {
        return at[p];
    }

    /** Pixels of an area. */
    public int size(int area) {
        return sizes[area];
    }

    /** The label of an area. */
    public byte label(int area) {
        return labels[area];
    }

    /** For every area the largest area that touches it, or −1 when it fills the picture. */
    public int[] mostTouched(byte[] picture, int w, int h) {
        int[] best = new int[sizes.length];
        Arrays.fill(best, -1);
        for (int p = 0; p < at.length; p++) {
            if (p % w < w - 1 && picture[p] != picture[p + 1]) {
                touch(best, at[p], at[p + 1]);
            }
            if (p < w * (h - 1) && picture[p] != picture[p + w]) {
                touch(best, at[p], at[p + w]);
            }
        }
        return best;
    }

    private void touch(int[] best, int a, int b) {
        if (best[a] < 0 || sizes[b] > sizes[best[a]]) {
            best[a] = b;
        }
        if (best[b] < 0 || sizes[a] > sizes[best[b]]) {
            best[b] = a;
        }
    }
}
