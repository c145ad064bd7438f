package ebblight.demo;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * Single points of open water under a sky that never changes, seen through the lens of the whole cove: a process that
 * is the same at all times, so that long means tell what an exposure truly leaves of its texture.
 */
public final class OpenWater {

    private static final int BELOW_HORIZON = 4;

    private final View view;
    private final int step;
    private final int[] points;

    /**
     * Water in {@code weather}.
     *
     * @param width of the picture whose pixels the points are, 48 to 4096
     * @param step pixels from point to point, 1 or more
     */
    public OpenWater(Weather weather, int width, int step, Work work) {
        view = Coast.in(weather).view(width, work);
        this.step = step;
        List<Integer> open = new ArrayList<>();
        for (int y = view.water().firstRow() + BELOW_HORIZON; y < view.height(); y += step) {
            for (int x = step / 2; x < width; x += step) {
                if (view.open(x, y)) {
                    open.add(y * width + x);
                }
            }
        }
        points = open.stream().mapToInt(Integer::intValue).toArray();
    }

    /** Number of points. */
    public int points() {
        return points.length;
    }

    /** Where each point lies in the picture, in order: row · width + column. */
    public int[] places() {
        return points.clone();
    }

    /** The points at each instant, side by side in one row, scene-linear light without noise. */
    public RgbPicture[] at(double[] timesSeconds, Work work) {
        int pieces = Math.min(8, timesSeconds.length);
        RgbPicture[] rows = new RgbPicture[timesSeconds.length];
        work.forEach(pieces, piece -> {
            View.Space space = view.space();
            float[] horizon = view.steadySky(space);
            for (int i = piece * rows.length / pieces; i < (piece + 1) * rows.length / pieces; i++) {
                work.check();
                rows[i] = RgbPicture.black(points.length, 1);
                at(timesSeconds[i], space, horizon, rows[i]);
            }
        });
        return rows;
    }

    private void at(double timeSeconds, View.Space space, float[] horizon, RgbPicture row) {
        view.sea().at(timeSeconds, space.sea);
        int width = view.width();
        int painted = -1;
        for (int i = 0; i < points.length; i++) {
            int y = points[i] / width;
            if (y != painted) {
                view.water().light(y, step / 2, step, space, horizon);
                painted = y;
            }
            for (int c = 0; c < 3; c++) {
                row.plane(c)[i] = space.water.rgb[3 * (points[i] - y * width) + c];
            }
        }
    }
}
