package ebblight.app;

/** Where the program starts. */
public final class Main {

    private Main() {}

    public static void main(String[] arguments) {
        // Asked for most often by scripts, and needs nothing else to be loaded.
        if (arguments.length == 1 && arguments[0].equals("--version")) {
            System.out.println(EbblightCommand.VERSION);
            return;
        }
        Interruption.watch();
        int code = ExitCode.OUR_FAULT;
        try {
            code = EbblightCommand.run(arguments);
        } finally {
            Interruption.over();
        }
        System.exit(code);
    }
}
