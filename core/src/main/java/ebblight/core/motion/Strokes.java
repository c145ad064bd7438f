package ebblight.core.motion;

import ebblight.core.numeric.Rounding;
import java.util.ArrayList;
import java.util.List;

/**
 * What the photographer says of parts of the picture: lines drawn over it, each naming how that part moves. Points are
 * fractions of the picture's width and height, 0 to 1 from the top left, and lie in the picture as it was handed in.
 */
public record Strokes(List<Stroke> strokes) {

    public Strokes {
        strokes = List.copyOf(strokes);
    }

    /** No strokes at all. */
    public static Strokes none() {
        return new Strokes(List.of());
    }

    public boolean isEmpty() {
        return strokes.isEmpty();
    }

    /**
     * One line.
     *
     * @param kind how the part under the line moves
     * @param points its corners, one or more
     * @param width as a fraction of the picture's width, 0 to 0.25: all under the line is of its kind, and nothing else;
     *     0 points at what is of its kind
     */
    public record Stroke(Kind kind, List<Point> points, double width) {

        private static final double WIDEST = 0.25;

        public Stroke {
            if (points.isEmpty()) {
                throw new IllegalArgumentException("a stroke needs a point or more");
            }
            if (!(width >= 0 && width <= WIDEST)) {
                throw new IllegalArgumentException(
                        "a stroke is at most a quarter of the picture wide, 0 to 0.25, was " + width);
            }
            points = List.copyOf(points);
        }

        /** A line that only points. */
        public Stroke(Kind kind, List<Point> points) {
            this(kind, points, 0);
        }
    }

    /** A place as fractions of width and height, 0 to 1. */
    public record Point(double x, double y) {
        public Point {
            if (!(x >= 0 && x <= 1 && y >= 0 && y <= 1)) {
                throw new IllegalArgumentException(
                        "a point must lie within 0 and 1 of width and height, was " + x + ", " + y);
            }
        }
    }

    /** The strokes in a picture from which {@code crop} pixels were cut at every side; what falls outside is dropped. */
    Strokes cropped(int crop, int fullWidth, int fullHeight) {
        if (crop == 0) {
            return this;
        }
        List<Stroke> kept = new ArrayList<>();
        for (Stroke stroke : strokes) {
            List<Point> inside = new ArrayList<>();
            for (Point point : stroke.points()) {
                double x = (point.x() * fullWidth - crop) / (fullWidth - 2.0 * crop);
                double y = (point.y() * fullHeight - crop) / (fullHeight - 2.0 * crop);
                if (x >= 0 && x <= 1 && y >= 0 && y <= 1) {
                    inside.add(new Point(x, y));
                }
            }
            if (!inside.isEmpty()) {
                double wider = stroke.width() * fullWidth / (fullWidth - 2.0 * crop);
                kept.add(new Stroke(stroke.kind(), inside, Math.min(Stroke.WIDEST, wider)));
            }
        }
        return new Strokes(kept);
    }

    /** Writes the column of a stroke's kind into every pixel under it; later strokes lie over earlier ones. */
    static void cover(Stroke stroke, int width, int height, byte[] covered) {
        double radius = stroke.width() * width / 2;
        List<Point> points = stroke.points();
        for (int k = 0; radius > 0 && k < points.size(); k++) {
            Point a = points.get(Math.max(0, k - 1));
            Point b = points.get(k);
            double ax = a.x() * (width - 1);
            double ay = a.y() * (height - 1);
            double dx = b.x() * (width - 1) - ax;
            double dy = b.y() * (height - 1) - ay;
            double length = dx * dx + dy * dy;
            int top = (int) Math.max(0, Math.ceil(Math.min(ay, ay + dy) - radius));
            int bottom = (int) Math.min(height - 1, Math.floor(Math.max(ay, ay + dy) + radius));
            int left = (int) Math.max(0, Math.ceil(Math.min(ax, ax + dx) - radius));
            int right = (int) Math.min(width - 1, Math.floor(Math.max(ax, ax + dx) + radius));
            for (int y = top; y <= bottom; y++) {
                for (int x = left; x <= right; x++) {
                    double along = length > 0 ? ((x - ax) * dx + (y - ay) * dy) / length : 0;
                    double t = Math.max(0, Math.min(1, along));
                    double far = x - ax - t * dx;
                    double off = y - ay - t * dy;
                    if (far * far + off * off <= radius * radius) {
                        covered[y * width + x] = (byte) stroke.kind().column();
                    }
                }
            }
        }
    }

    /** Pixels along a stroke, at most {@code most} of them, spread evenly. */
    static int[] pixels(Stroke stroke, int width, int height, int most) {
        List<Integer> all = new ArrayList<>();
        List<Point> points = stroke.points();
        for (int k = 0; k < points.size(); k++) {
            Point a = points.get(Math.max(0, k - 1));
            Point b = points.get(k);
            double ax = a.x() * (width - 1);
            double ay = a.y() * (height - 1);
            double bx = b.x() * (width - 1);
            double by = b.y() * (height - 1);
            int steps = (int) Math.ceil(Math.max(Math.abs(bx - ax), Math.abs(by - ay)));
            for (int s = 1; s <= Math.max(1, steps); s++) {
                double t = steps == 0 ? 1 : (double) s / steps;
                int x = (int) Rounding.even(ax + t * (bx - ax));
                int y = (int) Rounding.even(ay + t * (by - ay));
                all.add(y * width + x);
            }
        }
        int step = Math.max(1, (all.size() + most - 1) / most);
        int[] thinned = new int[(all.size() + step - 1) / step];
        for (int i = 0; i < thinned.length; i++) {
            thinned[i] = all.get(i * step);
        }
        return thinned;
    }
}
