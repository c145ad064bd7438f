package ebblight.app;

import ebblight.app.outing.OutingFolder;
import ebblight.app.serve.LocalServer;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code open}: the app on an outing. */
@Command(
        name = "open",
        mixinStandardHelpOptions = true,
        description = {
            "Opens the app in the browser, on the folder of an outing (default: the current folder).",
            "It answers 127.0.0.1 alone, and only the link printed here. Ctrl-C ends it."
        })
final class OpenCommand implements Callable<Integer> {

    private static final int LOOK_SECONDS = 1;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "OUTING",
            defaultValue = ".",
            description = "A folder with clips or frames in it.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path folder;

    @Option(
            names = "--port",
            defaultValue = "0",
            paramLabel = "PORT",
            description = "Port to listen on (default: any free one).")
    private int port;

    @Option(names = "--no-browser", description = "Print the link and start no browser.")
    private boolean noBrowser;

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        serve(folder, port, !noBrowser, printer);
        return ExitCode.DONE;
    }

    /** Serves the folder until Ctrl-C. */
    static void serve(Path folder, int port, boolean browser, Printer printer) throws IOException {
        try (LocalServer server =
                LocalServer.start(OutingFolder.open(folder), port, Clock.systemUTC(), new TypedPictures())) {
            printer.line("Ebblight is open at " + server.link());
            printer.line("Keep this window; Ctrl-C ends it.");
            if (browser) {
                show(server.link());
            }
            while (!Interruption.wanted()) {
                TimeUnit.SECONDS.sleep(LOOK_SECONDS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Asks the operating system for its browser; where there is none the printed link must do. */
    private static void show(URI link) {
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        String[] command = system.startsWith("mac")
                ? new String[] {"open", link.toString()}
                : system.startsWith("windows")
                        ? new String[] {"rundll32", "url.dll,FileProtocolHandler", link.toString()}
                        : new String[] {"xdg-open", link.toString()};
        try {
            new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException e) {
            // no desktop: the link is printed above
            return;
        }
    }
}
