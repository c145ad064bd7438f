package ebblight.imaging.repair;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/** The dark corners of stacked filters: stops lost grow as the square of the distance from the middle. */
final class DarkCorners {

    private DarkCorners() {}

    /** @param cornerStops that the corners lack, 0 at the middle */
    static Change repair(RgbPicture picture, double cornerStops, Work work) {
        int w = picture.width();
        int h = picture.height();
        double corner = (w * (double) w + h * (double) h) / 4;
        work.forEach(h, y -> {
            double dy = y + 0.5 - h / 2.0;
            for (int x = 0; x < w; x++) {
                double dx = x + 0.5 - w / 2.0;
                float gain = (float) Math.pow(2, cornerStops * (dx * dx + dy * dy) / corner);
                for (int c = 0; c < 3; c++) {
                    float[] plane = picture.plane(c);
                    // what is clipped has lost nothing that could be given back
                    plane[y * w + x] = plane[y * w + x] >= 1 ? plane[y * w + x] : Math.min(1, gain * plane[y * w + x]);
                }
            }
        });
        return new Change("vignetting", w * h, 0, "corners lightened by " + Places.of(cornerStops, 2) + " stop");
    }
}
