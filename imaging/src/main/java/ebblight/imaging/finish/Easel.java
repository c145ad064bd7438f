package ebblight.imaging.finish;

import ebblight.core.numeric.Resample;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/** Levels and crops in linear light: the picture turned about its middle by cubic convolution, blades in whole pixels. */
public final class Easel {

    private final int width;
    private final int height;
    private final double cosine;
    private final double sine;
    /** The largest part of the picture's own ratio that a turn leaves without empty corners. */
    private final int levelWidth;

    private final int levelHeight;

    /** A picture of {@code width × height} turned clockwise by {@code degrees}, −45 to 45. */
    public Easel(int width, int height, double degrees) {
        this.width = width;
        this.height = height;
        double angle = degrees * Math.PI / 180;
        cosine = StrictMath.cos(angle);
        sine = StrictMath.sin(angle);
        double c = cosine;
        double s = Math.abs(sine);
        double kept = Math.min(width / (width * c + height * s), height / (width * s + height * c));
        // what leans on samples beyond the border is left out
        levelWidth = degrees == 0 ? width : Math.max(1, (int) Math.floor(width * kept) - 2);
        levelHeight = degrees == 0 ? height : Math.max(1, (int) Math.floor(height * kept) - 2);
    }

    /** Whole pixels of the levelled picture. */
    public record Cut(int left, int top, int width, int height) {}

    /** All that a turn leaves without empty corners. */
    public Cut whole() {
        return new Cut(0, 0, levelWidth, levelHeight);
    }

    Cut cut(Crop crop) {
        if (crop instanceof Crop.Blades b) {
            int left = (int) Math.round(b.left() * levelWidth);
            int top = (int) Math.round(b.top() * levelHeight);
            int right = (int) Math.round(b.right() * levelWidth);
            int bottom = (int) Math.round(b.bottom() * levelHeight);
            return new Cut(left, top, Math.max(1, right - left), Math.max(1, bottom - top));
        }
        if (crop instanceof Crop.Paper p) {
            double ratio = p.pictureWidth() / p.pictureHeight();
            int w = (int) Math.max(1, Math.min(levelWidth, Math.round(levelHeight * ratio)));
            int h = (int) Math.max(1, Math.min(levelHeight, Math.round(w / ratio)));
            return new Cut(placed(p.x(), w, levelWidth), placed(p.y(), h, levelHeight), w, h);
        }
        return whole();
    }

    private static int placed(double middle, int size, int of) {
        return (int) Math.max(0, Math.min(of - size, Math.round(middle * of - size / 2.0)));
    }

    /** The part {@code cut} of the levelled picture. */
    public RgbPicture lay(RgbPicture picture, Cut cut, Work work) {
        if (sine == 0 && cut.width == width && cut.height == height) {
            return picture;
        }
        RgbPicture out = RgbPicture.black(cut.width, cut.height);
        work.forEach(cut.height, y -> {
            double[] across = new double[4];
            double[] down = new double[4];
            for (int x = 0; x < cut.width; x++) {
                int to = y * cut.width + x;
                if (sine == 0) {
                    int from = (cut.top + y) * width + cut.left + x;
                    for (int c = 0; c < 3; c++) {
                        out.plane(c)[to] = picture.plane(c)[from];
                    }
                } else {
                    double dx = cut.left + x + 0.5 - levelWidth / 2.0;
                    double dy = cut.top + y + 0.5 - levelHeight / 2.0;
                    // the place that a clockwise turn (y down) brings here
                    double u = width / 2.0 + cosine * dx + sine * dy - 0.5;
                    double v = height / 2.0 - sine * dx + cosine * dy - 0.5;
                    turned(picture, u, v, across, down, out, to);
                }
            }
        });
        return out;
    }

    private void turned(
            RgbPicture picture, double u, double v, double[] across, double[] down, RgbPicture out, int to) {
        int left = (int) Math.floor(u);
        int top = (int) Math.floor(v);
        Resample.cubicWeights(u - left, across);
        Resample.cubicWeights(v - top, down);
        for (int c = 0; c < 3; c++) {
            float[] plane = picture.plane(c);
            double sum = 0;
            for (int j = 0; j < 4; j++) {
                int row = Math.max(0, Math.min(height - 1, top - 1 + j)) * width;
                double line = 0;
                for (int i = 0; i < 4; i++) {
                    line += across[i] * plane[row + Math.max(0, Math.min(width - 1, left - 1 + i))];
                }
                sum += down[j] * line;
            }
            out.plane(c)[to] = (float) Math.max(0, sum);
        }
    }
}
