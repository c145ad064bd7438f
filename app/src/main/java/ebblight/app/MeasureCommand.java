package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.PictureOutput;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.Words;
import ebblight.app.memory.Remembered;
import ebblight.core.numeric.Work;
import ebblight.imaging.FrameSource;
import ebblight.imaging.SurveyReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code measure}: how the parts of a view move. */
@Command(
        name = "measure",
        mixinStandardHelpOptions = true,
        description = {
            "Measures how water, cloud and foliage move in a few seconds of clip or burst, and what every shutter time"
                    + " leaves of them.",
            "Rest the camera or phone on something firm, lock exposure and focus; ten seconds for ripples, twenty for"
                    + " swell, 20 to 30 frames 10 to 12 s apart for surf."
        })
final class MeasureCommand implements Callable<Integer> {

    @Mixin
    private final FrameOptions frames = new FrameOptions();

    @Mixin
    private final JsonOption json = new JsonOption();

    @Mixin
    private final FocalOptions focal = new FocalOptions();

    @Option(names = "--picture", paramLabel = "P.png", description = "Write the middle frame with its parts outlined.")
    private @Nullable Path picture;

    @Option(
            names = "--regions-out",
            paramLabel = "R.png",
            description = "Write the map of parts: 8 bits, as large as the frames, value = index in regions.")
    private @Nullable Path regionsOut;

    @Option(
            names = "--strokes",
            paramLabel = "S.json",
            description = "Lines drawn over parts that say how they move (strokes/1).")
    private @Nullable Path strokes;

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        Work work = printer.work();
        double zoom = focal.zoom();
        checkPictures();
        FrameSource source = frames.open(true);
        keepOriginals(source);
        SurveyRequest request = SurveyRequest.read(source, SurveyReader.SURVEY_WIDTH, zoom, strokes, work);
        JsonObject more = new JsonObject();
        Optional<Remembered> outing =
                zoom == 1 ? Remembered.around(source.files().get(0)) : Optional.empty();
        if (picture != null || regionsOut != null || outing.isPresent()) {
            more.put("regionsBlob", "regions");
        }
        JsonObject answer = request.ask("measure/1", more, work);
        focal.warn(answer);
        if (outing.isPresent()) {
            Remembered.tried(() -> outing.get().measured(request, answer)).ifPresent(printer::note);
        }
        RegionPictures pictures = new RegionPictures(request, answer);
        if (regionsOut != null) {
            pictures.writeMap(regionsOut);
            answer.put("regionsFile", regionsOut.toString());
        }
        if (picture != null) {
            pictures.writePicture(picture);
            answer.put("pictureFile", picture.toString());
        }
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            print(answer);
        }
        return ExitCode.DONE;
    }

    private void checkPictures() throws IOException {
        if (picture != null) {
            PictureOutput.checkPng("--picture", picture);
        }
        if (regionsOut != null) {
            PictureOutput.checkPng("--regions-out", regionsOut);
        }
    }

    private void keepOriginals(FrameSource source) throws IOException {
        if (picture != null) {
            PictureOutput.keepOriginals("--picture", picture, source);
        }
        if (regionsOut != null) {
            PictureOutput.keepOriginals("--regions-out", regionsOut, source);
        }
    }

    private void print(JsonObject answer) {
        print(answer, printer);
        if (picture != null) {
            printer.line("picture  " + picture);
        }
        if (regionsOut != null) {
            printer.line("regions  " + regionsOut);
        }
    }

    static void print(JsonObject answer, Printer printer) {
        printer.line(
                "%s of %d frames, %s frames/s, %d × %d; camera %s (%.1f px)",
                answer.getString("mode"),
                answer.getInt("frames"),
                rate(answer.getDouble("fps")),
                answer.getInt("width"),
                answer.getInt("height"),
                answer.getString("camera"),
                answer.getDouble("cameraShiftPixels"));
        if (answer.isNumber("fadingStopsPerMinute")) {
            double fading = answer.getDouble("fadingStopsPerMinute");
            if (Math.abs(fading) >= 0.05) {
                printer.line("light    %s by %.2f stops a minute", fading > 0 ? "fading" : "growing", Math.abs(fading));
            }
        }
        JsonArray regions = answer.getArray("regions");
        if (!regions.isEmpty()) {
            printer.line("");
            printer.line(printer.strong("part          area  texture  standing  what is left after (likely range)"));
        }
        for (int i = 0; i < regions.size(); i++) {
            JsonObject region = regions.getObject(i);
            if (region.getDouble("areaFraction") >= 0.01 || regions.size() <= 6) {
                printer.line(line(region));
            }
        }
        JsonArray warnings = answer.getArray("warnings");
        if (!warnings.isEmpty()) {
            printer.line("");
        }
        for (Object warning : warnings) {
            printer.line("note     " + warning);
        }
    }

    private static String rate(double fps) {
        return fps >= 1 ? Words.number(fps, 1) : "1/" + Words.number(1 / fps, 0);
    }

    private static String line(JsonObject region) {
        StringBuilder text = new StringBuilder(String.format(
                Locale.ROOT,
                "%-12s %5s  %7s  %8s  ",
                region.getString("id"),
                Words.percent(region.getDouble("areaFraction")),
                Words.percent(region.getDouble("texture")),
                Words.percent(region.getDouble("standing"))));
        if (region.get("driftPixelsPerSecond") instanceof JsonArray v) {
            double speed = Math.sqrt(v.getDouble(0) * v.getDouble(0) + v.getDouble(1) * v.getDouble(1));
            text.append("drifts ")
                    .append(Words.number(speed, speed < 10 ? 2 : 0))
                    .append(" px/s (± ")
                    .append(Words.percent(region.getDouble("driftRelativeError")))
                    .append(") ")
                    .append(direction(v.getDouble(0), v.getDouble(1)));
            return text.toString();
        }
        JsonArray remaining = region.getArray("remaining");
        for (int i = 0; i < remaining.size(); i++) {
            JsonObject at = remaining.getObject(i);
            double seconds = at.getDouble("seconds");
            if (seconds == 1 || seconds == 8 || seconds == 64 || seconds == 512) {
                text.append(Words.time(seconds))
                        .append(" ")
                        .append(Words.percent(at.getDouble("ratio")))
                        .append(" (")
                        .append(Math.round(100 * at.getDouble("low")))
                        .append("–")
                        .append(Math.round(100 * at.getDouble("high")))
                        .append(")  ");
            }
        }
        return text.toString().stripTrailing();
    }

    private static String direction(double x, double y) {
        String[] names = {
            "to the right",
            "to the right and down",
            "downwards",
            "to the left and down",
            "to the left",
            "to the left and up",
            "upwards",
            "to the right and up"
        };
        int k = (int) Math.round(Math.atan2(y, x) / (Math.PI / 4));
        return names[Math.floorMod(k, 8)];
    }
}
