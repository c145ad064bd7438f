package ebblight.demo;

import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Work;

/**
 * The open water in one picture size: for each pixel below the horizon the slope of the sea there, the sky that it
 * mirrors by Fresnel's law, and the light that comes up from below.
 */
final class Water {

    /** Light from inside the water: its own colour under the evening sky, by eye. */
    private static final float[] BODY = {0.010f, 0.024f, 0.030f};

    private static final double HAZE_METRES = 5000;
    /** Waves grow as they come in over the rocks. */
    static final float SHOALING = 1.5f;

    private final Lens lens;
    private final int firstRow;
    private final Row[] rows;
    private final Reflections reflections;
    private final Shore shore;

    /** What is the same for all pixels of a row. */
    private static final class Row {
        double ahead;
        double rightStep;
        /** Share of the long waves' height that is not lost in the pixel's stretch of water. */
        double steady;

        float haze;
        final float[] level = new float[3];
        final float[] gain = new float[3];
        float lostX;
        float lostY;
    }

    Water(Lens lens, Sea sea, Work work) {
        this.lens = lens;
        this.firstRow = (int) Math.floor(lens.horizonPixels());
        this.rows = new Row[lens.height() - firstRow];
        for (int i = 0; i < rows.length; i++) {
            rows[i] = row(sea, firstRow + i);
        }
        this.reflections = new Reflections(lens, firstRow);
        this.shore = new Shore(lens, firstRow, work);
    }

    private Row row(Sea sea, int y) {
        Row row = new Row();
        // a row that holds the horizon is treated as the water just below it
        double down = Math.max(-lens.up(y + 0.5), 0.25 / lens.focalPixels());
        row.ahead = Lens.HEIGHT_METRES / down;
        row.rightStep = row.ahead / lens.focalPixels();
        row.haze = (float) (1 - StrictMath.exp(-row.ahead / HAZE_METRES));
        double near = Lens.HEIGHT_METRES / (down + 0.5 / lens.focalPixels());
        double far = Lens.HEIGHT_METRES / Math.max(down - 0.5 / lens.focalPixels(), 0.05 / lens.focalPixels());
        double along = far - near;
        row.steady = Math.max(0, 1 - along / 12);
        for (int i = 0; i < 3; i++) {
            Cascade cascade = sea.cascade(i);
            double step = cascade.tileMetres() / cascade.side();
            double top = SlopeField.levels(cascade.side()) - 1.001;
            double level = Math.max(0, Math.min(top, Powers.log2(along / step)));
            SlopeVariance.Kept kept = sea.variance(i).at(level, row.rightStep / step);
            row.level[i] = (float) level;
            row.gain[i] = (float) kept.gain();
            row.lostX += (float) kept.lostX();
            row.lostY += (float) kept.lostY();
        }
        return row;
    }

    int firstRow() {
        return firstRow;
    }

    /** Whether the water at a pixel is too deep for foam. */
    boolean deep(int x, int y) {
        return shore.depth[(y - firstRow) * lens.width() + x] >= Foam.DEEPEST_METRES;
    }

    /** Light of row {@code y} into {@code row.rgb}; {@code horizon} is the sky at the horizon of each column. */
    void light(int y, View.Space space, float[] horizon) {
        light(y, 0, 1, space, horizon);
    }

    /** The same for every {@code step}-th column from {@code first} on alone; what lies between is left undefined. */
    void light(int y, int first, int step, View.Space space, float[] horizon) {
        Row row = rows[y - firstRow];
        WaterRow out = space.water;
        look(row, first, step, space.sea, space.mirror, out);
        reflections.shade(y, row.ahead, out);
        int w = lens.width();
        for (int x = first; x < w; x += step) {
            float f = out.share[x];
            for (int c = 0; c < 3; c++) {
                float light = f * out.seen[3 * x + c] + (1 - f) * BODY[c];
                out.rgb[3 * x + c] = light + row.haze * (horizon[3 * x + c] - light);
            }
            float depth = shore.depth[(y - firstRow) * w + x];
            if (depth < Foam.DEEPEST_METRES) {
                Foam.cover(space.lace, out.across[x], row.ahead, depth, SHOALING * out.level[x], out.rgb, 3 * x);
            }
        }
    }

    private void look(Row row, int first, int step, Sea.State sea, Mirror.State mirror, WaterRow out) {
        double up = Lens.HEIGHT_METRES;
        double ahead = row.ahead;
        float[] slope = out.slope;
        for (int x = first; x < lens.width(); x += step) {
            double across = lens.right(x + 0.5) * ahead;
            double height = row.steady * height(sea, across, ahead);
            double nearer = Math.max(0.6, Math.min(1.5, 1 - height / up));
            double px = across * nearer;
            double py = ahead * nearer;
            slope[0] = 0;
            slope[1] = 0;
            for (int band = 0; band < 3; band++) {
                add(sea.fields[band], row, band, px, py, slope);
            }
            float gust = gust(sea, px, py);
            float sx = slope[0] * gust;
            float sy = slope[1] * gust;
            double distance = Math.sqrt(across * across + ahead * ahead);
            double inverse = 1 / Math.sqrt(distance * distance + up * up);
            float vz = (float) (up * inverse);
            float vh = (float) (distance * inverse);
            float ex = (float) (-across / distance);
            float ey = (float) (-ahead / distance);
            float sigma = (float) Math.sqrt(row.lostX * ex * ex + row.lostY * ey * ey + 1e-9) * gust;
            float r = (vz / vh - (sx * ex + sy * ey)) / sigma;
            float lean = Facets.mean(r) * sigma;
            sx -= lean * ex;
            sy -= lean * ey;
            float n = (float) (1 / Math.sqrt(1 + sx * sx + sy * sy));
            float cos = Math.max(0.02f, (vz - (sx * ex + sy * ey) * vh) * n);
            out.across[x] = (float) across;
            out.level[x] = (float) height;
            out.right[x] = 2 * cos * -sx * n - ex * vh;
            out.up[x] = Math.abs(2 * cos * n - vz);
            out.blur[x] = 2 * Facets.spread(r) * sigma;
            out.share[x] = Fresnel.fast(cos);
            reflect(mirror, out.right[x], out.up[x], out.blur[x], out.seen, 3 * x);
        }
    }

    private static void reflect(Mirror.State mirror, float right, float up, float blur, float[] rgb, int at) {
        float level = (float) Mirror.level(blur);
        int l = (int) level;
        float part = level - l;
        float x = Math.max(0, Math.min(Mirror.COLUMNS - 1.001f, (right + 1) * (Mirror.COLUMNS / 2f) - 0.5f));
        float y = Math.max(0, Math.min(Mirror.ROWS - 1.001f, (float) Math.sqrt(Math.min(up, 1)) * Mirror.ROWS - 0.5f));
        int x0 = (int) x;
        int y0 = (int) y;
        float fx = x - x0;
        float fy = y - y0;
        int a = 3 * (y0 * Mirror.COLUMNS + x0);
        int b = a + 3 * Mirror.COLUMNS;
        float[] sharp = mirror.light[l];
        float[] soft = mirror.light[l + 1];
        float w00 = (1 - fx) * (1 - fy);
        float w10 = fx * (1 - fy);
        float w01 = (1 - fx) * fy;
        float w11 = fx * fy;
        for (int c = 0; c < 3; c++) {
            float p = w00 * sharp[a + c] + w10 * sharp[a + 3 + c] + w01 * sharp[b + c] + w11 * sharp[b + 3 + c];
            float q = w00 * soft[a + c] + w10 * soft[a + 3 + c] + w01 * soft[b + c] + w11 * soft[b + 3 + c];
            rgb[at + c] = p + part * (q - p);
        }
    }

    static double height(Sea.State sea, double px, double py) {
        int side = sea.fields[0].side;
        double x = px * side / Sea.TILE_METRES[0];
        double y = py * side / Sea.TILE_METRES[0];
        double xf = Math.floor(x);
        double yf = Math.floor(y);
        double fx = x - xf;
        double fy = y - yf;
        int mask = side - 1;
        int x0 = (int) xf & mask;
        int x1 = x0 + 1 & mask;
        int y0 = ((int) yf & mask) * side;
        int y1 = ((int) yf + 1 & mask) * side;
        float[] h = sea.height;
        double top = h[y0 + x0] * (1 - fx) + h[y0 + x1] * fx;
        double bottom = h[y1 + x0] * (1 - fx) + h[y1 + x1] * fx;
        return top + fy * (bottom - top);
    }

    private static float gust(Sea.State sea, double px, double py) {
        double x = px * Gusts.SIDE / Gusts.TILE_METRES;
        double y = py * Gusts.SIDE / Gusts.TILE_METRES;
        double xf = Math.floor(x);
        double yf = Math.floor(y);
        float fx = (float) (x - xf);
        float fy = (float) (y - yf);
        int mask = Gusts.SIDE - 1;
        int x0 = (int) xf & mask;
        int x1 = x0 + 1 & mask;
        int y0 = ((int) yf & mask) * Gusts.SIDE;
        int y1 = ((int) yf + 1 & mask) * Gusts.SIDE;
        float[] g = sea.gust;
        float top = g[y0 + x0] * (1 - fx) + g[y0 + x1] * fx;
        float bottom = g[y1 + x0] * (1 - fx) + g[y1 + x1] * fx;
        return top + fy * (bottom - top);
    }

    private static void add(SlopeField field, Row row, int band, double px, double py, float[] slope) {
        float gain = row.gain[band];
        if (gain <= 0) {
            return;
        }
        int side = field.side;
        double x = px * side / Sea.TILE_METRES[band];
        double y = py * side / Sea.TILE_METRES[band];
        int level = (int) row.level[band];
        float part = row.level[band] - level;
        fetch(field.slopes[level], side, side >> level, x, (y + 0.5) / (1 << level) - 0.5, gain * (1 - part), slope);
        if (part > 0) {
            int next = level + 1;
            fetch(field.slopes[next], side, side >> next, x, (y + 0.5) / (1 << next) - 0.5, gain * part, slope);
        }
    }

    private static void fetch(float[] field, int columns, int rows, double x, double y, float gain, float[] slope) {
        double xf = Math.floor(x);
        double yf = Math.floor(y);
        float fx = (float) (x - xf);
        float fy = (float) (y - yf);
        int x0 = (int) xf & columns - 1;
        int x1 = x0 + 1 & columns - 1;
        int a = ((int) yf & rows - 1) * columns;
        int b = ((int) yf + 1 & rows - 1) * columns;
        float w00 = gain * (1 - fx) * (1 - fy);
        float w10 = gain * fx * (1 - fy);
        float w01 = gain * (1 - fx) * fy;
        float w11 = gain * fx * fy;
        slope[0] += w00 * field[2 * (a + x0)]
                + w10 * field[2 * (a + x1)]
                + w01 * field[2 * (b + x0)]
                + w11 * field[2 * (b + x1)];
        slope[1] += w00 * field[2 * (a + x0) + 1]
                + w10 * field[2 * (a + x1) + 1]
                + w01 * field[2 * (b + x0) + 1]
                + w11 * field[2 * (b + x1) + 1];
    }
}
