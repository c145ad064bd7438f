package ebblight.engine;

/** Reads a typed text from left to right; what does not fit makes it unfit for good. */
final class TextReader {

    private final String text;
    private int at;
    private boolean fits = true;

    TextReader(String text) {
        this.text = text.trim();
    }

    /** Whether all of the text was read and all of it fitted. */
    boolean readWhole() {
        return fits && at == text.length();
    }

    /** Whether the next character is one of {@code any}; then it is read. */
    boolean next(String any) {
        boolean found = at < text.length() && any.indexOf(text.charAt(at)) >= 0;
        at += found ? 1 : 0;
        return found;
    }

    /** Reads one character of {@code any}. */
    TextReader one(String any) {
        fits &= next(any);
        return this;
    }

    /** The whole number of the next digits, {@code least} to {@code most} of them; 0 when they are not there. */
    int digits(int least, int most) {
        int number = 0;
        int count = 0;
        while (count < most && at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
            number = 10 * number + text.charAt(at) - '0';
            at++;
            count++;
        }
        fits &= count >= least;
        return number;
    }

    /** The digits after a point as billionths. */
    int billionths() {
        int start = at;
        int number = digits(1, 9);
        for (int count = at - start; count < 9; count++) {
            number *= 10;
        }
        return number;
    }

    /** Whether anything is left to read. */
    boolean more() {
        return at < text.length();
    }
}
