package ebblight.app.ask;

import ebblight.core.exposure.ShutterTime;
import java.util.Locale;

/** Numbers as people read them. */
public final class Words {

    private Words() {}

    public static String time(double seconds) {
        return ShutterTime.words(seconds);
    }

    /** A time with its unit: "1/6 s", "10 s", "1 min 27 s". */
    public static String say(double seconds) {
        String words = time(seconds);
        return words.endsWith("s") || words.endsWith("min") ? words : words + " s";
    }

    /** A share as percent with as many decimals as it deserves. */
    public static String percent(double share) {
        double p = 100 * share;
        return String.format(Locale.ROOT, p >= 9.95 ? "%.0f %%" : "%.1f %%", p);
    }

    public static String number(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    /** Text made fit to stand in HTML and SVG. */
    public static String markup(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
