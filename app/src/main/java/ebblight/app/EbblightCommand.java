package ebblight.app;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The command line as a whole: its commands are registered here. */
@Command(name = "ebblight", mixinStandardHelpOptions = true, version = "ebblight 0.1.0")
final class EbblightCommand {

    private EbblightCommand() {}

    static int run(String... arguments) {
        return new CommandLine(new EbblightCommand()).execute(arguments);
    }
}
