package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.ask.PictureOutput;
import ebblight.app.ask.PreviewPicture;
import ebblight.app.ask.SurveyRequest;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.engine.Blobs;
import ebblight.engine.Engine;
import ebblight.imaging.FrameSource;
import ebblight.imaging.Inputs;
import ebblight.imaging.OutputFile;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.StackOptions;
import ebblight.imaging.StackResult;
import ebblight.imaging.Stacker;
import ebblight.imaging.SurveyReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code demo}: an invented evening on the shore, and the whole job done on it. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = {
            "Writes an invented outing whose motion is known, measures it, finds the shutter window and the settings,"
                    + " previews and stacks, and says how far each is from the truth.",
            "Takes about a minute."
        })
final class DemoCommand implements Callable<Integer> {

    private static final String METER = "f/11 1/8 ISO100";
    private static final List<String> BAG = List.of("3", "6", "10");
    private static final List<String> WISHES = List.of("water=softened", "cloud=sharp", "rock=sharp");
    private static final int TRUE_SECONDS = 30;

    @Mixin
    private final JsonOption json = new JsonOption();

    @Option(names = "--dir", paramLabel = "D", description = "Where to write it (default: a new folder ebblight-demo).")
    private @Nullable Path dir;

    @Option(names = "--no-open", description = "Do not open anything afterwards.")
    private boolean noOpen;

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        Path folder = dir == null ? Path.of("ebblight-demo") : dir;
        Files.createDirectories(folder);
        Work work = printer.work();
        DemoOuting outing = DemoOuting.write(folder, Coast.evening(), work);
        List<String> report = new ArrayList<>(List.of(Coast.STORY, ""));

        FrameSource frames = Inputs.open(List.of(outing.frames()), 0, true);
        SurveyRequest survey = SurveyRequest.read(frames, SurveyReader.SURVEY_WIDTH, null, work);
        JsonObject regions = new JsonObject();
        regions.put("regionsBlob", "regions");
        JsonObject measured = survey.ask("measure/1", regions, work);
        new RegionPictures(survey, measured).writePicture(folder.resolve("parts.png"));
        JsonObject wishes = new JsonObject();
        wishes.put("wishes", new JsonArray(WISHES));
        JsonObject wished = survey.ask("wish/1", wishes, work);
        JsonObject settings = settings(wished, work);
        JsonObject preview = PreviewPicture.write(
                survey, TRUE_SECONDS + "s", new JsonObject(), folder.resolve("preview-30s.jpg"), work);
        double decibels = outing.decibelsAgainstTruth(folder.resolve("preview-30s.jpg"));

        StackResult stack = Stacker.stack(frames, StackOptions.mean(), work);
        PictureFacts facts = PictureFacts.of(
                stack.facts(), stack.seconds(), stack.frames(), frames.files(), "The demo's burst as one exposure");
        PictureOutput.write(folder.resolve("stack-10s.tif"), stack.picture(), facts, work);

        truth(report, outing, measured, decibels);
        OutputFile.write(
                folder.resolve("report.txt"), (String.join("\n", report) + "\n").getBytes(StandardCharsets.UTF_8));
        if (json.wanted()) {
            JsonObject answer = new JsonObject();
            answer.put("schema", "demo/1");
            answer.put("dir", folder.toString());
            answer.put("files", new JsonArray(outing.listed()));
            answer.put("measure", measured);
            answer.put("wish", wished);
            answer.put("settings", settings);
            answer.put("preview", preview);
            answer.put("previewDecibels", decibels);
            printer.line(Asked.print(answer));
            return ExitCode.DONE;
        }
        report.forEach(printer::line);
        printer.line("");
        MeasureCommand.print(measured, printer);
        printer.line("");
        WishCommand.print(wished, printer);
        printer.line("");
        SettingsCommand.print(settings, printer);
        printer.line("");
        printer.line("all of it is in " + folder
                + (noOpen ? "" : "; the app that will open it is not built yet, look at the pictures there"));
        return ExitCode.DONE;
    }

    private static JsonObject settings(JsonObject wished, Work work) {
        JsonObject request = new JsonObject();
        request.put("schema", "settings/1");
        request.put("meter", METER);
        request.put("filters", new JsonArray(BAG));
        request.put("fadingStopsPerMinute", Coast.evening().fadingStopsPerMinute());
        JsonArray windows = wished.getArray("windows");
        if (windows.isEmpty()) {
            request.put("time", TRUE_SECONDS + "s");
        } else {
            JsonObject window = windows.getObject(0);
            double from = Math.max(1.0 / 60, window.getDouble("fromSeconds"));
            double to = window.isNull("toSeconds") ? Math.max(60, 2 * from) : window.getDouble("toSeconds");
            request.put("from", from + "s");
            request.put("to", Math.max(from, to) + "s");
        }
        return Asked.parse(new Engine().answer(JsonWriter.string(request), new Blobs(), work));
    }

    private static void truth(List<String> report, DemoOuting outing, JsonObject measured, double decibels) {
        report.add("Against the truth:");
        double fading = measured.getDouble("fadingStopsPerMinute");
        report.add(String.format(
                "  light fades by %.2f stops a minute, measured %.2f",
                Coast.evening().fadingStopsPerMinute(), fading));
        JsonArray regions = measured.getArray("regions");
        for (int i = 0; i < regions.size(); i++) {
            JsonObject region = regions.getObject(i);
            if (region.get("driftPixelsPerSecond") instanceof JsonArray v && region.getDouble("areaFraction") > 0.05) {
                report.add(String.format(
                        "  the cloud drifts by %.2f px/s, measured %.2f",
                        Coast.driftPixelsPerSecond(measured.getInt("width")), v.getDouble(0)));
            }
        }
        report.add(String.format(
                "  the preview of %d s lies %.1f dB from the true exposure (the mean of the burst %.1f dB)",
                TRUE_SECONDS, decibels, outing.burstDecibels()));
    }
}
