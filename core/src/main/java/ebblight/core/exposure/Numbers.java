package ebblight.core.exposure;

import ebblight.core.numeric.Rounding;

/** Reading and writing decimals without the help of the platform. */
public final class Numbers {

    private static final String OF_DECIMALS = "0123456789.+-eE";

    private Numbers() {}

    /** A finite decimal; {@code 6f} and {@code 0x10}, which Java takes for numbers, are none. */
    static double parse(String text, String typed, String expected) {
        String plain = text.trim();
        for (int i = 0; i < plain.length(); i++) {
            if (OF_DECIMALS.indexOf(plain.charAt(i)) < 0) {
                throw new UnreadableTextException(typed, expected);
            }
        }
        try {
            double value = Double.parseDouble(plain);
            if (Double.isInfinite(value)) {
                throw new UnreadableTextException(typed, expected);
            }
            return value;
        } catch (NumberFormatException e) {
            throw new UnreadableTextException(typed, expected);
        }
    }

    /** Stops with one decimal and their word: "1 stop", "1.3 stops". */
    public static String stops(double value) {
        String text = shortest(value, 1);
        return text + (text.equals("1") ? " stop" : " stops");
    }

    /** The value with at most {@code decimals} decimals, trailing zeros cut. */
    public static String shortest(double value, int decimals) {
        double scale = 1;
        for (int i = 0; i < decimals; i++) {
            scale *= 10;
        }
        long scaled = Rounding.up(Math.abs(value) * scale);
        long whole = scaled / (long) scale;
        StringBuilder text = new StringBuilder();
        if (value < 0 && scaled > 0) {
            text.append('-');
        }
        text.append(whole);
        String rest =
                Long.toString(scaled - whole * (long) scale + (long) scale).substring(1);
        int end = rest.length();
        while (end > 0 && rest.charAt(end - 1) == '0') {
            end--;
        }
        if (end > 0) {
            text.append('.').append(rest, 0, end);
        }
        return text.toString();
    }
}
