package ebblight.demo;

import ebblight.core.numeric.RgbPicture;

/** Draws what moves about in front of a scene: blades, boughs, people. */
final class Brush {

    private Brush() {}

    /**
     * A line with round ends, its edge as soft as a pixel; thinner than a pixel it keeps its share of light. Adds to
     * {@code cover} when that is not empty.
     */
    static void stroke(
            RgbPicture picture,
            double x0,
            double y0,
            double x1,
            double y1,
            double radius,
            float[] colour,
            float[] cover) {
        int w = picture.width();
        double reach = radius + 0.5;
        int left = (int) Math.max(0, Math.floor(Math.min(x0, x1) - reach));
        int right = (int) Math.min(w - 1, Math.ceil(Math.max(x0, x1) + reach));
        int top = (int) Math.max(0, Math.floor(Math.min(y0, y1) - reach));
        int bottom = (int) Math.min(picture.height() - 1, Math.ceil(Math.max(y0, y1) + reach));
        double dx = x1 - x0;
        double dy = y1 - y0;
        double length2 = Math.max(1e-12, dx * dx + dy * dy);
        double thin = radius < 0.5 ? 2 * radius / (reach * reach) : 1;
        for (int py = top; py <= bottom; py++) {
            for (int px = left; px <= right; px++) {
                double ax = px + 0.5 - x0;
                double ay = py + 0.5 - y0;
                double t = Math.max(0, Math.min(1, (ax * dx + ay * dy) / length2));
                double ox = ax - t * dx;
                double oy = ay - t * dy;
                double share = Math.min(1, reach - Math.sqrt(ox * ox + oy * oy)) * thin;
                if (share > 0) {
                    int i = py * w + px;
                    float a = (float) share;
                    picture.red()[i] += a * (colour[0] - picture.red()[i]);
                    picture.green()[i] += a * (colour[1] - picture.green()[i]);
                    picture.blue()[i] += a * (colour[2] - picture.blue()[i]);
                    if (cover.length > 0) {
                        cover[i] += a * (1 - cover[i]);
                    }
                }
            }
        }
    }
}
