package ebblight.imaging.repair;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/**
 * The colour that a filter gives, as what it lets through of red and blue against green; linear light is divided by it.
 * Light that is clipped says nothing of its colour and stays white.
 *
 * @param red gain above 0, green is 1
 * @param blue gain above 0, green is 1
 */
public record Cast(double red, double blue) {

    private static final double MOST = 8;
    /** Where the fading towards white begins. */
    private static final double NEARLY_CLIPPED = 0.9;

    private static final double DARKEST = 0.002;
    private static final double LIGHTEST = 0.95;

    public Cast {
        if (!(red >= 1 / MOST && red <= MOST && blue >= 1 / MOST && blue <= MOST)) {
            throw new IllegalArgumentException(
                    "gains of a cast must lie between 1/8 and 8, were red " + red + ", blue " + blue);
        }
    }

    /** An upright part of a picture, as fractions 0 to 1 of width and height. */
    public record Area(double left, double top, double right, double bottom) {
        public Area {
            if (!(left >= 0 && top >= 0 && right <= 1 && bottom <= 1 && left < right && top < bottom)) {
                throw new IllegalArgumentException("an area must keep 0 ≤ left < right ≤ 1 and 0 ≤ top < bottom ≤ 1");
            }
        }
    }

    /** The cast that makes the mean of {@code area} grey. */
    static Cast ofNeutral(RgbPicture picture, Area area) {
        int w = picture.width();
        int h = picture.height();
        double[] sum = new double[3];
        int n = 0;
        for (int y = (int) (area.top * h); y < (int) Math.ceil(area.bottom * h); y++) {
            for (int x = (int) (area.left * w); x < (int) Math.ceil(area.right * w); x++) {
                n++;
                for (int c = 0; c < 3; c++) {
                    sum[c] += picture.plane(c)[y * w + x];
                }
            }
        }
        for (double each : sum) {
            if (n < 25 || each < DARKEST * n || each > LIGHTEST * n) {
                throw new IllegalArgumentException("neutral: the area is too small, too dark or clipped (" + n
                        + " pixels); choose a grey part between");
            }
        }
        return new Cast(sum[0] / sum[1], sum[2] / sum[1]);
    }

    Change repair(RgbPicture picture, Work work) {
        int w = picture.width();
        int[] clipped = new int[picture.height()];
        work.forEach(picture.height(), y -> {
            for (int i = y * w; i < (y + 1) * w; i++) {
                float r = picture.red()[i];
                float b = picture.blue()[i];
                double most = Math.max(Math.max(r, b), picture.green()[i]);
                double kept = Math.max(0, Math.min(1, (most - NEARLY_CLIPPED) / (1 - NEARLY_CLIPPED)));
                picture.red()[i] = (float) (r * (kept + (1 - kept) / red));
                picture.blue()[i] = (float) (b * (kept + (1 - kept) / blue));
                clipped[y] += kept > 0 ? 1 : 0;
            }
        });
        int left = 0;
        for (int each : clipped) {
            left += each;
        }
        return new Change(
                "cast",
                w * picture.height() - left,
                left,
                "cast taken off: red " + Places.of(red, 3) + ", blue " + Places.of(blue, 3) + " of green; " + left
                        + " pixels near clipping kept their white");
    }
}
