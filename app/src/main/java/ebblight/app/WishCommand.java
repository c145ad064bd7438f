package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.Spans;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.app.ask.Words;
import ebblight.core.numeric.Work;
import ebblight.core.wish.Wish;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code wish}: the shutter window in which all wishes hold. */
@Command(
        name = "wish",
        mixinStandardHelpOptions = true,
        description = {
            "Finds the shutter times at which every part does what it shall.",
            "Parts: water, cloud, branch, rock, or the name that measure gives (flowing-1).",
            "Words for water: as seen, softened, silky, mist, glass, lines; with ! no smoother than that (silky!).",
            "For cloud: sharp, streaked. For branch: still, sharp, or the words for water. For passers-by: gone,"
                    + " trails."
        })
final class WishCommand implements Callable<Integer> {

    @Mixin
    private final FrameOptions frames = new FrameOptions();

    @Mixin
    private final JsonOption json = new JsonOption();

    @Mixin
    private final FocalOptions focal = new FocalOptions();

    @Option(
            names = "--wish",
            required = true,
            paramLabel = "PART=WORD",
            description = "A wish, such as water=silky; may be given several times.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private List<String> wishes;

    @Option(
            names = "--view-width",
            paramLabel = "PIXELS",
            defaultValue = "480",
            description = "Width at which the picture will be looked at (default: ${DEFAULT-VALUE}).")
    private int viewWidth;

    @Option(names = "--strokes", paramLabel = "S.json", description = "Lines drawn over parts (strokes/1).")
    private @Nullable Path strokes;

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        if (viewWidth < 64 || viewWidth > 2000) {
            throw new UsageException("--view-width: must lie between 64 and 2000 pixels, was " + viewWidth);
        }
        for (String typed : wishes) {
            checkWish(typed);
        }
        Work work = printer.work();
        double zoom = focal.zoom();
        SurveyRequest request = SurveyRequest.read(frames.open(true), viewWidth, zoom, strokes, work);
        JsonObject more = new JsonObject();
        more.put("wishes", new JsonArray(wishes));
        JsonObject answer = request.ask("wish/1", more, work);
        focal.warn(answer);
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            print(answer, printer);
        }
        return answer.getArray("windows").isEmpty() ? ExitCode.NO_ANSWER : ExitCode.DONE;
    }

    private static void checkWish(String typed) {
        try {
            Wish.parse(typed);
        } catch (IllegalArgumentException e) {
            throw new UsageException("--wish: " + e.getMessage());
        }
    }

    static void print(JsonObject answer, Printer printer) {
        JsonArray demands = answer.getArray("demands");
        for (int i = 0; i < demands.size(); i++) {
            JsonObject demand = demands.getObject(i);
            printer.line(
                    "%-18s %-12s %s%s",
                    demand.getString("wish"),
                    demand.getString("region"),
                    Spans.any(demand.getArray("likely")),
                    demand.getString("note").isEmpty() ? "" : "  (" + demand.getString("note") + ")");
        }
        JsonArray windows = answer.getArray("windows");
        for (int i = 0; i < windows.size(); i++) {
            JsonObject window = windows.getObject(i);
            printer.line("%s %s", printer.strong(String.format(Locale.ROOT, "%-18s", "window")), Spans.window(window));
        }
        if (answer.get("conflict") instanceof JsonObject conflict) {
            String by =
                    conflict.isNumber("stops") ? " by " + Words.number(conflict.getDouble("stops"), 1) + " stops" : "";
            List<String> between =
                    conflict.getArray("between").stream().map(String::valueOf).toList();
            printer.line(
                    "%s %s%s",
                    printer.strong(String.format(Locale.ROOT, "%-18s", "no window")),
                    String.join(" and ", between) + (between.size() == 1 ? " cannot be had" : " clash"),
                    by);
            JsonArray ways = conflict.getArray("ways");
            for (int i = 0; i < ways.size(); i++) {
                printer.line("way out            " + ways.getObject(i).getString("text"));
            }
        }
        JsonArray worth = answer.getArray("worth");
        if (!worth.isEmpty()) {
            printer.line("");
            printer.line(printer.strong("time        changes  stands off  colour"));
        }
        for (int i = 0; i < worth.size(); i += 2) {
            JsonObject at = worth.getObject(i);
            printer.line(
                    "%-10s  %7s  %10s  %6s",
                    Words.time(at.getDouble("seconds")),
                    Words.percent(at.getDouble("changedFraction")),
                    Words.number(at.getDouble("separation"), 2),
                    Words.number(at.getDouble("colour"), 2));
        }
        JsonArray warnings = answer.getArray("warnings");
        if (!warnings.isEmpty()) {
            printer.line("");
        }
        for (Object warning : warnings) {
            printer.line("note     " + warning);
        }
    }
}
