package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.app.draw.DayPlan;
import ebblight.app.draw.Pictures;
import ebblight.app.draw.Sheet;
import ebblight.app.plan.PlannedOuting;
import ebblight.app.plan.WishesFile;
import ebblight.app.plan.Zone;
import ebblight.engine.Engine;
import ebblight.engine.RequestException;
import ebblight.imaging.OutputFile;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
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

    private static final double STRIP_WIDTH = 900;
    private static final double LENS_WIDTH = 560;

    /** Days that are searched of an outing that names none, as on the page. */
    private static final int DAYS_AHEAD = 35;

    @Mixin
    private final JsonOption json = new JsonOption();

    @Parameters(
            paramLabel = "WISHES.json|OUTING",
            description = "What is wished (wishes/1, see docs/schemas/wishes.md), or the folder of a planned outing.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path file;

    @Option(names = "--view", paramLabel = "ID", description = "The view of the outing (default: the first planned).")
    private @Nullable String view;

    @Option(names = "--time", paramLabel = "T", description = "Shutter time wished for: how many frames fit? 2m")
    private @Nullable String time;

    @Option(names = "--filters", split = ",", paramLabel = "F", description = "Filters to pack from: 6,10.")
    private List<String> filters = List.of();

    @Option(names = "--measured", split = ",", paramLabel = "F=STOPS", description = "Measured stops: 10=10.3.")
    private List<String> measured = List.of();

    @Option(
            names = "--day",
            paramLabel = "DATE",
            description = "The day to draw (default: that of the first window, falling water first).")
    private @Nullable String day;

    @Option(names = "--strip", paramLabel = "F.svg", description = "Writes the hours of the day as a drawing.")
    private @Nullable Path strip;

    @Option(names = "--lens", paramLabel = "F.svg", description = "Writes what stands before the lens on the day.")
    private @Nullable Path lens;

    @Option(names = "--sheet", paramLabel = "F.pdf", description = "Writes one page to print and take along.")
    private @Nullable Path sheet;

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws IOException {
        JsonArray views = new JsonArray();
        JsonObject wishes = wishes(views);
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
        JsonObject request = request(wishes);
        JsonObject answer = ask(request);
        Zone zone = WishesFile.zone(wishes);
        answer.put("zone", zone.name());
        if (!views.isEmpty()) {
            answer.put("views", views);
        }
        draw(wishes, request, answer, zone);
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            new WhenReport(answer, zone, printer).print();
        }
        return answer.getArray("windows").isEmpty() ? ExitCode.NO_ANSWER : ExitCode.DONE;
    }

    /** What the file wishes, or what the outing wishes of one of its views; the planned ones are put into {@code views}. */
    private JsonObject wishes(JsonArray views) throws IOException {
        if (!Files.isDirectory(file)) {
            if (view != null) {
                throw new UsageException("--view: belongs to the folder of an outing, was given " + file);
            }
            return SurveyRequest.document(file);
        }
        JsonObject outing = SurveyRequest.document(file.resolve("outing.json"));
        List<JsonObject> planned = PlannedOuting.planned(outing);
        JsonObject chosen = planned.stream()
                .filter(v -> view == null || view.equals(v.getString("id")))
                .findFirst()
                .orElseThrow(() -> new UnreadableInputException(
                        file.resolve("outing.json"),
                        view == null || planned.isEmpty()
                                ? "holds no view of which an hour is wished; add one by ./ebblight outing view"
                                : "holds no planned view " + view + "; it holds "
                                        + String.join(
                                                ", ",
                                                planned.stream()
                                                        .map(v -> v.getString("id"))
                                                        .toList())));
        for (JsonObject one : planned) {
            JsonObject row = new JsonObject();
            row.put("id", one.getString("id"));
            row.put("name", one.getString("name", one.getString("id")));
            row.put("asked", one.equals(chosen));
            views.add(row);
        }
        try {
            JsonObject wishes = PlannedOuting.wishes(outing, chosen);
            if (!wishes.has("from")) {
                LocalDate today = WishesFile.zone(wishes).date(Instant.now());
                wishes.put("from", today.toString());
                wishes.put("to", today.plusDays(DAYS_AHEAD).toString());
            }
            return wishes;
        } catch (RequestException e) {
            throw new UnreadableInputException(file.resolve("outing.json"), String.valueOf(e.getMessage()));
        }
    }

    private JsonObject request(JsonObject wishes) throws IOException {
        try {
            return WishesFile.request(wishes, file.resolveSibling(""));
        } catch (RequestException e) {
            throw unusable(e);
        }
    }

    private JsonObject ask(JsonObject request) throws IOException {
        try {
            return Asked.of(new Engine(), request, printer.work());
        } catch (RequestException e) {
            throw unusable(e);
        }
    }

    /** What the file holds is input, what was typed beside it is usage. */
    private IOException unusable(RequestException e) {
        String words = String.valueOf(e.getMessage());
        if ((time != null && words.startsWith("exposure.")) || (!filters.isEmpty() && words.startsWith("kit."))) {
            throw new UsageException(words.replace("exposure.", "--").replace("kit.", "--"));
        }
        return new UnreadableInputException(Files.isDirectory(file) ? file.resolve("outing.json") : file, words);
    }

    private void draw(JsonObject wishes, JsonObject request, JsonObject answer, Zone zone) throws IOException {
        if (strip == null && lens == null && sheet == null) {
            return;
        }
        LocalDate date = day == null ? firstDay(answer, zone) : Zone.day("--day", day);
        DayPlan plan = DayPlan.ask(new Engine(), request, answer.getArray("windows"), date, zone);
        if (strip != null) {
            write(strip, Pictures.strip(plan, STRIP_WIDTH, Pictures.SMALL, false));
        }
        if (lens != null) {
            write(
                    lens,
                    Pictures.lens(plan, LENS_WIDTH, Pictures.SMALL, false)
                            .orElseThrow(() -> new UsageException("--lens: the wishes name no view")));
        }
        if (sheet != null) {
            OutputFile.write(sheet, Sheet.pdf(plan, answer, wishes.getString("name", "")));
            printer.note("written: " + sheet);
        }
    }

    private static LocalDate firstDay(JsonObject answer, Zone zone) {
        for (JsonObject window : Asked.rows(answer.getArray("windows"))) {
            if (window.getInt("rank") == 1) {
                return zone.date(Instant.parse(window.getString("start")));
            }
        }
        return zone.date(Instant.parse(answer.getString("from")));
    }

    private void write(Path target, JsonObject picture) throws IOException {
        OutputFile.write(target, picture.getString("svg").getBytes(StandardCharsets.UTF_8));
        printer.note("written: " + target);
    }
}
