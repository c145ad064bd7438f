package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.memory.Remembered;
import ebblight.app.outing.LogJoin;
import ebblight.app.outing.OutingFile;
import ebblight.app.outing.OutingFolder;
import ebblight.app.plan.Zone;
import ebblight.core.outing.LogMatch;
import ebblight.core.outing.LogMatch.Taken;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.Inputs;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code outing join}: the phone's log into the outing, and its entries beside their frames. */
@Command(
        name = "join",
        mixinStandardHelpOptions = true,
        description = {
            "Takes the log that the phone page saved into the outing; joining a file twice adds nothing.",
            "With frames, tells which frame each entry is: a camera's clock may be off by any constant."
        })
final class OutingJoinCommand implements Callable<Integer> {

    @Parameters(index = "0", paramLabel = "FOLDER", description = "The outing.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path folder;

    @Parameters(index = "1", paramLabel = "LOG.json", description = "What the phone saved or sent.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path file;

    @Option(names = "--frames", paramLabel = "CARD", description = "Folder of the frames taken; only read.")
    private @Nullable Path card;

    @Mixin
    private final JsonOption json = new JsonOption();

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws IOException {
        JsonObject brought = SurveyRequest.document(file);
        if (!"outing/1".equals(brought.getString("schema"))) {
            throw new UnreadableInputException(file, "is no log of the phone page: schema must be outing/1");
        }
        OutingFile outing = new OutingFile(OutingFolder.open(folder), folder);
        JsonObject answer = new JsonObject();
        answer.put("schema", "outing-join/1");
        answer.put("file", outing.path().toString());
        JsonObject written = outing.change(document -> {
            answer.put("added", LogJoin.into(document, brought));
            answer.put("entries", document.getArray("log").size());
            answer.put("cameras", card == null ? new JsonArray() : matched(document, card));
        });
        Remembered.tried(() -> Remembered.of(folder.toRealPath(), written).logged())
                .ifPresent(printer::note);
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            print(answer);
        }
        return ExitCode.DONE;
    }

    /** Frames of one camera, whose clock is off by one constant. */
    private record Shot(Path file, Taken taken) {}

    /** Writes each entry's frame into the log and says what was found for every camera. */
    private static JsonArray matched(JsonObject outing, Path card) throws IOException {
        List<JsonObject> log = Asked.rows(outing.getArray("log"));
        List<Taken> entries = new ArrayList<>();
        for (JsonObject entry : log) {
            entries.add(new Taken(seconds(entry), entry.getDouble("openSeconds", 0)));
        }
        JsonArray cameras = new JsonArray();
        for (Map.Entry<String, List<Shot>> each :
                shots(card, Zone.of("zone", outing.getString("zone", "UTC"))).entrySet()) {
            List<Shot> shots = each.getValue();
            Optional<LogMatch.Matched> found =
                    LogMatch.of(entries, shots.stream().map(Shot::taken).toList());
            JsonObject camera = new JsonObject();
            camera.put("camera", each.getKey());
            camera.put("frames", shots.size());
            camera.put(
                    "clockOffsetSeconds",
                    found.map(m -> (double) Math.round(m.clockSeconds())).orElse(null));
            camera.put("ambiguous", found.map(LogMatch.Matched::ambiguous).orElse(false));
            JsonArray pairs = new JsonArray();
            found.ifPresent(m -> m.pairs().forEach(pair -> {
                String name = String.valueOf(shots.get(pair.frame()).file().getFileName());
                log.get(pair.entry()).put("file", name);
                JsonObject one = new JsonObject();
                one.put("entry", log.get(pair.entry()).getInt("frame", pair.entry() + 1));
                one.put("file", name);
                pairs.add(one);
            }));
            camera.put("matched", pairs);
            cameras.add(camera);
        }
        return cameras;
    }

    private static double seconds(JsonObject entry) {
        try {
            return Instant.parse(entry.getString("openedAt", "")).toEpochMilli() / 1000.0;
        } catch (DateTimeException e) {
            return Double.NaN;
        }
    }

    private static Map<String, List<Shot>> shots(Path card, Zone zone) throws IOException {
        Map<String, List<Shot>> byCamera = new LinkedHashMap<>();
        for (Path frame : Inputs.files(List.of(card))) {
            FrameFacts facts = FrameFacts.of(frame);
            if (facts.taken().isPresent()) {
                LocalDateTime taken = facts.taken().get();
                Instant at = facts.offset().map(o -> taken.toInstant(o)).orElseGet(() -> zone.instant(taken));
                byCamera.computeIfAbsent(facts.camera().orElse("camera"), c -> new ArrayList<>())
                        .add(new Shot(
                                frame,
                                new Taken(
                                        at.toEpochMilli() / 1000.0,
                                        facts.exposureSeconds().orElse(0))));
            }
        }
        return byCamera;
    }

    private void print(JsonObject answer) {
        printer.line(
                "%s  %d entries, %d of them new",
                answer.getString("file"), answer.getInt("entries"), answer.getInt("added"));
        for (JsonObject camera : Asked.rows(answer.getArray("cameras"))) {
            if (!camera.isNumber("clockOffsetSeconds")) {
                printer.line("%s  no frame is like an entry of the log", camera.getString("camera"));
                continue;
            }
            double clock = camera.getDouble("clockOffsetSeconds");
            printer.line(
                    "%s  clock %.0f s %s the phone's%s",
                    camera.getString("camera"),
                    Math.abs(clock),
                    clock < 0 ? "behind" : "ahead of",
                    camera.getBoolean("ambiguous") ? "; another offset would do as well: check it" : "");
            for (JsonObject pair : Asked.rows(camera.getArray("matched"))) {
                printer.line("  entry %d  %s", pair.getInt("entry"), pair.getString("file"));
            }
        }
    }
}
