package ebblight.app;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** Where a command speaks: results on standard output, everything else on standard error. */
final class Printer {

    private final PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    private final PrintStream err = new PrintStream(System.err, true, StandardCharsets.UTF_8);
    /** The launcher knows whether a person looks at each stream; Java 17 cannot tell them apart. */
    private final boolean colour = Boolean.getBoolean("ebblight.colour") && System.getenv("NO_COLOR") == null;

    private final DeskWork work = new DeskWork(err, Boolean.getBoolean("ebblight.progress"));

    /** The work that this command runs, its progress shown beside what is printed here. */
    DeskWork work() {
        return work;
    }

    /** One line of the result. */
    void line(String text) {
        work.quiet();
        out.println(text);
    }

    /** One line of the result with printf's formatting, always with a point in decimals. */
    void line(String format, Object... arguments) {
        line(String.format(java.util.Locale.ROOT, format, arguments));
    }

    /** Something the person should know that is not the result. */
    void note(String text) {
        work.quiet();
        err.println(text);
    }

    /** Text made bold on a terminal. */
    String strong(String text) {
        return colour ? "\033[1m" + text + "\033[0m" : text;
    }

    /** Text made faint on a terminal. */
    String faint(String text) {
        return colour ? "\033[2m" + text + "\033[0m" : text;
    }
}
