package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.after.Edition;
import ebblight.app.after.FinishFile;
import ebblight.app.after.Pages;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.engine.RequestException;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.finish.Finish;
import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Which page is written where OUT is a PDF. */
final class PageOptions {

    @Option(
            names = "--edition",
            paramLabel = "REGISTER.json",
            description = "PDF: enter the print of INPUT into this register and write its certificate.")
    private @Nullable Path edition;

    @Option(names = "--of", paramLabel = "N", description = "Edition: how many prints, said once.")
    private int of;

    @Option(
            names = "--number",
            paramLabel = "N",
            description = "Edition: the number of this print (default: the next).")
    private int number;

    @Option(names = "--paper", paramLabel = "P", description = "Edition: paper of the print, in words.")
    private String paper = "";

    @Option(names = "--contact", description = "PDF: contact sheet of all pictures named.")
    private boolean contact;

    @Option(names = "--strip", description = "PDF: test strip of grades, of the finish given by --with.")
    private boolean strip;

    @Option(names = "--with", paramLabel = "FINISH.json", description = "Strip: a saved finish (finish/1).")
    private @Nullable Path with;

    @Option(names = "--lesson", description = "PDF: plan against result.")
    private boolean lesson;

    @Option(names = "--without", paramLabel = "P", description = "Lesson: the picture without the long time.")
    private @Nullable Path without;

    @Option(names = "--wish", paramLabel = "F.json", description = "Lesson: what wish printed with --json.")
    private @Nullable Path wish;

    @Option(names = "--settings", paramLabel = "F.json", description = "Lesson: what settings printed with --json.")
    private @Nullable Path settings;

    @Option(names = "--when", paramLabel = "F.json", description = "Lesson: what when printed with --json.")
    private @Nullable Path when;

    @Option(names = "--measure", paramLabel = "F.json", description = "Lesson: what measure printed with --json.")
    private @Nullable Path measure;

    @Option(names = "--stack", paramLabel = "F.json", description = "Lesson: what stack printed with --json.")
    private @Nullable Path stack;

    @Option(names = "--hide", description = "Lesson: leave the answers open, for a class.")
    private boolean hide;

    boolean certificate() {
        return edition != null;
    }

    boolean any() {
        return edition != null || contact || strip || lesson;
    }

    JsonObject write(List<Path> inputs, String size, NoteOptions notes, Pages pages) throws IOException {
        int asked = (edition != null ? 1 : 0) + (contact ? 1 : 0) + (strip ? 1 : 0) + (lesson ? 1 : 0);
        if (asked != 1) {
            throw new UsageException("-o: a PDF is one of --edition, --contact, --strip and --lesson; say which");
        }
        if (contact) {
            return pages.contact(inputs, notes.title());
        }
        if (inputs.size() > 1) {
            throw new UsageException("INPUT: only a contact sheet takes several pictures; name one");
        }
        Path input = inputs.get(0);
        if (strip) {
            return pages.strip(input, finish(), notes.title());
        }
        if (lesson) {
            return pages.lesson(input, Optional.ofNullable(without), plans(), notes.title(), hide);
        }
        if (size.isEmpty() || paper.isEmpty()) {
            throw new UsageException("--edition: say the size of the print (--size 60x40) and its paper (--paper)");
        }
        Path register = edition == null ? input : edition;
        return pages.certificate(
                new Edition(register),
                new Edition.Print(input, notes.title(), of, number, size, paper),
                notes.creator());
    }

    /** The documents given, by the schema that each must have. */
    private Map<String, Path> plans() {
        Map<String, Path> plans = new LinkedHashMap<>();
        put(plans, "wish/1", wish);
        put(plans, "when/1", when);
        put(plans, "measure/1", measure);
        put(plans, "settings/1", settings);
        put(plans, "stack/1", stack);
        return plans;
    }

    private static void put(Map<String, Path> plans, String schema, @Nullable Path file) {
        if (file != null) {
            plans.put(schema, file);
        }
    }

    private Finish finish() throws IOException {
        if (with == null) {
            return Finish.UNTOUCHED;
        }
        try {
            return FinishFile.read(SurveyRequest.document(with));
        } catch (RequestException e) {
            throw new UnreadableInputException(with, String.valueOf(e.getMessage()));
        }
    }
}
