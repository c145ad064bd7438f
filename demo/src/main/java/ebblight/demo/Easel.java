package ebblight.demo;

import java.util.Arrays;

/** A strip of the picture at three times its size each way, with depth: near things hide far ones. */
final class Easel {

    static final int FINE = 3;

    final Lens lens;
    final int fromColumn;
    final int columns;
    final int rows;
    private final int toColumn;
    private final float[] depth;
    private final float[] height;
    private final float[] rgb;

    Easel(Lens lens, int fromColumn, int toColumn) {
        this.lens = lens;
        this.fromColumn = fromColumn;
        this.toColumn = toColumn;
        this.columns = (toColumn - fromColumn) * FINE;
        this.rows = lens.height() * FINE;
        this.depth = new float[columns * rows];
        this.height = new float[columns * rows];
        this.rgb = new float[3 * columns * rows];
        Arrays.fill(depth, Float.POSITIVE_INFINITY);
    }

    /** Tangent to the right of fine column {@code x} of this strip. */
    double right(int x) {
        return lens.right(fromColumn + (x + 0.5) / FINE);
    }

    /** Tangent above the horizon of fine row {@code y}. */
    double up(int y) {
        return lens.up((y + 0.5) / FINE);
    }

    /** Fine row of a tangent above the horizon. */
    double row(double up) {
        return lens.y(up) * FINE;
    }

    /** Fine column of this strip of a tangent to the right. */
    double column(double right) {
        return (lens.x(right) - fromColumn) * FINE;
    }

    boolean open(int x, int y, double distance) {
        return distance < depth[y * columns + x];
    }

    void put(int x, int y, double distance, double heightMetres, double[] colour) {
        int i = y * columns + x;
        if (distance < depth[i]) {
            depth[i] = (float) distance;
            height[i] = (float) heightMetres;
            rgb[3 * i] = (float) colour[0];
            rgb[3 * i + 1] = (float) colour[1];
            rgb[3 * i + 2] = (float) colour[2];
        }
    }

    void resolve(StillLife still) {
        for (int py = 0; py < lens.height(); py++) {
            for (int px = fromColumn; px < toColumn; px++) {
                int covered = 0;
                float sum = 0;
                float r = 0;
                float g = 0;
                float b = 0;
                for (int k = 0; k < FINE * FINE; k++) {
                    int i = (py * FINE + k / FINE) * columns + (px - fromColumn) * FINE + k % FINE;
                    if (depth[i] < Float.POSITIVE_INFINITY) {
                        covered++;
                        sum += height[i];
                        r += rgb[3 * i];
                        g += rgb[3 * i + 1];
                        b += rgb[3 * i + 2];
                    }
                }
                if (covered > 0) {
                    int o = py * lens.width() + px;
                    still.cover[o] = (float) covered / (FINE * FINE);
                    still.height[o] = sum / covered;
                    still.rgb[3 * o] = r / covered;
                    still.rgb[3 * o + 1] = g / covered;
                    still.rgb[3 * o + 2] = b / covered;
                }
            }
        }
    }
}
