package ebblight.app.demo;

import ebblight.core.numeric.RgbPicture;
import ebblight.imaging.Srgb;
import java.nio.file.Path;

/**
 * A true exposure of the scene.
 *
 * @param seconds how long
 * @param picture in linear light
 * @param file where it was written
 */
public record TrueExposure(double seconds, RgbPicture picture, Path file) {

    /** The picture without a border of {@code pixels} on every side. */
    public RgbPicture without(int pixels) {
        if (pixels == 0) {
            return picture;
        }
        int w = picture.width() - 2 * pixels;
        RgbPicture inner = RgbPicture.black(w, picture.height() - 2 * pixels);
        for (int c = 0; c < 3; c++) {
            for (int y = 0; y < inner.height(); y++) {
                int from = (y + pixels) * picture.width() + pixels;
                System.arraycopy(picture.plane(c), from, inner.plane(c), y * w, w);
            }
        }
        return inner;
    }

    /**
     * Peak signal-to-noise ratio of a picture against a true one of the same size in sRGB codes, decibels, after its
     * light was made equal: fading is made up for by the settings.
     */
    public static double decibels(RgbPicture other, RgbPicture picture) {
        double gain = gain(other, picture);
        double sum = 0;
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < picture.plane(c).length; p++) {
                double d = Srgb.code(other.plane(c)[p] * gain) - Srgb.code(picture.plane(c)[p]);
                sum += d * d;
            }
        }
        return -10 * Math.log10(sum / (3.0 * picture.plane(0).length));
    }

    /** What makes the light of a picture, summed over all of it, that of another of the same size. */
    public static double gain(RgbPicture of, RgbPicture to) {
        double a = 0;
        double b = 0;
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < to.plane(c).length; p++) {
                a += of.plane(c)[p];
                b += to.plane(c)[p];
            }
        }
        return b / a;
    }
}
