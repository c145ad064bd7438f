package ebblight.core.exposure;

import ebblight.core.numeric.Rounding;

/** Reading and writing decimals without the help of the platform. */
public final class Numbers {

    private Numbers() {}

    static double parse(String text, String typed, String expected) {
        try {
            double value = Double.parseDouble(text.trim());
            if (Double.isNaN(value) || Double.isInfinite(value)) {
                throw new UnreadableTextException(typed, expected);
            }
            return value;
        } catch (NumberFormatException e) {
            throw new UnreadableTextException(typed, expected);
        }
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
