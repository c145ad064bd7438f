package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.ShutterTime;
import ebblight.core.exposure.UnreadableTextException;
import ebblight.core.motion.Placement;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.engine.Blobs;
import ebblight.engine.Floats;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FullPreview;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.SurveyFrames;
import ebblight.imaging.SurveyReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code preview}: the picture at any shutter time. */
@Command(
        name = "preview",
        mixinStandardHelpOptions = true,
        description = {
            "Shows what an exposure of any time will look like.",
            "Up to the length of the clip it is the mean of its frames; beyond, foam patterns and long cloud streaks"
                    + " are likely ones, not the ones that will come."
        })
final class PreviewCommand implements Callable<Integer> {

    @Mixin
    private final FrameOptions frames = new FrameOptions();

    @Mixin
    private final JsonOption json = new JsonOption();

    @Option(names = "--time", required = true, paramLabel = "T", description = "Shutter time: 1/60, 0.8s, 30s, 4m30s.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private String time;

    @Option(names = "-o", required = true, paramLabel = "P.jpg", description = "Picture to write (.jpg or .tif).")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path output;

    @Option(names = "--strokes", paramLabel = "S.json", description = "Lines drawn over parts (strokes/1).")
    private @Nullable Path strokes;

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        double seconds = parsed(time, "--time");
        PictureOutput.check(output);
        Work work = printer.work();
        SurveyRequest request = SurveyRequest.read(frames.open(true), SurveyReader.SURVEY_WIDTH, strokes, work);
        JsonObject answer = write(request, time, output, work);
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            printer.line(
                    "%s  %s, %s; the clip is %s long, %s of the picture is known from it",
                    output,
                    Words.time(seconds),
                    answer.getString("method"),
                    Words.time(answer.getDouble("clipSeconds")),
                    Words.percent(answer.getDouble("knownFraction")));
        }
        return ExitCode.DONE;
    }

    /** Reads a typed time, naming the option when it cannot be read. */
    static double parsed(String typed, String option) {
        try {
            return ShutterTime.parse(typed);
        } catch (UnreadableTextException e) {
            throw new UsageException(option + ": " + e.getMessage());
        }
    }

    /** Asks for the preview, composes it at full size and writes it. */
    static JsonObject write(SurveyRequest request, String time, Path output, Work work) throws IOException {
        JsonObject more = new JsonObject();
        more.put("time", time);
        more.put("pictureBlob", "picture");
        more.put("detailBlob", "detail");
        more.put("meanBlob", "mean");
        JsonObject answer = request.ask("preview/1", more, work);
        RgbPicture full = composed(request, answer, work);
        double seconds = answer.getDouble("seconds");
        String description = "Preview of an exposure of " + Words.time(seconds) + ", " + answer.getString("method");
        PictureFacts facts = PictureFacts.of(
                request.source().facts(),
                OptionalDouble.of(seconds),
                answer.getInt("frames"),
                request.source().files(),
                description);
        PictureOutput.write(output, CodedPicture.srgb(full, work), facts, work);
        answer.put("file", output.toString());
        answer.remove("placements");
        answer.put("width", full.width());
        answer.put("height", full.height());
        return answer;
    }

    private static RgbPicture composed(SurveyRequest request, JsonObject answer, Work work) throws IOException {
        SurveyFrames survey = request.frames();
        List<Placement> placements = new ArrayList<>();
        for (Object row : answer.getArray("placements")) {
            JsonArray q = (JsonArray) row;
            placements.add(new Placement(q.getDouble(0), q.getDouble(1), q.getDouble(2)));
        }
        boolean fromFrames = answer.getString("method").toLowerCase(Locale.ROOT).startsWith("mean");
        double until = fromFrames ? answer.getDouble("seconds") : Double.POSITIVE_INFINITY;
        RgbPicture mean = FullPreview.mean(
                request.source(),
                until,
                placements,
                survey.sourceIndices(),
                survey.clip().width(),
                work);
        if (fromFrames) {
            return mean;
        }
        int w = survey.clip().width() - 2 * answer.getInt("crop");
        int h = survey.clip().height() - 2 * answer.getInt("crop");
        return FullPreview.compose(
                mean,
                picture(request.blobs(), "picture", w, h),
                picture(request.blobs(), "mean", w, h),
                Floats.plane(bytes(request.blobs(), "detail"), 0, w * h),
                answer.getInt("crop"),
                work);
    }

    private static byte[] bytes(Blobs blobs, String name) {
        return blobs.get(name).orElseThrow(() -> new IllegalStateException("the engine left out " + name));
    }

    private static RgbPicture picture(Blobs blobs, String name, int w, int h) {
        byte[] bytes = bytes(blobs, name);
        return RgbPicture.of(
                w, h, Floats.plane(bytes, 0, w * h), Floats.plane(bytes, 1, w * h), Floats.plane(bytes, 2, w * h));
    }
}
