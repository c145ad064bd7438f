package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.UsageException;
import ebblight.app.outing.OutingFile;
import ebblight.app.outing.OutingFolder;
import ebblight.app.plan.PlannedOuting;
import ebblight.app.plan.WishesFile;
import ebblight.engine.RequestException;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code outing view}: another view of an outing, with what is wished of the hour there. */
@Command(
        name = "view",
        mixinStandardHelpOptions = true,
        description = {
            "Adds a view to an outing: where the lens looks and what is wished of the hour there.",
            "Without --hour it has the wishes of the first view."
        })
final class OutingViewCommand implements Callable<Integer> {

    @Mixin
    private final JsonOption json = new JsonOption();

    @Mixin
    private final ViewOptions view = new ViewOptions();

    @Mixin
    private final HourOptions hour = new HourOptions();

    @Parameters(paramLabel = "FOLDER", description = "The outing.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path folder;

    @Option(names = "--name", paramLabel = "N", description = "Name of the view, for people.")
    private @Nullable String name;

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws IOException {
        if (!Files.exists(folder.resolve("outing.json"))) {
            throw new UnreadableInputException(
                    folder.resolve("outing.json"), "does not exist; begin by ./ebblight outing new");
        }
        OutingFile file = new OutingFile(OutingFolder.open(folder), folder);
        JsonObject document = file.read();
        JsonObject typed = new JsonObject();
        view.put(typed);
        hour.put(typed);
        if (typed.isEmpty()) {
            throw new UsageException("outing view: say where the lens looks, by --view-azimuth, or a wish, by --hour");
        }
        int views = document.getArray("views").size();
        JsonObject added = PlannedOuting.add(document, name == null ? "view " + (views + 1) : name, typed);
        try {
            WishesFile.check(PlannedOuting.wishes(document, added), printer.work());
        } catch (RequestException e) {
            throw new UsageException("--hour or an option beside it: " + e.getMessage());
        }
        JsonObject answer = new JsonObject();
        answer.put("schema", "outing-view/1");
        answer.put("file", file.path().toString());
        answer.put("view", added.getString("id"));
        answer.put("outing", file.write(document));
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            printer.line("added " + added.getString("id") + ": ./ebblight when " + folder + " --view "
                    + added.getString("id"));
        }
        return ExitCode.DONE;
    }
}
