package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.app.ask.Words;
import ebblight.core.numeric.Work;
import ebblight.imaging.Clipped;
import ebblight.imaging.FrameSource;
import ebblight.imaging.Inputs;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code balance}: sky against foreground. */
@Command(
        name = "balance",
        mixinStandardHelpOptions = true,
        description = {
            "Weighs the sky against the foreground of one frame: how many stops lie between them, where the transition"
                    + " runs, what clips, and how to even it.",
            "The frame should not be clipped; a short metered frame is best."
        })
final class BalanceCommand implements Callable<Integer> {

    @Parameters(paramLabel = "FRAME", description = "A picture (JPEG, PNG, TIFF, RAW by its embedded JPEG) or a clip.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path frame;

    @Option(
            names = "--graduated",
            paramLabel = "STOPS",
            split = ",",
            description = "Graduated filters in the bag, in stops (default: 1, 2 and 3, the usual ones).")
    private @Nullable List<Double> graduated;

    @Mixin
    private final JsonOption json = new JsonOption();

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        if (Files.isDirectory(frame)) {
            throw new UsageException("FRAME: " + frame + " is a folder; name one picture");
        }
        Work work = printer.work();
        FrameSource source = Inputs.open(List.of(frame), 0, false);
        JsonObject more = new JsonObject();
        more.put("clippedFraction", Clipped.fraction(source, work));
        if (graduated != null) {
            JsonArray stops = new JsonArray();
            stops.addAll(graduated);
            more.put("graduatedStops", stops);
        }
        JsonObject answer = SurveyRequest.ofOneFrame(source, work).ask("balance/1", more, work);
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            print(answer, printer);
        }
        return ExitCode.DONE;
    }

    private static void print(JsonObject answer, Printer printer) {
        double stops = answer.getDouble("stops");
        JsonObject line = answer.getObject("transition");
        printer.line(
                "%-11s%s %s by %.1f stops",
                "balance", "sky", stops >= 0 ? "brighter than foreground" : "darker than foreground", Math.abs(stops));
        printer.line(
                "%-11s%.0f %% down the middle, tilted %.1f°, %s (10–90 %% of it over %.0f %% of the height)",
                "transition",
                100 * line.getDouble("y"),
                Math.rint(10 * line.getDouble("angleDegrees")) / 10 + 0.0,
                line.getDouble("softness") < 0.08 ? "hard" : "soft",
                100 * line.getDouble("softness"));
        printer.line("%-11s%s of the picture", "clipped", Words.percent(answer.getDouble("clippedFraction")));
        for (Object choice : answer.getArray("choices")) {
            printer.line("%-11s%s", "way", ((JsonObject) choice).getString("text"));
        }
        for (Object warning : answer.getArray("warnings")) {
            printer.line("%-11s%s", "note", warning);
        }
    }
}
