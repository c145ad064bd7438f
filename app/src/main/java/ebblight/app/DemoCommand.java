package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.Words;
import ebblight.app.demo.DemoOuting;
import ebblight.app.report.Compared;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.imaging.OutputFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code demo}: an invented evening on the coast, and the whole job done on it. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = {
            "Writes an invented outing whose motion is known, measures it, finds the shutter window and the settings,"
                    + " previews and stacks, and says how far each is from the truth.",
            "Takes one to two minutes on two cores."
        })
final class DemoCommand implements Callable<Integer> {

    @Mixin
    private final JsonOption json = new JsonOption();

    @Option(names = "--dir", paramLabel = "D", description = "Where to write it (default: a new folder ebblight-demo).")
    private @Nullable Path dir;

    @Option(names = "--no-open", description = "Do not open the app on it afterwards.")
    private boolean noOpen;

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        Path folder = dir == null ? Path.of("ebblight-demo") : dir;
        Files.createDirectories(folder);
        Work work = printer.work();
        DemoJob job = DemoJob.run(folder, work);
        new RegionPictures(job.survey, job.measured).writePicture(folder.resolve("parts.png"));
        job.stack(folder.resolve("stack-10s.tif"), work);
        DemoDocument.write(
                folder,
                job.measured,
                SurveyRequest.document(job.outing.strokes()).getArray("strokes"),
                DemoJob.WISHES,
                DemoOuting.meter(),
                job.outing.fadingStopsPerMinute(),
                Clock.systemUTC());
        List<String> truth = truth(job);
        OutputFile.write(
                folder.resolve("report.txt"),
                (Coast.STORY + "\n\n" + String.join("\n", truth) + "\n").getBytes(StandardCharsets.UTF_8));
        if (json.wanted()) {
            printer.line(Asked.print(answer(job, folder)));
            return ExitCode.DONE;
        }
        printer.line(Coast.STORY);
        printer.line("");
        truth.forEach(printer::line);
        printer.line("");
        MeasureCommand.print(job.measured, printer);
        printer.line("");
        WishCommand.print(job.wished, printer);
        printer.line("");
        SettingsCommand.print(job.settings, printer);
        printer.line("");
        printer.line("all of it is in " + folder + "; the parts were told apart with the lines drawn in "
                + job.outing.strokes().getFileName());
        if (!noOpen) {
            OpenCommand.serve(folder, 0, true, printer);
        }
        return ExitCode.DONE;
    }

    private static JsonObject answer(DemoJob job, Path folder) throws IOException {
        JsonObject answer = new JsonObject();
        answer.put("schema", "demo/1");
        answer.put("dir", folder.toString());
        answer.put("files", new JsonArray(job.outing.listed()));
        answer.put("measure", job.measured);
        answer.put("wish", job.wished);
        answer.put("clash", job.clashing);
        answer.put("settings", job.settings);
        JsonArray previews = new JsonArray();
        for (Compared c : job.compared) {
            JsonObject one = new JsonObject();
            one.put("seconds", c.seconds());
            one.put("method", c.method());
            one.put("decibels", c.decibels());
            one.put("clipMeanDecibels", c.meanDecibels());
            previews.add(one);
        }
        answer.put("previews", previews);
        return answer;
    }

    private static List<String> truth(DemoJob job) {
        List<String> lines = new ArrayList<>(List.of("Against the truth:"));
        lines.add(String.format(
                Locale.ROOT,
                "  light fades by %.2f stops a minute, measured %.2f",
                job.outing.fadingStopsPerMinute(),
                job.measured.getDouble("fadingStopsPerMinute")));
        JsonArray regions = job.measured.getArray("regions");
        for (int i = 0; i < regions.size(); i++) {
            JsonObject region = regions.getObject(i);
            if (region.get("driftPixelsPerSecond") instanceof JsonArray v && region.getDouble("areaFraction") > 0.05) {
                lines.add(String.format(
                        Locale.ROOT,
                        "  the cloud drifts by %.2f px/s, measured %.2f",
                        job.outing.drift(job.measured.getInt("width")).right(),
                        v.getDouble(0)));
            }
        }
        for (Compared c : job.compared) {
            lines.add(String.format(
                    Locale.ROOT,
                    "  the preview of %s lies %.1f dB from the true exposure (the mean of the clip %.1f dB)",
                    Words.time(c.seconds()),
                    c.decibels(),
                    c.meanDecibels()));
        }
        return lines;
    }
}
