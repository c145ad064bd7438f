package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.PictureOutput;
import ebblight.app.made.Made;
import ebblight.app.made.Making;
import ebblight.app.memory.Remembered;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/**
 * A command that writes a picture: the record of what it was made from is written beside it, and {@code again} makes it
 * again from there. The bytes must depend on what was typed and on the files named alone.
 */
abstract class PictureCommand implements Callable<Integer> {

    @Mixin
    private final JsonOption json = new JsonOption();

    @Option(
            names = "-o",
            required = true,
            paramLabel = "OUT",
            description = "Picture to write (.tif or .jpg); OUT.json beside it says what it was made from and how.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path output;

    @Spec
    @SuppressWarnings("NullAway.Init") // set by picocli
    private CommandSpec spec;

    private final Printer printer = new Printer();

    /**
     * Makes the picture, writes it to {@code target} and says what was done; where no such picture can be made, the
     * answer names no {@code file} and holds the ways out.
     */
    abstract JsonObject make(Path target, Work work) throws IOException;

    /** Tells a person what {@link #make} answered. */
    abstract void print(JsonObject answer, Printer to);

    /** Options that name further files to write; they are no part of what the picture is made from. */
    Set<String> furtherOutputs() {
        return Set.of();
    }

    /** Fails before any work is done when nothing could be written to {@code output}. */
    void check(Path output) throws IOException {
        PictureOutput.check(output);
    }

    /** Whether the result can be made again from what was typed; false where something else keeps the record. */
    boolean recorded() {
        return true;
    }

    /** Writes down what an outing learns from the result; most results teach it nothing. */
    void remember(Path result, JsonObject answer, Work work) throws IOException {}

    @Override
    public final Integer call() throws Exception {
        JsonObject answer = makeWithRecord(printer.work());
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            print(answer, printer);
        }
        return answer.has("file") ? ExitCode.DONE : ExitCode.NO_ANSWER;
    }

    /** Makes the picture and writes its record beside it. */
    final JsonObject makeWithRecord(Work work) throws IOException {
        check(output);
        Making making = making();
        Made.check(output, making);
        JsonObject answer = make(output, work);
        if (recorded() && answer.has("file")) {
            Made.write(output, making, answer, work);
            answer.put("record", Made.beside(output).toString());
            Remembered.tried(() -> remember(output, answer, work)).ifPresent(printer::note);
        }
        return answer;
    }

    private Making making() throws IOException {
        Set<String> outputs = new HashSet<>(furtherOutputs());
        outputs.addAll(Set.of("-o", "--json"));
        return Typed.of(spec, outputs);
    }
}
