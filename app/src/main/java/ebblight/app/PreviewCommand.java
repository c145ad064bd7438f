package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.PreviewPicture;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.app.ask.Words;
import ebblight.core.exposure.ShutterTime;
import ebblight.core.exposure.UnreadableTextException;
import ebblight.core.numeric.Work;
import ebblight.imaging.FrameSource;
import ebblight.imaging.SurveyReader;
import java.io.IOException;
import java.nio.file.Path;
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
final class PreviewCommand extends PictureCommand {

    @Mixin
    private final FrameOptions frames = new FrameOptions();

    @Option(names = "--time", required = true, paramLabel = "T", description = "Shutter time: 1/60, 0.8s, 30s, 4m30s.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private String time;

    @Option(names = "--strokes", paramLabel = "S.json", description = "Lines drawn over parts (strokes/1).")
    private @Nullable Path strokes;

    @Override
    JsonObject make(Path target, Work work) throws IOException {
        parsed(time, "--time");
        FrameSource source = frames.open(true);
        SurveyRequest request = SurveyRequest.read(source, SurveyReader.SURVEY_WIDTH, strokes, work);
        return PreviewPicture.write(request, time, new JsonObject(), target, work);
    }

    @Override
    void print(JsonObject answer, Printer to) {
        to.line(
                "%s  %s, %s; the frames show up to %s themselves, %s of the picture is known from them",
                answer.getString("file"),
                Words.time(answer.getDouble("seconds")),
                answer.getString("method"),
                Words.time(answer.getDouble("clipSeconds")),
                Words.percent(answer.getDouble("knownFraction")));
    }

    /** Reads a typed time, naming the option when it cannot be read. */
    static double parsed(String typed, String option) {
        try {
            return ShutterTime.parse(typed);
        } catch (UnreadableTextException e) {
            throw new UsageException(option + ": " + e.getMessage());
        }
    }
}
