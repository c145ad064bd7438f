package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.BlendPicture;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.Words;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import ebblight.imaging.RawAs;
import ebblight.imaging.SurveyReader;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code blend}: a shutter time for each part of the picture. */
@Command(
        name = "blend",
        mixinStandardHelpOptions = true,
        description = {
            "Gives each part of a view its own shutter time, from one burst or clip: water 8 s, sky 1/2 s, the branch"
                    + " the one frame in the lull.",
            "Parts are those that measure tells apart, corrected by strokes; they run softly into each other along the"
                    + " edges of the picture."
        })
final class BlendCommand extends PictureCommand {

    private static final String SCHEMA = "blend/1";

    @Mixin
    private final FrameOptions frames = new FrameOptions();

    @Option(
            names = "--parts",
            required = true,
            paramLabel = "BLEND.json",
            description = "What each part is made of (blend/1).")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path parts;

    @Option(names = "--strokes", paramLabel = "S.json", description = "Lines drawn over parts (strokes/1).")
    private @Nullable Path strokes;

    @Option(
            names = "--masks",
            paramLabel = "DIR",
            description = "Write where each part shows, and how long each place was covered, as PNG.")
    private @Nullable Path masks;

    @Override
    Set<String> furtherOutputs() {
        return Set.of("--masks");
    }

    @Override
    JsonObject make(Path target, Work work) throws IOException {
        JsonObject document = SurveyRequest.document(parts);
        if (!SCHEMA.equals(document.getString("schema")) || !(document.get("parts") instanceof JsonArray wished)) {
            throw new UnreadableInputException(
                    parts,
                    "does not say what parts are made of; expected"
                            + " {\"schema\":\"blend/1\",\"parts\":[{\"region\":\"flowing\",\"time\":\"8s\"}]}");
        }
        SurveyRequest request =
                SurveyRequest.read(frames.open(true, RawAs.DEVELOPED), SurveyReader.SURVEY_WIDTH, strokes, work);
        try {
            return BlendPicture.write(request, wished, target, masks, work);
        } catch (RequestException e) {
            throw new UnreadableInputException(parts, String.valueOf(e.getMessage()));
        }
    }

    @Override
    void print(JsonObject answer, Printer to) {
        if (answer.get("conflict") instanceof JsonObject conflict) {
            to.line("no blend: " + conflict.getString("text"));
            for (JsonObject way : Asked.rows(answer.getArray("ways"))) {
                to.line("way out  " + way.getString("text"));
            }
            return;
        }
        to.line("%s  %d × %d", answer.getString("file"), answer.getInt("width"), answer.getInt("height"));
        for (JsonObject layer : Asked.rows(answer.getArray("layers"))) {
            to.line(
                    "%-12s %5s  %s",
                    String.join(
                            ", ",
                            layer.getArray("regions").stream()
                                    .map(String::valueOf)
                                    .toList()),
                    Words.percent(layer.getDouble("areaFraction")),
                    madeOf(layer));
        }
        for (Object warning : answer.getArray("warnings", new JsonArray())) {
            to.line("note     " + warning);
        }
    }

    private static String madeOf(JsonObject layer) {
        int frames = layer.getInt("frames");
        String counted = frames + (frames == 1 ? " frame" : " frames");
        String text =
                switch (layer.getString("of")) {
                    case "time" -> Words.time(layer.getDouble("wantedSeconds")) + ", " + counted;
                    case "lull" -> "frame " + layer.getInt("number") + ", the lull";
                    case "frame" -> "frame " + layer.getInt("number");
                    case "people gone" ->
                        "people gone, " + layer.getString("as") + " of " + counted
                                + "; the longest covered place is so "
                                + Words.percent(layer.getDouble("longestCovered")) + " of the time";
                    case "trails joined" -> "trails joined, brightest of " + counted;
                    default -> "all " + counted;
                };
        return layer.get("gaps") instanceof JsonObject gaps && gaps.getInt("count") > 0 && frames > 1
                ? text + "; gaps " + Words.time(gaps.getDouble("seconds")) + ", the longest "
                        + Words.time(gaps.getDouble("longestSeconds"))
                : text;
    }
}
