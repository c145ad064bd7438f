package ebblight.core.numeric;

import java.util.ArrayList;
import java.util.List;

/**
 * Takes typed text apart. Regular expressions would do it too, but they alone are an eighth of the phone page.
 */
public final class Pieces {

    private Pieces() {}

    /** What stands between runs of the characters of {@code separators}; never an empty piece. */
    public static List<String> of(String text, String separators) {
        List<String> pieces = new ArrayList<>();
        int from = 0;
        for (int i = 0; i <= text.length(); i++) {
            if (i == text.length() || separators.indexOf(text.charAt(i)) >= 0) {
                if (i > from) {
                    pieces.add(text.substring(from, i));
                }
                from = i + 1;
            }
        }
        return pieces;
    }
}
