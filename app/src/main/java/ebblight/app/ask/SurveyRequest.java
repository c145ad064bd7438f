package ebblight.app.ask;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import com.grack.nanojson.JsonWriter;
import ebblight.core.motion.Clip;
import ebblight.core.numeric.Work;
import ebblight.engine.Blobs;
import ebblight.engine.Engine;
import ebblight.imaging.FrameSource;
import ebblight.imaging.Skipped;
import ebblight.imaging.SurveyFrames;
import ebblight.imaging.SurveyReader;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** Frames read for the survey, and the questions asked about them. */
public final class SurveyRequest {

    private static final String BLOB = "frames";

    private final FrameSource source;
    private final SurveyFrames frames;
    private final Blobs blobs = new Blobs();
    private final Engine engine = new Engine();
    private final JsonObject strokes;
    private final CutFields fields;

    private SurveyRequest(FrameSource source, SurveyFrames frames, JsonObject strokes) {
        this.source = source;
        this.frames = frames;
        this.fields = new CutFields(frames.cut());
        this.strokes = fields.strokesInside(strokes);
        Clip clip = frames.clip();
        for (int i = 0; i < clip.frames(); i++) {
            blobs.put(BLOB + "/" + i, clip.bytes(i));
        }
    }

    /** Reads the frames at {@code width} pixels, or fewer when they are smaller. */
    public static SurveyRequest read(FrameSource source, int width, @Nullable Path strokes, Work work)
            throws IOException {
        return read(source, width, 1, strokes, work);
    }

    /** Reads the frames as a lens {@code zoom} times as long would show them at {@code width} pixels. */
    public static SurveyRequest read(FrameSource source, int width, double zoom, @Nullable Path strokes, Work work)
            throws IOException {
        JsonObject drawn = strokes == null ? new JsonObject() : document(strokes);
        SurveyFrames frames = SurveyReader.read(source, width, zoom, work);
        if (frames.clip().frames() < 2) {
            throw new UnreadableInputException(source.files().get(0)
                    + ": only one frame can be used; motion needs several frames of the same view");
        }
        return new SurveyRequest(source, frames, drawn);
    }

    /** The first frame of a source alone, for questions that need no motion. */
    public static SurveyRequest ofOneFrame(FrameSource source, Work work) throws IOException {
        SurveyFrames first = SurveyReader.first(source, SurveyReader.SURVEY_WIDTH, work);
        return new SurveyRequest(source, first, new JsonObject());
    }

    /** Reads a JSON object from a file. */
    public static JsonObject document(Path file) throws IOException {
        UnreadableInputException.unlessReadable(file);
        try {
            return JsonParser.object().from(Files.readString(file, StandardCharsets.UTF_8));
        } catch (JsonParserException e) {
            throw new UnreadableInputException(file, "is not a JSON object: " + e.getMessage());
        } catch (CharacterCodingException e) {
            throw new UnreadableInputException(file, "is not text in UTF-8");
        }
    }

    public SurveyFrames frames() {
        return frames;
    }

    public FrameSource source() {
        return source;
    }

    public Blobs blobs() {
        return blobs;
    }

    /** Asks {@code schema} about the frames; {@code more} holds the other fields of the request. */
    public JsonObject ask(String schema, JsonObject more, Work work) {
        Clip clip = frames.clip();
        JsonObject described = new JsonObject();
        described.put("blob", BLOB);
        described.put("coding", "linear16");
        described.put("width", clip.width());
        described.put("height", clip.height());
        JsonArray times = new JsonArray();
        for (int i = 0; i < clip.frames(); i++) {
            times.add(clip.timeSeconds(i) - clip.timeSeconds(0));
        }
        described.put("timesSeconds", times);
        JsonArray exposures = new JsonArray();
        frames.exposureSeconds().forEach(e -> exposures.add(e.orElse(0)));
        described.put("exposureSeconds", exposures);
        described.put("sourceWidth", frames.sourceWidth());
        described.put("sourceHeight", frames.sourceHeight());
        described.put("wholeWidth", frames.cut().wholeWidth());
        described.put("sourceFrames", frames.sourceFrames());
        described.put("sourceFps", frames.framesPerSecond());
        described.put("medianGapSeconds", frames.medianGapSeconds());
        JsonObject request = new JsonObject();
        request.put("schema", schema);
        request.put("frames", described);
        if (!strokes.isEmpty()) {
            request.put("strokes", strokes);
        }
        request.putAll(more);
        JsonObject answer = Asked.parse(engine.answer(JsonWriter.string(request), blobs, work));
        fields.placesOutside(answer);
        addWhatReadingSaw(answer);
        return answer;
    }

    private void addWhatReadingSaw(JsonObject answer) {
        JsonArray skipped = new JsonArray();
        for (Skipped s : source.skipped()) {
            JsonObject one = new JsonObject();
            one.put("file", s.file().toString());
            one.put("reason", s.reason());
            skipped.add(one);
        }
        answer.put("skipped", skipped);
        if (answer.get("warnings") instanceof JsonArray warnings) {
            warnings.addAll(source.warnings());
            if (frames.cutOff()) {
                warnings.add("only the first " + frames.clip().frames() + " survey frames were used; the rest of the"
                        + " input is longer than a survey takes");
            }
            if (!skipped.isEmpty()) {
                warnings.add(skipped.size() + " frames were skipped, the first because it "
                        + skipped.getObject(0).getString("reason"));
            }
        }
    }
}
