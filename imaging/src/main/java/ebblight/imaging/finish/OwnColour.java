package ebblight.imaging.finish;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/**
 * One of the colours that a picture is made of.
 *
 * @param lightness L* of its middle
 * @param share of the picture, 0 to 1
 * @param stops by which it is made lighter or darker in black and white, −3 to 3
 */
public record OwnColour(double lightness, double a, double b, double share, double stops) {

    private static final double GREY = 6;

    public OwnColour {
        if (!(Math.abs(stops) <= 3)) {
            throw new IllegalArgumentException("stops must lie between −3 and 3, was " + stops);
        }
    }

    OwnColour with(double share, double stops) {
        return new OwnColour(lightness, a, b, share, stops);
    }

    /** A word for each colour of a picture; where two would be called the same, their L* tells them apart. */
    public static List<String> words(List<OwnColour> colours) {
        List<String> plain = colours.stream().map(OwnColour::word).toList();
        List<String> words = new ArrayList<>();
        for (int k = 0; k < plain.size(); k++) {
            String word = plain.get(k);
            boolean alone = Collections.frequency(plain, word) == 1;
            words.add(
                    alone ? word : word + " of L* " + Math.round(colours.get(k).lightness()));
        }
        return List.copyOf(words);
    }

    /** A word for it: hue by the angle in L*a*b*, grey where there is little. */
    public String word() {
        double chroma = Math.sqrt(a * a + b * b);
        String light = lightness < 25 ? "dark " : lightness > 75 ? "light " : "";
        if (chroma < GREY) {
            return light + (b > 2 ? "warm grey" : b < -2 ? "cool grey" : "grey");
        }
        double hue = (StrictMath.atan2(b, a) * 180 / Math.PI + 360) % 360;
        String[] words = {
            "pink",
            "red",
            "orange",
            "yellow",
            "green",
            "green",
            "sea green",
            "blue-green",
            "blue",
            "blue",
            "violet blue",
            "purple"
        };
        return light + words[(int) Math.floor(((hue + 15) % 360) / 30)];
    }
}
