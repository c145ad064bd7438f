package ebblight.app;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.app.ask.Words;
import ebblight.app.kit.DataFolder;
import ebblight.app.memory.MemoryFile;
import ebblight.app.memory.Outcomes;
import ebblight.engine.RequestException;
import ebblight.imaging.OutputFile;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code outcomes}: how predictions did, and which times were kept. */
@Command(
        name = "outcomes",
        mixinStandardHelpOptions = true,
        description = {
            "Tells how far off predictions were, per kind of water and wind, and which shutter times you keep.",
            "What is measured, stacked, sorted and logged in the folder of an outing is remembered in the database"
                    + " beside the kit; nothing else is."
        })
final class OutcomesCommand implements Callable<Integer> {

    @Option(
            names = "--export",
            paramLabel = "FILE.json",
            description = "Write all that is remembered, and the kit, as one file to keep.")
    private @Nullable Path export;

    @Option(
            names = "--import",
            paramLabel = "FILE.json",
            description = "Add what such a file holds to what is remembered; its kit takes the place of the kit.")
    private @Nullable Path imported;

    @Mixin
    private final JsonOption json = new JsonOption();

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws IOException {
        if (export != null && imported != null) {
            throw new UsageException("--export: give either --export or --import, not both");
        }
        MemoryFile file = new MemoryFile(DataFolder.data());
        if (imported != null) {
            bringIn(imported, file);
        }
        JsonObject memory = file.read();
        JsonObject answer = Outcomes.of(memory);
        if (export != null) {
            String text = JsonWriter.indent("  ").string().value(memory).done() + "\n";
            OutputFile.write(export, text.getBytes(StandardCharsets.UTF_8));
            answer.put("file", export.toString());
        }
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            print(answer);
        }
        return ExitCode.DONE;
    }

    private static void bringIn(Path named, MemoryFile file) throws IOException {
        JsonObject memory = SurveyRequest.document(named);
        try {
            file.take(memory);
        } catch (RequestException e) {
            throw new UnreadableInputException(named, String.valueOf(e.getMessage()));
        }
    }

    private void print(JsonObject answer) {
        printer.line(
                "remembered  outings %d, measurements %d, frames %d, results %d",
                answer.getInt("outings"),
                answer.getInt("measurements"),
                answer.getInt("frames"),
                answer.getInt("results"));
        heading("what is left, against what was predicted", answer, "predictions");
        for (JsonObject group : rows(answer, "predictions")) {
            printer.line("%s, %s", group.getString("of"), group.getString("wind"));
            printer.line("    %d pictures: %s", group.getInt("pictures"), group.getString("words"));
        }
        heading("times kept, to the nearest stop", answer, "times");
        for (JsonObject time : rows(answer, "times")) {
            printer.line("%-10s  %s", Words.say(time.getDouble("seconds")), time.getString("words"));
        }
        if (answer.isNumber("keptSeconds")) {
            printer.line(
                    "half of what you keep is open longer than %s (%s to %s)",
                    Words.say(answer.getDouble("keptSeconds")),
                    Words.say(answer.getDouble("keptSecondsLow")),
                    Words.say(answer.getDouble("keptSecondsHigh")));
        }
        heading("filters", answer, "filters");
        for (JsonObject filter : rows(answer, "filters")) {
            printer.line(
                    "%-10s  %.2f stops, checked %d times, %.2f stop apart",
                    filter.getString("filter"),
                    filter.getDouble("stops"),
                    filter.getInt("checks"),
                    filter.getDouble("spreadStops"));
        }
        if (answer.getInt("outings") == 0) {
            printer.line("Nothing is remembered yet: measure, stack or sort in the folder of an outing"
                    + " (./ebblight outing new FOLDER --at LAT,LON).");
        } else if (rows(answer, "predictions").isEmpty()) {
            printer.line(
                    "No prediction can be held against a picture yet: measure the clip of a view, then sort its long"
                            + " exposures or stack its burst, all in the folder of the outing.");
        }
        if (answer.has("file")) {
            printer.line("written: " + answer.getString("file"));
        }
    }

    private void heading(String text, JsonObject answer, String list) {
        if (!rows(answer, list).isEmpty()) {
            printer.line("");
            printer.line(printer.strong(text));
        }
    }

    private static List<JsonObject> rows(JsonObject answer, String list) {
        return Asked.rows(answer.getArray(list));
    }
}
