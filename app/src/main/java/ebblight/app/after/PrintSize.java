package ebblight.app.after;

import ebblight.app.ask.UsageException;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Size of a picture on paper; a side that is 0 follows the picture.
 *
 * @param widthCentimetres of the picture without its border
 * @param heightCentimetres of the picture without its border
 */
public record PrintSize(double widthCentimetres, double heightCentimetres) {

    private static final Pattern TYPED =
            Pattern.compile("(\\d+(?:\\.\\d+)?)?\\s*[x×]\\s*(\\d+(?:\\.\\d+)?)?\\s*(?:cm)?", Pattern.CASE_INSENSITIVE);
    private static final double INCH = 2.54;
    private static final double LARGEST = 1000;
    /** A picture and a size whose ratios differ by no more than this are the same: the rest is trimmed. */
    private static final double SAME_RATIO = 0.005;

    /** Reads {@code 60x40}, {@code 60x} or {@code x40}, in centimetres. */
    public static PrintSize parse(String typed) {
        Matcher m = TYPED.matcher(typed.strip());
        if (m.matches() && (m.group(1) != null || m.group(2) != null)) {
            double w = m.group(1) == null ? 0 : Double.parseDouble(m.group(1));
            double h = m.group(2) == null ? 0 : Double.parseDouble(m.group(2));
            if (w + h > 0 && w <= LARGEST && h <= LARGEST) {
                return new PrintSize(w, h);
            }
        }
        throw new UsageException("--size: \"" + typed + "\" is no size; expected centimetres such as 60x40, 60x or x40,"
                + " at most 1000");
    }

    /** A typed size of both sides as it stands on a certificate, such as 60 × 40 cm. */
    public static String words(String typed) {
        PrintSize size = parse(typed);
        if (size.widthCentimetres == 0 || size.heightCentimetres == 0) {
            throw new UsageException("--size: a certificate says both sides, such as 60x40; was " + typed);
        }
        return plain(size.widthCentimetres) + " × " + plain(size.heightCentimetres) + " cm";
    }

    /** The size of so many pixels. */
    static PrintSize of(int width, int height, double pixelsPerInch) {
        return new PrintSize(width / pixelsPerInch * INCH, height / pixelsPerInch * INCH);
    }

    /** Both sides for a picture of so many pixels; refuses another ratio than that of the picture. */
    PrintSize of(int width, int height) {
        double ratio = (double) width / height;
        double w = widthCentimetres > 0 ? widthCentimetres : heightCentimetres * ratio;
        double h = heightCentimetres > 0 ? heightCentimetres : widthCentimetres / ratio;
        if (Math.abs(w / h / ratio - 1) > SAME_RATIO) {
            throw new UsageException(String.format(
                    Locale.ROOT,
                    "--size: %s × %s cm has another ratio than the picture of %d × %d pixels; crop it by finish"
                            + " (crop.paper), or give one side: %sx",
                    plain(w),
                    plain(h),
                    width,
                    height,
                    plain(w)));
        }
        return new PrintSize(w, h);
    }

    static int pixels(double centimetres, double pixelsPerInch) {
        return (int) Math.max(1, Math.round(centimetres * pixelsPerInch / INCH));
    }

    static String plain(double value) {
        double hundredths = Math.rint(100 * value) / 100;
        return hundredths == Math.rint(hundredths) ? Long.toString((long) hundredths) : Double.toString(hundredths);
    }
}
