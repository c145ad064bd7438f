package ebblight.app;

import ebblight.app.ask.UsageException;
import ebblight.app.made.Made;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import ebblight.imaging.OutputFile;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.InvalidPathException;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** The command line as a whole: its commands are registered here, and here failures become exit codes. */
@Command(
        name = "ebblight",
        description = {
            "Measures how water, cloud and foliage move, shows what a shutter time makes of them, and finds the"
                    + " settings that reach it.",
            ""
        },
        mixinStandardHelpOptions = true,
        version = EbblightCommand.VERSION,
        commandListHeading = "%nCommands:%n",
        subcommands = {
            DemoCommand.class,
            MeasureCommand.class,
            WishCommand.class,
            SettingsCommand.class,
            BalanceCommand.class,
            PreviewCommand.class,
            SlateCommand.class,
            SortCommand.class,
            FilterCheckCommand.class,
            StackCommand.class,
            BlendCommand.class,
            RepairCommand.class,
            FinishCommand.class,
            WriteCommand.class,
            AgainCommand.class,
            SkyCommand.class,
            TideCommand.class,
            WhenCommand.class,
            OutingCommand.class,
            OpenCommand.class,
            PocketCommand.class,
            OutcomesCommand.class
        },
        footer = {
            "",
            "Exit codes: 0 done, 2 wrong usage, 3 unusable input, 4 no answer exists, 130 interrupted, 1 our fault.",
            "Neutral-density filters are not solar filters: never look at the sun through an optical finder."
        })
final class EbblightCommand implements Runnable {

    static final String VERSION = Made.PROGRAM;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli before run
    private CommandSpec spec;

    private EbblightCommand() {}

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    static int run(String... arguments) {
        return line().execute(arguments);
    }

    /** A command that writes a picture, as it was typed. */
    static PictureCommand pictureCommand(String... arguments) {
        CommandLine line = line();
        CommandLine named = line.getSubcommands().get(arguments[0]);
        if (named != null && named.getCommand() instanceof PictureCommand command) {
            line.parseArgs(arguments);
            return command;
        }
        throw new ParameterException(line, "\"" + arguments[0] + "\" is no command that makes a picture");
    }

    private static CommandLine line() {
        CommandLine line = new CommandLine(new EbblightCommand());
        line.setUsageHelpAutoWidth(true);
        line.registerConverter(Double.class, EbblightCommand::number);
        line.registerConverter(double.class, EbblightCommand::number);
        line.registerConverter(Integer.class, EbblightCommand::wholeNumber);
        line.registerConverter(int.class, EbblightCommand::wholeNumber);
        line.setParameterExceptionHandler((e, args) -> usage(e));
        line.setExecutionExceptionHandler((e, command, parsed) -> failure(e, command));
        return line;
    }

    private static double number(String typed) {
        try {
            double value = Double.parseDouble(typed);
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            // said below, as of a number that is not finite
        }
        throw new TypeConversionException("\"" + typed + "\" is no number; expected one such as 2 or 0.5");
    }

    private static int wholeNumber(String typed) {
        try {
            return Integer.parseInt(typed);
        } catch (NumberFormatException e) {
            throw new TypeConversionException("\"" + typed + "\" is no whole number; expected one such as 3");
        }
    }

    private static int usage(ParameterException e) {
        CommandLine line = e.getCommandLine();
        PrintWriter err = line.getErr();
        err.println("ebblight: " + e.getMessage());
        err.println("See: " + line.getCommandSpec().qualifiedName() + " --help");
        return ExitCode.WRONG_USAGE;
    }

    /** A refusal that begins with a field of the request begins with the option that was typed for it. */
    private static String named(String refusal, CommandSpec command) {
        int colon = Math.max(0, refusal.indexOf(':'));
        StringBuilder field = new StringBuilder("--");
        for (char c : refusal.substring(0, colon).toCharArray()) {
            field.append(Character.isUpperCase(c) ? "-" : "").append(Character.toLowerCase(c));
        }
        String best = "";
        for (OptionSpec option : command.options()) {
            String name = option.longestName();
            boolean meant = (field + "-").startsWith(name + "-") || field.indexOf(name + ".") == 0;
            best = meant && name.length() > best.length() ? name : best;
        }
        return best.isEmpty() ? refusal : best + refusal.substring(colon);
    }

    private static int failure(Exception e, CommandLine command) {
        PrintWriter err = command.getErr();
        if (e instanceof Work.Cancelled) {
            err.println("ebblight: stopped; nothing was written");
            return ExitCode.INTERRUPTED;
        }
        if (e instanceof UsageException || e instanceof RequestException) {
            err.println("ebblight: " + named(String.valueOf(e.getMessage()), command.getCommandSpec()));
            err.println("See: " + command.getCommandSpec().qualifiedName() + " --help");
            return ExitCode.WRONG_USAGE;
        }
        if (OutputFile.diskIsFull(e)) {
            err.println("ebblight: the disk is full (" + e.getMessage()
                    + "); what was there is untouched: make room, or name another place for the result");
            return ExitCode.UNUSABLE_INPUT;
        }
        if (e instanceof IOException io) {
            err.println("ebblight: " + UnreadableInputException.sentence(io));
            return ExitCode.UNUSABLE_INPUT;
        }
        if (e instanceof InvalidPathException) { // typed, or in a document
            err.println("ebblight: " + e.getMessage() + "; this is no name that a file can have");
            return ExitCode.UNUSABLE_INPUT;
        }
        err.println("ebblight: our fault, please report it with these lines:");
        e.printStackTrace(err);
        return ExitCode.OUR_FAULT;
    }
}
