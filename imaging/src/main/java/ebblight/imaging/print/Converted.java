package ebblight.imaging.print;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.IccProfile;

/** Linear light brought from the primaries of one profile to those of another, in place. */
public final class Converted {

    /** Rounding of profiles in 16 bits is no colour out of reach. */
    private static final double SMALL = 1e-3;

    private Converted() {}

    /**
     * Changes the primaries of a picture.
     *
     * @return the share of pixels that the other profile cannot hold, which are led towards their own grey
     */
    public static double to(RgbPicture picture, IccProfile from, IccProfile to, Work work) {
        double[] m = from.to(to);
        double[] y = to.toXyz();
        int w = picture.width();
        long[] beyond = new long[picture.height()];
        work.forEach(picture.height(), row -> {
            for (int p = row * w; p < (row + 1) * w; p++) {
                double r = picture.red()[p];
                double g = picture.green()[p];
                double b = picture.blue()[p];
                double red = m[0] * r + m[1] * g + m[2] * b;
                double green = m[3] * r + m[4] * g + m[5] * b;
                double blue = m[6] * r + m[7] * g + m[8] * b;
                double least = Math.min(red, Math.min(green, blue));
                double most = Math.max(red, Math.max(green, blue));
                double light = Math.max(0, Math.min(1, y[3] * red + y[4] * green + y[5] * blue));
                double kept = 1;
                if (least < -SMALL) {
                    kept = Math.min(kept, light / (light - least));
                }
                if (most > 1 + SMALL) {
                    kept = Math.min(kept, light >= 1 ? 0 : (1 - light) / (most - light));
                }
                beyond[row] += kept < 1 ? 1 : 0;
                picture.red()[p] = (float) (light + kept * (red - light));
                picture.green()[p] = (float) (light + kept * (green - light));
                picture.blue()[p] = (float) (light + kept * (blue - light));
            }
        });
        long all = 0;
        for (long each : beyond) {
            all += each;
        }
        return (double) all / ((long) w * picture.height());
    }
}
