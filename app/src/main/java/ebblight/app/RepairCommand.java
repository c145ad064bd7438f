package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.after.DustList;
import ebblight.app.after.RepairFile;
import ebblight.app.ask.Asked;
import ebblight.app.ask.PictureOutput;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.GreyPng;
import ebblight.imaging.LightPicture;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.PictureNotes;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.card.MeasuredHorizon;
import ebblight.imaging.repair.Cast;
import ebblight.imaging.repair.Change;
import ebblight.imaging.repair.Dust;
import ebblight.imaging.repair.Repair;
import ebblight.imaging.repair.Repairer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code repair}: hot pixels, glow, leaked light, dark corners, cast, dust, level. */
@Command(
        name = "repair",
        mixinStandardHelpOptions = true,
        description = {
            "Takes out what sensor, filters and eyepiece put into a picture. Only what is asked for is looked at, and"
                    + " what is not sure is left alone and counted.",
            "The input stays as it is; the result keeps its colour profile."
        })
final class RepairCommand extends PictureCommand {

    /** Repairs after which the noise that a stack measured still holds. */
    private static final Set<String> KEEP_GRAIN = Set.of("hotPixels", "glow", "lightLeak", "dust");

    @Parameters(paramLabel = "INPUT", description = "A picture: 16-bit TIFF, JPEG, PNG or RAW.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path input;

    @Option(
            names = "--darks",
            paramLabel = "DIR|FILE",
            description =
                    "Dark frames of the same camera and, best, of the same time: hot pixels and glow. Of a folder,"
                            + " a whole card too, those that match are taken.")
    private @Nullable Path darks;

    @Option(
            names = "--frames",
            paramLabel = "DIR",
            description = "Frames of other views from the same camera: spots that stay put are hot pixels.")
    private @Nullable Path frames;

    @Option(
            names = "--reference",
            paramLabel = "FILE",
            description = "The same view with the eyepiece covered: takes off light that leaked in.")
    private @Nullable Path reference;

    @Option(names = "--cast", paramLabel = "R,B", description = "Gains of red and blue that filter-check told.")
    private @Nullable String cast;

    @Option(
            names = "--neutral",
            paramLabel = "L,T,R,B",
            description = "A part that is grey, as fractions of width and height: takes off the cast it shows.")
    private @Nullable String neutral;

    @Option(
            names = "--vignetting",
            paramLabel = "STOPS",
            description = "Stops that the corners lack against the middle, as filter-check told.")
    private @Nullable Double vignetting;

    @Option(
            names = "--dust",
            paramLabel = "X,Y,RADIUS",
            description = "A speck of dust to spot out, as fractions; may be given again.")
    private List<String> dust = new ArrayList<>();

    @Option(
            names = "--dust-file",
            paramLabel = "SORT.json",
            description = "The dust that sort told of this camera's card (sort --json), to spot out.")
    private @Nullable Path dustFile;

    @Option(
            names = "--level",
            paramLabel = "DEGREES|auto",
            description = "Turn clockwise to level the horizon; auto by the horizon in the picture, where it is sure.")
    private @Nullable String level;

    @Option(names = "--with", paramLabel = "REPAIR.json", description = "The numbers in a file (repair/1).")
    private @Nullable Path with;

    @Option(names = "--mask", paramLabel = "MASK.png", description = "Also write where the picture was changed.")
    private @Nullable Path mask;

    /** What is to be known of the repair beside what was done. */
    private final List<String> notes = new ArrayList<>();

    @Override
    Set<String> furtherOutputs() {
        return Set.of("--mask");
    }

    @Override
    JsonObject make(Path target, Work work) throws IOException {
        checkMask();
        notes.clear();
        Repair repair = repair();
        work.progress(0, "reading " + input.getFileName());
        LightPicture picture = LightPicture.read(input, work);
        int width = picture.light().width();
        int height = picture.light().height();
        Repairer.Repaired repaired;
        try {
            repaired = Repairer.repair(picture, repair, work);
        } catch (IllegalArgumentException e) {
            throw new UnreadableInputException(input, String.valueOf(e.getMessage()));
        }
        notes.addAll(repaired.warnings());
        List<String> sentences = repaired.changes().stream().map(Change::words).toList();
        PictureFacts facts = PictureFacts.of(
                picture.facts(),
                picture.facts().exposureSeconds(),
                1,
                List.of(input),
                sentences.isEmpty() ? "Untouched" : "Repaired: " + String.join("; ", sentences));
        CodedPicture coded = CodedPicture.of(repaired.light(), picture.profile(), work);
        boolean grainStays = repaired.changes().stream().allMatch(c -> KEEP_GRAIN.contains(c.kind()));
        PictureNotes grain = grainStays ? PictureNotes.of(picture.grain()) : PictureNotes.NONE;
        PictureOutput.write(target, coded, facts, grain, work);
        if (mask != null) {
            GreyPng.write(mask, repaired.mask().values(), width, height);
        }
        return answer(target, coded, repaired);
    }

    /** The mask must not take the place of anything that the picture is made from. */
    private void checkMask() throws IOException {
        if (mask == null) {
            return;
        }
        PictureOutput.checkPng("--mask", mask);
        PictureOutput.keepOriginal("--mask", mask, input);
        for (Path given : Stream.of(
                        Optional.ofNullable(darks), Optional.ofNullable(frames), Optional.ofNullable(reference))
                .flatMap(Optional::stream)
                .toList()) {
            if (Files.isDirectory(given)) {
                try (Stream<Path> list = Files.list(given)) {
                    for (Path each : list.toList()) {
                        PictureOutput.keepOriginal("--mask", mask, each);
                    }
                }
            } else {
                PictureOutput.keepOriginal("--mask", mask, given);
            }
        }
    }

    private Repair repair() throws IOException {
        RepairFile file = file();
        try {
            return new Repair(
                    Optional.ofNullable(darks),
                    Optional.ofNullable(frames),
                    Optional.ofNullable(reference),
                    cast == null ? file.cast() : Optional.of(typedCast(cast)),
                    neutral == null
                            ? file.neutral()
                            : Optional.of(RepairFile.area("neutral", numbers("--neutral", neutral, 4))),
                    vignetting == null ? file.cornerStops() : OptionalDouble.of(vignetting),
                    dust.isEmpty() && dustFile == null ? file.dust() : typedDust(),
                    level == null ? file.levelDegrees() : typedLevel(level));
        } catch (IllegalArgumentException e) {
            throw new UsageException(String.valueOf(e.getMessage()));
        }
    }

    private RepairFile file() throws IOException {
        if (with == null) {
            return new RepairFile(
                    Optional.empty(), Optional.empty(), OptionalDouble.empty(), List.of(), OptionalDouble.empty());
        }
        try {
            return RepairFile.read(SurveyRequest.document(with));
        } catch (RequestException e) {
            throw new UnreadableInputException(with, String.valueOf(e.getMessage()));
        }
    }

    private static Cast typedCast(String typed) {
        double[] gains = numbers("--cast", typed, 2);
        return new Cast(gains[0], gains[1]);
    }

    private OptionalDouble typedLevel(String typed) throws IOException {
        if (!typed.equals("auto")) {
            try {
                return OptionalDouble.of(Double.parseDouble(typed.strip()));
            } catch (NumberFormatException e) {
                throw new UsageException(
                        "--level: \"" + typed + "\" cannot be read; expected degrees such as -0.6, or auto");
            }
        }
        Optional<MeasuredHorizon> horizon = MeasuredHorizon.of(input);
        if (horizon.isEmpty()) {
            notes.add("level left as it is: no horizon is clear enough to turn the picture by");
            return OptionalDouble.empty();
        }
        double degrees = horizon.get().degrees();
        double range = horizon.get().rangeDegrees();
        String found = String.format(
                Locale.ROOT,
                "the horizon's %s end lies %.2f° (± %.2f°) lower",
                degrees < 0 ? "left" : "right",
                Math.abs(degrees),
                range);
        if (Math.abs(degrees) <= range) {
            notes.add("level left as it is: " + found + ", which may be none");
            return OptionalDouble.empty();
        }
        notes.add(found);
        return OptionalDouble.of(-degrees);
    }

    private List<Dust> typedDust() throws IOException {
        List<Dust> specks = new ArrayList<>(dustFile == null ? List.of() : DustList.read(dustFile, input));
        for (String each : dust) {
            double[] n = numbers("--dust", each, 3);
            specks.add(new Dust(n[0], n[1], n[2]));
        }
        return specks;
    }

    private static double[] numbers(String option, String typed, int count) {
        String[] parts = typed.split(",", -1);
        try {
            double[] numbers = new double[parts.length];
            for (int k = 0; k < numbers.length; k++) {
                numbers[k] = Double.parseDouble(parts[k].strip());
            }
            if (numbers.length == count) {
                return numbers;
            }
        } catch (NumberFormatException e) {
            // said below
        }
        throw new UsageException(
                option + ": \"" + typed + "\" cannot be read; expected " + count + " numbers with commas between");
    }

    private JsonObject answer(Path target, CodedPicture coded, Repairer.Repaired repaired) {
        JsonObject answer = new JsonObject();
        answer.put("schema", "repair/1");
        answer.put("file", target.toString());
        answer.put("width", coded.width());
        answer.put("height", coded.height());
        JsonArray done = new JsonArray();
        for (Change change : repaired.changes()) {
            JsonObject one = new JsonObject();
            one.put("kind", change.kind());
            one.put("pixels", change.pixels());
            one.put("leftAlone", change.left());
            one.put("words", change.words());
            done.add(one);
        }
        answer.put("done", done);
        answer.put("mask", mask == null ? null : mask.toString());
        answer.put("warnings", new JsonArray(notes));
        return answer;
    }

    @Override
    void print(JsonObject answer, Printer to) {
        to.line("%s  %d × %d, 16 bits", answer.getString("file"), answer.getInt("width"), answer.getInt("height"));
        JsonArray done = answer.getArray("done");
        if (done.isEmpty()) {
            to.line("done     nothing: no repair was asked for");
        }
        for (JsonObject one : Asked.rows(done)) {
            to.line("done     " + one.getString("words"));
        }
        for (Object warning : answer.getArray("warnings")) {
            to.line("note     " + warning);
        }
    }
}
