package ebblight.imaging;

/**
 * Shares at survey size within a whole picture.
 *
 * @param width pixels across
 * @param height pixels down
 * @param crop survey pixels that the picture has more on every side
 */
public record ShareGrid(int width, int height, int crop) {

    /** The plane over a picture of another size, by straight lines between its samples, its border carried outward. */
    float[] enlarged(float[] plane, int newWidth, int newHeight) {
        SurveyLines across = SurveyLines.of(newWidth, width, crop);
        SurveyLines down = SurveyLines.of(newHeight, height, crop);
        float[] out = new float[newWidth * newHeight];
        float[] row = new float[width];
        float[] wide = new float[newWidth];
        for (int y = 0; y < newHeight; y++) {
            down.row(plane, width, y, row);
            across.spread(row, wide);
            System.arraycopy(wide, 0, out, y * newWidth, newWidth);
        }
        return out;
    }

    /** Straight lines between samples, the border carried outward. */
    static double at(float[] plane, int w, int h, double x, double y) {
        double cx = Math.max(0, Math.min(w - 1, x));
        double cy = Math.max(0, Math.min(h - 1, y));
        int x0 = Math.min((int) cx, Math.max(0, w - 2));
        int y0 = Math.min((int) cy, Math.max(0, h - 2));
        int x1 = Math.min(x0 + 1, w - 1);
        int y1 = Math.min(y0 + 1, h - 1);
        double ax = cx - x0;
        double ay = cy - y0;
        double top = plane[y0 * w + x0] * (1 - ax) + plane[y0 * w + x1] * ax;
        double bottom = plane[y1 * w + x0] * (1 - ax) + plane[y1 * w + x1] * ax;
        return top * (1 - ay) + bottom * ay;
    }
}
