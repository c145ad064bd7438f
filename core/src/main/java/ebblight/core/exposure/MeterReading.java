package ebblight.core.exposure;

import ebblight.core.numeric.Pieces;
import ebblight.core.numeric.Powers;
import java.util.Locale;

/**
 * What the meter says without a filter: the settings for a right exposure. Aperture and sensitivity typed near a dial
 * label mean the exact value behind it; the time is taken as typed.
 */
public record MeterReading(double fNumber, double seconds, double iso) {

    private static final String EXPECTED = "a reading such as \"f/16 1/100 ISO100\"";

    public MeterReading {
        check("f-number", fNumber, 0.5, 128);
        check("shutter time", seconds, 1e-5, 86_400);
        check("ISO", iso, 1, 1_000_000);
    }

    private static void check(String name, double value, double low, double high) {
        if (!(value >= low && value <= high)) {
            throw new IllegalArgumentException(name + " must lie between " + low + " and " + high + ", was " + value);
        }
    }

    /** Reads aperture, time and ISO in any order, separated by blanks or commas. */
    public static MeterReading parse(String typed) {
        double fNumber = 0;
        double seconds = 0;
        double iso = 0;
        String text = typed.trim().replace("ISO ", "ISO").replace("iso ", "iso").replace("f/ ", "f/");
        for (String word : Pieces.of(text, " ,;\t\n")) {
            String lower = word.toLowerCase(Locale.ROOT);
            if (lower.startsWith("iso")) {
                iso = Numbers.parse(lower.substring(3), typed, EXPECTED);
            } else if (lower.startsWith("f")) {
                fNumber = Numbers.parse(lower.substring(lower.startsWith("f/") ? 2 : 1), typed, EXPECTED);
            } else {
                seconds = time(word, typed);
            }
        }
        if (!(fNumber > 0) || !(seconds > 0) || !(iso > 0)) {
            throw new UnreadableTextException(typed, EXPECTED);
        }
        return new MeterReading(ThirdStops.exactFNumber(fNumber), seconds, ThirdStops.exactIso(iso));
    }

    /** Whatever is neither aperture nor ISO should be the time; who typed something else is told of the whole reading. */
    private static double time(String word, String typed) {
        try {
            return ShutterTime.parse(word);
        } catch (UnreadableTextException e) {
            throw new UnreadableTextException(typed, EXPECTED);
        }
    }

    /** Exposure value at ISO 100: log2(N²/t) − log2(S/100). */
    public double exposureValue100() {
        return Powers.log2(fNumber * fNumber / seconds) - Powers.log2(iso / 100);
    }
}
