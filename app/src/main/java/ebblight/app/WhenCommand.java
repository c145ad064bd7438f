package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.app.plan.WishesFile;
import ebblight.app.plan.Zone;
import ebblight.engine.Blobs;
import ebblight.engine.Engine;
import ebblight.engine.RequestException;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code when}: all windows in a span of dates in which the wishes hold. */
@Command(
        name = "when",
        mixinStandardHelpOptions = true,
        description = {
            "Finds the windows in which sun, light, water and clock are as wished, says why, and what to pack.",
            "Tide predictions leave out weather, surge and waves. Not for navigation: follow the official tables, local"
                    + " warnings and signs. Never turn your back on the sea."
        })
final class WhenCommand implements Callable<Integer> {

    @Mixin
    private final JsonOption json = new JsonOption();

    @Parameters(paramLabel = "WISHES.json", description = "What is wished (wishes/1, see docs/schemas/wishes.md).")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path file;

    @Option(names = "--time", paramLabel = "T", description = "Shutter time wished for: how many frames fit? 2m")
    private @Nullable String time;

    @Option(names = "--filters", split = ",", paramLabel = "F", description = "Filters to pack from: 6,10.")
    private List<String> filters = List.of();

    @Option(names = "--measured", split = ",", paramLabel = "F=STOPS", description = "Measured stops: 10=10.3.")
    private List<String> measured = List.of();

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws IOException {
        JsonObject wishes = SurveyRequest.document(file);
        if (time != null) {
            JsonObject exposure = new JsonObject();
            exposure.put("time", time);
            wishes.put("exposure", exposure);
        }
        if (!filters.isEmpty()) {
            if (!wishes.has("exposure")) {
                throw new UsageException("--filters: say for which shutter time to pack, by --time such as --time 2m");
            }
            JsonObject kit = new JsonObject();
            kit.put("filters", new JsonArray(filters));
            kit.put("measured", new JsonArray(measured));
            wishes.put("kit", kit);
        }
        JsonObject answer = ask(wishes);
        Zone zone = WishesFile.zone(wishes);
        answer.put("zone", zone.name());
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            new WhenReport(answer, zone, printer).print();
        }
        return answer.getArray("windows").isEmpty() ? ExitCode.NO_ANSWER : ExitCode.DONE;
    }

    private JsonObject ask(JsonObject wishes) throws IOException {
        try {
            JsonObject request = WishesFile.request(
                    wishes,
                    file.toAbsolutePath().getParent() == null
                            ? file
                            : file.toAbsolutePath().resolveSibling("."));
            return Asked.parse(new Engine().answer(JsonWriter.string(request), new Blobs(), printer.work()));
        } catch (RequestException e) {
            String words = String.valueOf(e.getMessage());
            if ((time != null && words.startsWith("exposure.")) || (!filters.isEmpty() && words.startsWith("kit."))) {
                throw new UsageException(words.replace("exposure.", "--").replace("kit.", "--"));
            }
            // what the file holds is input, not usage
            throw new UnreadableInputException(file, words);
        }
    }
}
