package ebblight.app;

/** What the program's exit code says. */
final class ExitCode {
    static final int DONE = 0;
    static final int OUR_FAULT = 1;
    static final int WRONG_USAGE = 2;
    static final int UNUSABLE_INPUT = 3;
    /** The question has no answer; the document is printed all the same and says which wish to relax. */
    static final int NO_ANSWER = 4;

    static final int INTERRUPTED = 130;

    private ExitCode() {}
}
