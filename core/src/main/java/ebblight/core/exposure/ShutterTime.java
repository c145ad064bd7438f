package ebblight.core.exposure;

import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Rounding;

/** Shutter times as people type and read them; seconds inside. Typed times are never snapped to a dial. */
public final class ShutterTime {

    private static final String EXPECTED = "a time above 0 such as 1/60, 0.8s, 30s, 4m or 4m30s";
    private static final double LONGEST = 86_400;

    private ShutterTime() {}

    /** Seconds of {@code 1/60}, {@code 0.8}, {@code 0.8s}, {@code 30s}, {@code 4m}, {@code 4m30s} or {@code 1h}. */
    public static double parse(String typed) {
        String text = typed.trim().replace(" ", "");
        double seconds;
        int slash = text.indexOf('/');
        if (text.isEmpty()) {
            throw new UnreadableTextException(typed, EXPECTED);
        } else if (slash > 0) {
            String below = text.endsWith("s") ? text.substring(0, text.length() - 1) : text;
            double numerator = Numbers.parse(below.substring(0, slash), typed, EXPECTED);
            double denominator = Numbers.parse(below.substring(slash + 1), typed, EXPECTED);
            seconds = denominator > 0 ? numerator / denominator : 0;
        } else {
            seconds = withUnits(text, typed);
        }
        if (!(seconds > 0) || seconds > LONGEST) {
            throw new UnreadableTextException(typed, EXPECTED);
        }
        return seconds;
    }

    private static double withUnits(String text, String typed) {
        double seconds = 0;
        int from = 0;
        boolean any = false;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            double unit = c == 'h' ? 3600 : c == 'm' ? 60 : c == 's' ? 1 : 0;
            if (unit > 0) {
                double value = Numbers.parse(text.substring(from, i), typed, EXPECTED);
                if (value < 0) {
                    throw new UnreadableTextException(typed, EXPECTED);
                }
                seconds += unit * value;
                from = i + 1;
                any = true;
            }
        }
        if (from < text.length()) {
            double value = Numbers.parse(text.substring(from), typed, EXPECTED);
            if (value < 0) {
                throw new UnreadableTextException(typed, EXPECTED);
            }
            seconds += value;
        } else if (!any) {
            throw new UnreadableTextException(typed, EXPECTED);
        }
        return seconds;
    }

    /** A time for people: 1/125, 0.8 s, 2.5 s, 30 s, 4 min 30 s, 1 h 5 min. */
    public static String words(double seconds) {
        if (seconds < 0.29) {
            int k = ThirdStops.timeStep(seconds);
            boolean onDial =
                    k >= ThirdStops.firstTimeStep() && Math.abs(Powers.log2(seconds / ThirdStops.seconds(k))) < 0.02;
            return onDial ? ThirdStops.timeLabel(k) : "1/" + Numbers.shortest(1 / seconds, 0);
        }
        if (seconds < 9.95) {
            return Numbers.shortest(seconds, 1) + " s";
        }
        long whole = Rounding.up(seconds);
        if (whole < 60) {
            return whole + " s";
        }
        long minutes = whole / 60;
        if (minutes < 60) {
            return minutes + " min" + (whole % 60 == 0 ? "" : " " + whole % 60 + " s");
        }
        long rounded = Rounding.up(seconds / 60);
        return rounded / 60 + " h" + (rounded % 60 == 0 ? "" : " " + rounded % 60 + " min");
    }
}
