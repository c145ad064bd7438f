package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.made.GivenFiles;
import ebblight.app.made.Made;
import ebblight.app.made.Recorded;
import ebblight.app.made.Recorded.Trouble;
import ebblight.core.numeric.Work;
import ebblight.imaging.OutputFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code again}: a result once more, from its record. */
@Command(
        name = "again",
        mixinStandardHelpOptions = true,
        description = {
            "Makes a result again from the record beside it, and says whether it came out byte for byte the same.",
            "A result that is there is left as it is; -o writes the new one to a place of its own, with its record.",
            "Exit code 3 when a source is missing, 4 when it cannot come out the same."
        })
final class AgainCommand implements Callable<Integer> {

    @Mixin
    private final JsonOption json = new JsonOption();

    @Parameters(paramLabel = "RESULT.json", description = "The record, or the result it lies beside.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path named;

    @Option(names = "-o", paramLabel = "OUT", description = "Write what is made now there, the same or not.")
    private @Nullable Path output;

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        Work work = printer.work();
        Recorded recorded = Recorded.read(named);
        List<Trouble> troubles = recorded.troubles(work);
        boolean missing = troubles.stream().anyMatch(Trouble::missing);
        JsonObject answer = new JsonObject();
        answer.put("schema", "again/1");
        answer.put("file", (output == null ? recorded.result() : output).toString());
        answer.put("identical", false);
        answer.put("written", false);
        answer.put("troubles", json(troubles));
        answer.put("madeBy", recorded.program());
        if (!missing && (troubles.isEmpty() || output != null)) {
            Path scratch = Files.createTempDirectory("ebblight-again");
            try {
                make(recorded, scratch, answer, work);
            } finally {
                GivenFiles.remove(scratch);
            }
        }
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            print(answer, recorded.result());
        }
        boolean fulfilled = answer.getBoolean("identical") || answer.getBoolean("written");
        return missing ? ExitCode.UNUSABLE_INPUT : fulfilled ? ExitCode.DONE : ExitCode.NO_ANSWER;
    }

    private void make(Recorded recorded, Path scratch, JsonObject answer, Work work) throws IOException {
        Path target = recorded.result();
        Path asked = output;
        if (asked != null) {
            EbblightCommand.pictureCommand(recorded.arguments(asked, scratch)).makeWithRecord(work);
            answer.put("identical", recorded.isResult(asked));
            answer.put("written", true);
            answer.put("record", Made.beside(asked).toString());
            return;
        }
        Path made = scratch.resolve(String.valueOf(target.getFileName()));
        EbblightCommand.pictureCommand(recorded.arguments(made, scratch)).makeWithRecord(work);
        boolean identical = recorded.isResult(made);
        answer.put("identical", identical);
        if (!Files.exists(target) && identical) {
            OutputFile.write(target, Files.readAllBytes(made));
            answer.put("written", true);
        }
        answer.put("untouched", recorded.isResult(target));
    }

    private static JsonArray json(List<Trouble> troubles) {
        JsonArray array = new JsonArray();
        for (Trouble trouble : troubles) {
            JsonObject one = new JsonObject();
            one.put("file", trouble.file().toString());
            one.put("reason", trouble.reason());
            array.add(one);
        }
        return array;
    }

    private void print(JsonObject answer, Path result) {
        JsonArray troubles = answer.getArray("troubles");
        for (JsonObject one : Asked.rows(troubles)) {
            printer.line(one.getString("file") + ": " + one.getString("reason"));
        }
        boolean written = answer.getBoolean("written");
        if (answer.getBoolean("identical")) {
            printer.line("%s  the same again, byte for byte%s", answer.getString("file"), written ? ", written" : "");
            if (!answer.getBoolean("untouched", true)) {
                printer.line("note     " + result + " itself was changed since it was made; it is left as it is");
            }
        } else if (written) {
            printer.line("%s  written; not the same as %s", answer.getString("file"), result);
        } else if (troubles.isEmpty()) {
            printer.line(
                    "%s  comes out differently now: made by %s, this is %s; it is left as it is, -o writes the new one"
                            + " elsewhere",
                    result, answer.getString("madeBy"), EbblightCommand.VERSION);
        } else {
            printer.line(
                    "not made again: put back what it was made from, or, where all is there, choose a place with -o");
        }
    }
}
