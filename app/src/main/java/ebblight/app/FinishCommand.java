package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.after.FinishFile;
import ebblight.app.after.PartShares;
import ebblight.app.ask.Asked;
import ebblight.app.ask.PictureOutput;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.app.ask.Words;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import ebblight.imaging.FrameSource;
import ebblight.imaging.LightPicture;
import ebblight.imaging.OutputFile;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.RawAs;
import ebblight.imaging.SurveyReader;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.finish.Finish;
import ebblight.imaging.finish.Finished;
import ebblight.imaging.finish.Finisher;
import ebblight.imaging.finish.GradeStrip;
import ebblight.imaging.finish.PartTones;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code finish}: level, crop, tones, black and white, toning, grain, edges. */
@Command(
        name = "finish",
        mixinStandardHelpOptions = true,
        description = {
            "Finishes a picture by a small file of your own: level, crop, exposure, tone, grade, black and white by"
                    + " the picture's own colours, toning, local contrast, grain, edges for a viewing distance and a"
                    + " paper.",
            "The input stays as it is; the result keeps its colour profile."
        })
final class FinishCommand extends PictureCommand {

    @Parameters(paramLabel = "INPUT", description = "A picture: 16-bit TIFF, JPEG or PNG.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path input;

    @Option(names = "--with", paramLabel = "FINISH.json", description = "What to do (finish/1); left out: nothing.")
    private @Nullable Path with;

    @Option(
            names = "--frames",
            paramLabel = "FRAMES",
            description = "For parts with tones of their own: a clip, a folder or pictures of the same view, whose"
                    + " motion tells the parts apart.")
    private List<Path> frames = List.of();

    @Option(
            names = "--fps",
            paramLabel = "RATE",
            description = "Frames per second, when the frames do not say when they were taken.")
    private @Nullable String fps;

    @Option(names = "--strokes", paramLabel = "S.json", description = "Lines drawn over parts (strokes/1).")
    private @Nullable Path strokes;

    @Option(
            names = "--strip",
            paramLabel = "STRIP.jpg",
            description = "Also write a test strip: the picture in five cut pieces, half a grade apart.")
    private @Nullable Path strip;

    @Option(
            names = "--save",
            paramLabel = "FINISH.json",
            description = "Also write the finish with the colours that were found, to change and use again.")
    private @Nullable Path save;

    @Override
    Set<String> furtherOutputs() {
        return Set.of("--strip", "--save");
    }

    @Override
    JsonObject make(Path target, Work work) throws IOException {
        if (strip != null) {
            PictureOutput.check(strip);
            PictureOutput.keepOriginal("--strip", strip, input);
        }
        if (save != null && with != null) {
            PictureOutput.keepOriginal("--save", save, with);
        }
        JsonObject document = document();
        Finish finish = finish(document);
        work.progress(0, "reading " + input.getFileName());
        LightPicture picture = LightPicture.read(input, work);
        JsonObject answer = new JsonObject();
        answer.put("schema", "finish/1");
        answer.put("file", target.toString());
        PartTones parts = parts(finish, picture, work);
        Optional<GradeStrip> grades = strip == null
                ? Optional.empty()
                : Optional.of(refused(() -> GradeStrip.of(picture.light(), picture.profile(), finish, parts, work)));
        Finished finished = refused(
                () -> Finisher.finish(picture.light(), picture.profile(), picture.grain(), finish, parts, work));
        String sentence = finished.done().isEmpty() ? "untouched" : String.join(", ", finished.done());
        PictureOutput.write(target, finished.picture(), facts(picture, "Finished: " + sentence), work);
        if (strip != null && grades.isPresent()) {
            answer.put("strip", written(strip, grades.get(), picture, work));
        }
        answer.put("width", finished.picture().width());
        answer.put("height", finished.picture().height());
        answer.put(
                "pixelsPerInch",
                finish.pictureCentimetres()
                        .map(cm -> finished.picture().width() / cm * 2.54)
                        .orElse(null));
        answer.put("done", new JsonArray(finished.done()));
        answer.put("colours", FinishFile.colours(finished.colours()));
        answer.put("grain", grain(finished));
        answer.put("warnings", new JsonArray(picture.warnings()));
        if (save != null) {
            JsonObject saved = new JsonObject();
            saved.putAll(document);
            if (!finished.colours().isEmpty()) {
                JsonObject bw = new JsonObject();
                bw.putAll(document.getObject("blackAndWhite"));
                bw.put("colours", FinishFile.colours(finished.colours()));
                saved.put("blackAndWhite", bw);
            }
            OutputFile.write(save, (Asked.print(saved) + "\n").getBytes(StandardCharsets.UTF_8));
            answer.put("saved", save.toString());
        }
        return answer;
    }

    /** Where the parts of the finish lie. */
    private PartTones parts(Finish finish, LightPicture picture, Work work) throws IOException {
        if (finish.parts().isEmpty()) {
            return PartTones.NONE;
        }
        if (frames.isEmpty()) {
            throw new UsageException("--frames: the finish has parts with tones of their own; name a clip, a folder or"
                    + " pictures of the same view, which tell where the parts lie");
        }
        FrameSource source = FrameOptions.open(frames, fps, true, RawAs.EMBEDDED);
        SurveyRequest request = SurveyRequest.read(source, SurveyReader.SURVEY_WIDTH, strokes, work);
        PartShares shares = PartShares.of(request, work);
        return refused(() -> shares.tones(
                finish.parts(), picture.light().width(), picture.light().height()));
    }

    private JsonObject written(Path file, GradeStrip strip, LightPicture picture, Work work) throws IOException {
        PictureOutput.write(file, strip.picture(), facts(picture, "Test strip of grades"), work);
        JsonObject told = new JsonObject();
        told.put("file", file.toString());
        told.put("grades", new JsonArray(strip.grades()));
        return told;
    }

    private static JsonObject grain(Finished finished) {
        JsonObject grain = new JsonObject();
        grain.put("slope", finished.grain().slope());
        grain.put("floor", finished.grain().floor());
        grain.put("source", finished.grain().source());
        return grain;
    }

    private JsonObject document() throws IOException {
        if (with == null) {
            JsonObject nothing = new JsonObject();
            nothing.put("schema", "finish/1");
            return nothing;
        }
        return SurveyRequest.document(with);
    }

    private Finish finish(JsonObject document) throws IOException {
        return refused(() -> FinishFile.read(document));
    }

    private interface Asking<T> {
        T get() throws IOException;
    }

    /** What the file of the finish holds is input, not usage. */
    private <T> T refused(Asking<T> asking) throws IOException {
        try {
            return asking.get();
        } catch (RequestException | IllegalArgumentException e) {
            if (with == null) {
                throw e;
            }
            throw new UnreadableInputException(with, String.valueOf(e.getMessage()));
        }
    }

    private PictureFacts facts(LightPicture picture, String description) {
        return PictureFacts.of(picture.facts(), picture.facts().exposureSeconds(), 1, List.of(input), description);
    }

    @Override
    void print(JsonObject answer, Printer to) {
        to.line("%s  %d × %d", answer.getString("file"), answer.getInt("width"), answer.getInt("height"));
        List<String> steps =
                answer.getArray("done").stream().map(String::valueOf).toList();
        to.line("done     " + (steps.isEmpty() ? "nothing: the picture is untouched" : String.join(", ", steps)));
        for (JsonObject colour : Asked.rows(answer.getArray("colours"))) {
            to.line(
                    "colour   %-24s %6s of the picture, %+.2f stop",
                    colour.getString("word"), Words.percent(colour.getDouble("share")), colour.getDouble("stops"));
        }
        answer.getArray("warnings").forEach(w -> to.line("note     " + w));
    }
}
