package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.UsageException;
import ebblight.app.card.SlateDocument;
import ebblight.app.card.SlateText;
import ebblight.core.card.Slate;
import ebblight.imaging.OutputFile;
import ebblight.imaging.card.SlateCode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code slate}: a code to photograph before the frames that it speaks of. */
@Command(
        name = "slate",
        mixinStandardHelpOptions = true,
        description = {
            "Makes a code that says time, view, filters and wish. Photograph it, then the frames: sort reads it, sets"
                    + " the camera's clock right and knows which filters the frames after it had."
        })
final class SlateCommand implements Callable<Integer> {

    @Option(
            names = "--time",
            paramLabel = "I",
            description = "Instant with its offset, 2027-01-14T17:15:00+01:00 (default: now).")
    private @Nullable String time;

    @Option(names = "--view", paramLabel = "NAME", description = "Name of the view.")
    private String view = "";

    @Option(
            names = "--filters",
            split = ",",
            paramLabel = "F",
            description = "Filters on the lens from now on: stops (6), factors (nd1000), pol; leave out for none.")
    private List<String> filters = List.of();

    @Option(names = "--wish", paramLabel = "PART=WORD", description = "What the frames shall become: water=silky.")
    private List<String> wish = List.of();

    @Option(names = "-o", required = true, paramLabel = "FILE", description = "Code to write (.svg or .png).")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path output;

    @Mixin
    private final JsonOption json = new JsonOption();

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        String name = output.toString().toLowerCase(Locale.ROOT);
        if (!name.endsWith(".svg") && !name.endsWith(".png")) {
            throw new UsageException("-o: " + output + " ends in neither .svg nor .png");
        }
        Slate slate = SlateText.typed(instant(), view, filters, wish);
        SlateCode code = SlateCode.of(SlateText.of(slate));
        if (name.endsWith(".svg")) {
            OutputFile.write(output, code.svg().getBytes(StandardCharsets.UTF_8));
        } else {
            code.writePng(output);
        }
        JsonObject document = SlateDocument.of(slate, code);
        document.put("file", output.toString());
        if (json.wanted()) {
            printer.line(Asked.print(document));
        } else {
            printer.line("%s  %d × %d modules: %s", output, code.size(), code.size(), SlateText.of(slate));
        }
        return ExitCode.DONE;
    }

    private OffsetDateTime instant() {
        if (time == null) {
            return OffsetDateTime.now(ZoneId.systemDefault());
        }
        try {
            return OffsetDateTime.parse(time);
        } catch (DateTimeException e) {
            throw new UsageException(
                    "--time: \"" + time + "\" cannot be read; expected an instant such as 2027-01-14T17:15:00+01:00");
        }
    }
}
