package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.memory.Remembered;
import ebblight.app.outing.JoinedLog;
import ebblight.app.outing.OutingFile;
import ebblight.app.outing.OutingFolder;
import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code outing join}: the phone's log into the outing, and its entries beside their frames. */
@Command(
        name = "join",
        mixinStandardHelpOptions = true,
        description = {
            "Takes the log that the phone page saved into the outing; joining a file twice adds nothing.",
            "With frames, tells which frame each entry is: a camera's clock may be off by any constant."
        })
final class OutingJoinCommand implements Callable<Integer> {

    @Parameters(index = "0", paramLabel = "FOLDER", description = "The outing.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path folder;

    @Parameters(index = "1", paramLabel = "LOG.json", description = "What the phone saved or sent.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path file;

    @Option(names = "--frames", paramLabel = "CARD", description = "Folder of the frames taken; only read.")
    private @Nullable Path card;

    @Mixin
    private final JsonOption json = new JsonOption();

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws IOException {
        JsonObject brought = SurveyRequest.document(file);
        JoinedLog.check(brought, file);
        OutingFile outing = new OutingFile(OutingFolder.open(folder), folder);
        JsonObject answer = new JsonObject();
        JsonObject written = outing.change(document -> answer.putAll(JoinedLog.of(document, brought, card)));
        answer.put("file", outing.path().toString());
        Remembered.tried(() -> Remembered.of(folder.toRealPath(), written).logged())
                .ifPresent(printer::note);
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            print(answer);
        }
        return ExitCode.DONE;
    }

    private void print(JsonObject answer) {
        printer.line(
                "%s  %d entries, %d of them new",
                answer.getString("file"), answer.getInt("entries"), answer.getInt("added"));
        for (JsonObject camera : Asked.rows(answer.getArray("cameras"))) {
            if (!camera.isNumber("clockOffsetSeconds")) {
                printer.line("%s  no frame is like an entry of the log", camera.getString("camera"));
                continue;
            }
            double clock = camera.getDouble("clockOffsetSeconds");
            printer.line(
                    "%s  clock %.0f s %s the phone's%s",
                    camera.getString("camera"),
                    Math.abs(clock),
                    clock < 0 ? "behind" : "ahead of",
                    camera.getBoolean("ambiguous") ? "; another offset would do as well: check it" : "");
            for (JsonObject pair : Asked.rows(camera.getArray("matched"))) {
                printer.line("  entry %d  %s", pair.getInt("entry"), pair.getString("file"));
            }
        }
        answer.getArray("warnings").forEach(w -> printer.line("note  " + w));
    }
}
