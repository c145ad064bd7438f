package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.demo.DemoOuting;
import ebblight.app.report.Compared;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.imaging.StackResult;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
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
        StackResult stacked = job.stack(folder.resolve("stack-10s.tif"), work);
        DemoDocument.write(
                folder,
                job.measured,
                SurveyRequest.document(job.outing.strokes()).getArray("strokes"),
                DemoJob.WISHES,
                DemoOuting.meter(),
                job.outing.fadingStopsPerMinute(),
                Clock.systemUTC());
        DemoReport report = new DemoReport(job);
        report.write(folder, stacked, work);
        if (json.wanted()) {
            printer.line(Asked.print(answer(job, folder)));
            return ExitCode.DONE;
        }
        printer.line(Coast.STORY);
        printer.line("");
        report.lines().forEach(printer::line);
        printer.line("");
        MeasureCommand.print(job.measured, printer);
        printer.line("");
        WishCommand.print(job.wished, printer);
        printer.line("");
        SettingsCommand.print(job.settings, printer);
        printer.line("");
        printer.line("all of it is in " + folder + ", to look at in " + DemoReport.PAGE
                + "; the parts were told apart with the lines drawn in "
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
}
