package ebblight.imaging.card;

import ebblight.imaging.OpenedPicture;

/** A picture as means of linear red, green and blue over square cells, where nothing clips and nothing drowns. */
final class ColourCells {

    private static final int ACROSS = 120;
    private static final double FULL = 0.985;
    /** Light below which 8-bit codes are too coarse. */
    private static final double LEAST = 0.004;

    private final int width;
    private final int height;
    private final float[][] light;
    private final boolean[] known;

    private ColourCells(int width, int height) {
        this.width = width;
        this.height = height;
        this.light = new float[3][width * height];
        this.known = new boolean[width * height];
    }

    static ColourCells of(OpenedPicture picture) {
        int size = Math.max(2, picture.width() / ACROSS);
        ColourCells cells = new ColourCells(picture.width() / size, picture.height() / size);
        float[] linear = picture.linear();
        int full = (int) (FULL * (linear.length - 1));
        int[][] row = new int[3][picture.width()];
        boolean[] clips = new boolean[cells.known.length];
        OpenedPicture.Rows rows = picture.rows();
        for (int y = 0; y < cells.height * size; y++) {
            rows.read(y, row[0], row[1], row[2]);
            for (int x = 0; x < cells.width * size; x++) {
                int cell = y / size * cells.width + x / size;
                for (int c = 0; c < 3; c++) {
                    cells.light[c][cell] += linear[row[c][x]];
                    clips[cell] |= row[c][x] >= full;
                }
            }
        }
        for (int i = 0; i < clips.length; i++) {
            boolean enough = true;
            for (int c = 0; c < 3; c++) {
                cells.light[c][i] /= size * size;
                enough &= cells.light[c][i] > LEAST;
            }
            cells.known[i] = enough && !clips[i];
        }
        return cells;
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    boolean known(int cell) {
        return known[cell];
    }

    /** Mean linear light of a colour, 0 to 1. */
    float light(int colour, int cell) {
        return light[colour][cell];
    }

    /** log2 of the luminance. */
    double level(int cell) {
        double y = 0.2126 * light[0][cell] + 0.7152 * light[1][cell] + 0.0722 * light[2][cell];
        return Math.log(Math.max(1e-6, y)) / Math.log(2);
    }
}
