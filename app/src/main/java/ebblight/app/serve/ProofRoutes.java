package ebblight.app.serve;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.after.FinishDraft;
import ebblight.app.after.ProofDocument;
import ebblight.app.cache.DiskCache;
import ebblight.app.cache.Stamps;
import ebblight.app.outing.OutingFolder;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import ebblight.imaging.OutputFile;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.print.PrinterProfile;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Proofs on the page: profiles that lie in the outing, one that is brought in, a picture as a printer will show it. */
final class ProofRoutes {

    private static final int ASKED = 0;
    private static final String FOLDER = "profiles";
    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} ._()+-]{0,119}\\.ic[cm]");

    private final OutingFolder folder;
    private final AfterDesk desk;
    private final Jobs jobs;

    ProofRoutes(OutingFolder folder, AfterDesk desk, Jobs jobs) {
        this.folder = folder;
        this.desk = desk;
        this.jobs = jobs;
    }

    void add(Javalin javalin) {
        javalin.get("/api/after/profiles", this::profiles);
        javalin.post("/api/after/profiles", this::take);
        javalin.post("/api/after/proof", this::proof);
    }

    private void profiles(Context context) throws IOException {
        JsonArray rows = new JsonArray();
        for (Path place : List.of(folder.root(), folder.root().resolve(FOLDER))) {
            if (Files.isDirectory(place)) {
                try (Stream<Path> list = Files.list(place)) {
                    for (Path file :
                            list.filter(ProofRoutes::isProfile).sorted().toList()) {
                        add(rows, file);
                    }
                }
            }
        }
        JsonObject answer = new JsonObject();
        answer.put("profiles", rows);
        Replies.json(context, answer);
    }

    private static boolean isProfile(Path file) {
        return Files.isRegularFile(file)
                && String.valueOf(file.getFileName()).toLowerCase(Locale.ROOT).matches(".*\\.ic[cm]");
    }

    private void add(JsonArray rows, Path file) throws IOException {
        try {
            JsonObject row = new JsonObject();
            row.put("path", folder.relative(file));
            row.put("name", ProofDocument.printer(file).name());
            rows.add(row);
        } catch (UnreadableInputException e) {
            // a file that only has the name of a profile is offered to nobody
        }
    }

    /** Takes a profile from the page into the outing, unless it is none. */
    private void take(Context context) throws IOException {
        String name = String.valueOf(context.queryParam("name"));
        if (!NAME.matcher(name.toLowerCase(Locale.ROOT)).matches()) {
            throw new RequestException("name", "must end in .icc or .icm and be letters, digits, spaces and dots");
        }
        byte[] bytes = context.bodyAsBytes();
        PrinterProfile printer = PrinterProfile.read(bytes)
                .orElseThrow(() -> new RequestException(name, "is no ICC profile of a printer or a screen"));
        Path file = Files.createDirectories(folder.root().resolve(FOLDER)).resolve(name);
        OutputFile.write(file, bytes);
        JsonObject row = new JsonObject();
        row.put("path", folder.relative(file));
        row.put("name", printer.name());
        Replies.json(context, row);
    }

    private void proof(Context context) throws Exception {
        JsonObject request = Replies.body(context);
        Replies.job(context, jobs.begin("proof " + JsonWriter.string(request), ASKED, job -> drawn(request, job)));
    }

    private JsonObject drawn(JsonObject request, Work work) throws IOException {
        Path profile = folder.inside(request.getString("profile", ""));
        String word = request.getString("intent", "relative");
        PrinterProfile.Intent intent = PrinterProfile.Intent.of(word)
                .orElseThrow(() -> new RequestException(
                        "intent", "must be perceptual, relative, saturation or absolute, was \"" + word + "\""));
        FinishDraft.Drawn drawn = desk.ready(request, work).proof(ProofDocument.printer(profile), intent, work);
        String name = DiskCache.name(".jpg", "proof", desk.stamp(request), Stamps.of(profile), intent.word());
        return desk.kept(name, drawn);
    }
}
