package ebblight.imaging.finish;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.grain.Grain;

/**
 * Takes noise out in linear light, as much as its variance says: where a neighbourhood varies no more than noise does, its
 * mean is taken; where it varies more, the part that is picture stays (local linear estimate, Lee 1980, the estimates of
 * all windows over a pixel averaged). Luminance by a small window, colour by a larger one.
 */
final class GrainReduction {

    private static final int FINE = 2;
    private static final int COARSE = 4;
    /** Noise of red or blue less luminance over that of luminance, for channels alike: 1.15 / 0.56. */
    private static final double COLOUR_VARIANCE = 2;

    private GrainReduction() {}

    /** Changes the picture in place. */
    static void apply(RgbPicture picture, Colours space, Grain grain, double strength, Work work) {
        int w = picture.width();
        int h = picture.height();
        float[] r = picture.red();
        float[] g = picture.green();
        float[] b = picture.blue();
        float[] y = new float[w * h];
        work.forEach(h, row -> {
            for (int p = row * w; p < (row + 1) * w; p++) {
                y[p] = (float) space.luminance(r[p], g[p], b[p]);
                r[p] -= y[p];
                b[p] -= y[p];
            }
        });
        work.progress(0.1, "taking out grain");
        for (float[] plane : new float[][] {r, b}) {
            float[] from = plane.clone();
            calm(from, y, plane, w, h, COARSE, grain, COLOUR_VARIANCE * strength * strength, work);
        }
        calm(y, y, g, w, h, FINE, grain, strength * strength, work);
        double red = space.luminance(1, 0, 0);
        double green = space.luminance(0, 1, 0);
        double blue = space.luminance(0, 0, 1);
        work.forEach(h, row -> {
            for (int p = row * w; p < (row + 1) * w; p++) {
                double light = g[p];
                double differences = red * r[p] + blue * b[p];
                g[p] = (float) Math.max(0, light - differences / green);
                r[p] = (float) Math.max(0, light + r[p]);
                b[p] = (float) Math.max(0, light + b[p]);
            }
        });
    }

    /**
     * One plane.
     *
     * @param light luminance, by which the noise is told
     */
    private static void calm(
            float[] plane,
            float[] light,
            float[] destination,
            int width,
            int height,
            int radius,
            Grain grain,
            double times,
            Work work) {
        float[] noise = new float[plane.length];
        work.forEach(height, row -> {
            for (int p = row * width; p < (row + 1) * width; p++) {
                noise[p] = (float) (times * grain.variance(light[p]));
            }
        });
        float[] slope = new float[plane.length];
        float[] offset = new float[plane.length];
        int reach = 2 * radius + 1;
        Bands.filter(plane, offset, width, height, reach, work, (band, w, rows) -> box(band, w, rows, radius));
        float[] squares = new float[plane.length];
        work.forEach(height, row -> {
            for (int p = row * width; p < (row + 1) * width; p++) {
                squares[p] = (float) ((double) plane[p] * plane[p]);
            }
        });
        Bands.filter(squares, slope, width, height, reach, work, (band, w, rows) -> box(band, w, rows, radius));
        work.forEach(height, row -> {
            for (int p = row * width; p < (row + 1) * width; p++) {
                double mean = offset[p];
                double variance = Math.max(0, slope[p] - mean * mean);
                double kept = variance > noise[p] ? (variance - noise[p]) / variance : 0;
                squares[p] = (float) kept;
                noise[p] = (float) (mean * (1 - kept));
            }
        });
        Bands.filter(squares, slope, width, height, reach, work, (band, w, rows) -> box(band, w, rows, radius));
        Bands.filter(noise, offset, width, height, reach, work, (band, w, rows) -> box(band, w, rows, radius));
        work.forEach(height, row -> {
            for (int p = row * width; p < (row + 1) * width; p++) {
                destination[p] = (float) ((double) slope[p] * plane[p] + offset[p]);
            }
        });
    }

    private static void box(float[] band, int width, int rows, int radius) {
        Blur.box(band, band, new float[band.length], width, rows, radius);
    }
}
