package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.PictureOutput;
import ebblight.app.ask.UsageException;
import ebblight.app.ask.Words;
import ebblight.app.memory.Remembered;
import ebblight.core.numeric.Work;
import ebblight.imaging.FrameSource;
import ebblight.imaging.Inputs;
import ebblight.imaging.MosaicStack;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.PictureNotes;
import ebblight.imaging.RawAs;
import ebblight.imaging.Skipped;
import ebblight.imaging.StackOptions;
import ebblight.imaging.StackResult;
import ebblight.imaging.Stacker;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code stack}: one long exposure from many frames. */
@Command(
        name = "stack",
        mixinStandardHelpOptions = true,
        description = "Adds frames up to one long exposure in linear light, 16 bits a sample.")
final class StackCommand extends PictureCommand {

    @Mixin
    private final FrameOptions frames = new FrameOptions();

    @Option(
            names = "--as",
            paramLabel = "HOW",
            defaultValue = "mean",
            description = "mean, brightest, darkest or median (default: ${DEFAULT-VALUE}).")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private String as;

    @Option(names = "--darks", paramLabel = "DIR", description = "Folder of dark frames to subtract.")
    private @Nullable Path darks;

    @Option(names = "--align", description = "Lay every frame over the first one before adding, by what stands still.")
    private boolean align;

    @Option(names = "--linear", description = "Write linear light with a linear profile.")
    private boolean linear;

    @Option(
            names = "--mosaic",
            description = "RAW only: add up before demosaicing; the mean stays beside OUT as OUT.dng.")
    private boolean mosaic;

    @Override
    JsonObject make(Path target, Work work) throws IOException {
        StackOptions.As how = how();
        FrameSource source = frames.open(false, RawAs.DEVELOPED);
        Optional<StillParts> still = align ? Optional.of(StillParts.measured(source, work)) : Optional.empty();
        StackOptions options =
                new StackOptions(how, Optional.ofNullable(darks), still.map(StillParts::alignOn), linear);
        StackResult result = mosaic ? ofMosaics(source, options, target, work) : Stacker.stack(source, options, work);
        List<String> warnings = new ArrayList<>(result.warnings());
        still.map(StillParts::warning).filter(w -> !w.isEmpty()).ifPresent(warnings::add);
        String description = "Stack of " + result.frames() + " frames, "
                + options.as().name().toLowerCase(Locale.ROOT) + " in linear light";
        PictureFacts facts =
                PictureFacts.of(result.facts(), result.seconds(), result.frames(), source.files(), description);
        PictureOutput.write(target, result.picture(), facts, PictureNotes.of(result.grain()), work);
        return answer(target, result, warnings);
    }

    @Override
    void remember(Path result, JsonObject answer, Work work) throws IOException {
        Optional<Remembered> outing = Remembered.around(result);
        if (how() == StackOptions.As.MEAN && outing.isPresent()) {
            outing.get().stacked(result, Inputs.files(frames.inputs()), answer, work);
        }
    }

    private static StackResult ofMosaics(FrameSource source, StackOptions options, Path target, Work work)
            throws IOException {
        boolean plain = options.as() == StackOptions.As.MEAN
                && options.darks().isEmpty()
                && options.align().isEmpty();
        if (!plain) {
            throw new UsageException("--mosaic: adds up a plain mean; leave out --as, --darks and --align");
        }
        Path mean = MosaicStack.beside(target);
        PictureOutput.keepOriginals("-o", mean, source);
        return MosaicStack.stack(source, mean, options.linear(), work);
    }

    private StackOptions.As how() {
        for (StackOptions.As each : StackOptions.As.values()) {
            if (each.name().equals(as.toUpperCase(Locale.ROOT))) {
                return each;
            }
        }
        throw new UsageException("--as: \"" + as + "\" is not known; expected mean, brightest, darkest or median");
    }

    private static JsonObject answer(Path target, StackResult result, List<String> warnings) {
        JsonObject answer = new JsonObject();
        answer.put("schema", "stack/1");
        answer.put("file", target.toString());
        answer.put("frames", result.frames());
        answer.put("width", result.picture().width());
        answer.put("height", result.picture().height());
        answer.put("seconds", result.seconds().isPresent() ? result.seconds().getAsDouble() : null);
        JsonObject gaps = null;
        if (result.gaps().isPresent()) {
            StackResult.Gaps g = result.gaps().get();
            gaps = new JsonObject();
            gaps.put("count", g.count());
            gaps.put("seconds", g.seconds());
            gaps.put("longestSeconds", g.longestSeconds());
        }
        answer.put("gaps", gaps);
        JsonArray skipped = new JsonArray();
        for (Skipped s : result.skipped()) {
            JsonObject one = new JsonObject();
            one.put("file", s.file().toString());
            one.put("reason", s.reason());
            skipped.add(one);
        }
        answer.put("skipped", skipped);
        answer.put("warnings", new JsonArray(warnings));
        return answer;
    }

    @Override
    void print(JsonObject answer, Printer to) {
        to.line(
                "%s  %d frames%s, %d × %d, 16 bits",
                answer.getString("file"),
                answer.getInt("frames"),
                answer.isNumber("seconds") ? ", " + Words.time(answer.getDouble("seconds")) + " of light" : "",
                answer.getInt("width"),
                answer.getInt("height"));
        if (answer.get("gaps") instanceof JsonObject gaps && gaps.getInt("count") > 0) {
            to.line(
                    "gaps     %d, together %s, the longest %s: moving lights show them",
                    gaps.getInt("count"),
                    Words.time(gaps.getDouble("seconds")),
                    Words.time(gaps.getDouble("longestSeconds")));
        }
        List<JsonObject> skipped = Asked.rows(answer.getArray("skipped"));
        for (JsonObject s : skipped.subList(0, Math.min(10, skipped.size()))) {
            to.line("skipped  " + s.getString("file") + ": " + s.getString("reason"));
        }
        if (skipped.size() > 10) {
            to.line("skipped  and " + (skipped.size() - 10) + " more (all with --json)");
        }
        for (Object warning : answer.getArray("warnings")) {
            to.line("note     " + warning);
        }
    }
}
