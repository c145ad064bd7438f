package ebblight.app.after;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.UsageException;
import ebblight.app.ask.Words;
import ebblight.app.draw.Certificate;
import ebblight.app.draw.ContactSheet;
import ebblight.app.draw.LessonSheet;
import ebblight.app.draw.StripSheet;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.Inputs;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.LightPicture;
import ebblight.imaging.OutputFile;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.ScreenPicture;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.finish.Finish;
import ebblight.imaging.finish.GradeStrip;
import ebblight.imaging.finish.PartTones;
import ebblight.imaging.print.ScreenCopy;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Pages on paper, as PDF. */
public final class Pages {

    /** Long side of pictures on pages: 300 pixels an inch on A4 less its margins is 2300; screens need less. */
    private static final int SIDE = 1600;

    private static final int CONTACT_WIDTH = 640;
    private static final double CHANGED = 0.05;

    private final Path output;
    private final Work work;
    private final JsonObject answer = new JsonObject();

    public Pages(Path output, Work work) {
        this.output = output;
        this.work = work;
        answer.put("schema", "write/1");
        answer.put("file", output.toString());
    }

    private JsonObject written(String kind, byte[] pdf) throws IOException {
        OutputFile.write(output, pdf);
        answer.put("kind", kind);
        answer.put("bytes", pdf.length);
        return answer;
    }

    private static byte[] jpeg(CodedPicture picture) throws IOException {
        return JpegWriter.encode(
                picture, PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "On a page"));
    }

    /** Enters a print into the register and writes its certificate. */
    public JsonObject certificate(Edition edition, Edition.Print print, String creator) throws IOException {
        // what cannot be read must fail before a number is given
        byte[] picture = jpeg(ScreenCopy.of(print.file(), SIDE, work));
        try (OutputFile file = OutputFile.begin(output)) {
            JsonObject entry = edition.enter(print);
            List<String[]> rows =
                    List.of(new String[] {"Size", print.size()}, new String[] {"Paper", print.paper()}, new String[] {
                        "File", entry.getString("file")
                    });
            byte[] pdf = Certificate.pdf(
                    new Certificate.Says(
                            entry.getString("title"),
                            creator,
                            entry.getInt("number"),
                            entry.getInt("of"),
                            rows,
                            entry.getString("sha256")),
                    picture);
            Files.write(file.part(), pdf);
            file.commit();
            answer.put("kind", "certificate");
            answer.put("bytes", pdf.length);
            answer.put("entry", entry);
            return answer;
        }
    }

    /** A contact sheet of every picture named, or in the folders named. */
    public JsonObject contact(List<Path> inputs, String title) throws IOException {
        List<Path> files = Inputs.open(inputs, 0, false).files();
        ContactSheet.Entry[] entries = new ContactSheet.Entry[files.size()];
        JsonArray skipped = new JsonArray();
        work.progress(0, "reading pictures");
        try {
            work.forEach(files.size(), k -> {
                try {
                    entries[k] = entry(files.get(k));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        for (int k = 0; k < entries.length; k++) {
            if (entries[k].jpeg().length == 0) {
                JsonObject one = new JsonObject();
                one.put("file", files.get(k).toString());
                one.put("reason", entries[k].taken());
                skipped.add(one);
            }
        }
        answer.put("pictures", entries.length);
        answer.put("skipped", skipped);
        String heading = title.isEmpty() ? "Contact sheet" : title;
        return written("contact", ContactSheet.pdf(heading, Arrays.asList(entries)));
    }

    private static ContactSheet.Entry entry(Path file) throws IOException {
        String name = String.valueOf(file.getFileName());
        try {
            return new ContactSheet.Entry(
                    name, Lesson.exposure(FrameFacts.of(file)), ScreenPicture.thumbnail(file, CONTACT_WIDTH));
        } catch (UnreadableInputException e) {
            return new ContactSheet.Entry(name, String.valueOf(e.getMessage()).replace(file + ": ", ""), new byte[0]);
        }
    }

    /** A strip of grades to print. */
    public JsonObject strip(Path input, Finish finish, String title) throws IOException {
        LightPicture picture = LightPicture.read(input, work);
        GradeStrip strip =
                GradeStrip.of(picture.light(), picture.profile(), finish.withoutParts(), PartTones.NONE, work);
        answer.put("grades", new JsonArray(strip.grades()));
        String heading = title.isEmpty() ? "Test strip of " + input.getFileName() : title;
        return written(
                "strip",
                StripSheet.pdf(
                        heading,
                        jpeg(strip.picture()),
                        strip.grades(),
                        (finish.parts().isEmpty() ? "" : "Parts keep the tone of the picture here. ")
                                + "Piece by piece half a grade harder; grade 2 leaves the contrast as it is. Judge it"
                                + " in the light that the print will hang in."));
    }

    /**
     * Plan against result.
     *
     * @param without the picture without the long time
     * @param plans documents that were printed with --json, by their schema
     * @param hidden whether the answers are left open
     */
    public JsonObject lesson(Path input, Optional<Path> without, Map<String, Path> plans, String title, boolean hidden)
            throws IOException {
        Lesson lesson = new Lesson();
        for (Map.Entry<String, Path> plan : plans.entrySet()) {
            lesson.add(plan.getKey(), plan.getValue());
        }
        FrameFacts facts = FrameFacts.of(input);
        lesson.taken(facts);
        CodedPicture with = ScreenCopy.of(input, SIDE, work);
        List<LessonSheet.Pictured> pictures = new ArrayList<>();
        if (without.isPresent()) {
            Path other = without.get();
            CodedPicture before = ScreenCopy.of(other, longSide(with), work);
            with = longSide(before) < longSide(with) ? ScreenCopy.of(input, longSide(before), work) : with;
            if (before.width() != with.width() || before.height() != with.height()) {
                throw new UsageException("--without: " + other + " has another shape than " + input
                        + "; give the picture of the same view");
            }
            pictures.add(new LessonSheet.Pictured(jpeg(before), caption("without", FrameFacts.of(other))));
            double share = changed(before, with);
            answer.put("changedFraction", share);
            lesson.changed(share);
        }
        pictures.add(new LessonSheet.Pictured(jpeg(with), caption("with", facts)));
        answer.put("hidden", hidden);
        String heading = title.isEmpty() ? (hidden ? "How long was it open?" : "Plan against result") : title;
        return written("lesson", LessonSheet.pdf(heading, pictures, lesson.plan(), lesson.made(), hidden));
    }

    private static int longSide(CodedPicture picture) {
        return Math.max(picture.width(), picture.height());
    }

    private static String caption(String word, FrameFacts facts) {
        return word
                + (facts.exposureSeconds().isPresent()
                        ? ": " + Words.time(facts.exposureSeconds().getAsDouble())
                        : "");
    }

    /** Share of pixels whose green light differs by more than a twentieth of the mean. */
    private static double changed(CodedPicture one, CodedPicture other) {
        float[] light = one.profile().curve().table(16);
        int n = one.width() * one.height();
        double mean = 0;
        for (int p = 0; p < n; p++) {
            mean += light[one.code(3 * p + 1)] / (double) n;
        }
        long differ = 0;
        for (int p = 0; p < n; p++) {
            double d = light[one.code(3 * p + 1)] - (double) light[other.code(3 * p + 1)];
            differ += Math.abs(d) > CHANGED * mean ? 1 : 0;
        }
        return (double) differ / n;
    }
}
