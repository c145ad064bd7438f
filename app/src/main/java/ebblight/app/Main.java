package ebblight.app;

/** Where the program starts. */
public final class Main {

    private Main() {}

    public static void main(String[] arguments) {
        System.exit(EbblightCommand.run(arguments));
    }
}
