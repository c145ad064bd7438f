package ebblight.app.outing;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
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
import org.jspecify.annotations.Nullable;

/** A phone's log taken into the outing, and which frame of the card each of its entries is. */
public final class JoinedLog {

    private JoinedLog() {}

    /** Refuses what is no outing of the phone page. */
    public static void check(JsonObject brought, Path file) throws UnreadableInputException {
        if (!"outing/1".equals(brought.getString("schema"))) {
            throw new UnreadableInputException(file, "is no log of the phone page: schema must be outing/1");
        }
    }

    /**
     * Adds what is new to {@code outing} and names the frames of its entries.
     *
     * @param card folder of frames, which are only read; null to leave the frames alone
     * @return {@code outing-join/1}
     */
    public static JsonObject of(JsonObject outing, JsonObject brought, @Nullable Path card) throws IOException {
        JsonObject answer = new JsonObject();
        answer.put("schema", "outing-join/1");
        answer.put("added", LogJoin.into(outing, brought));
        answer.put("entries", outing.getArray("log").size());
        answer.put("cameras", card == null ? new JsonArray() : matched(outing, card));
        answer.put("warnings", warnings(outing));
        return answer;
    }

    /** Entries that no frame can be found for, because they do not say when the shutter opened. */
    private static JsonArray warnings(JsonObject outing) {
        JsonArray warnings = new JsonArray();
        List<String> timeless = new ArrayList<>();
        List<JsonObject> log = Asked.rows(outing.getArray("log"));
        for (int k = 0; k < log.size(); k++) {
            if (Double.isNaN(seconds(log.get(k)))) {
                timeless.add(String.valueOf(log.get(k).getInt("frame", k + 1)));
            }
        }
        if (!timeless.isEmpty()) {
            boolean one = timeless.size() == 1;
            warnings.add((one ? "entry " : "entries ") + String.join(", ", timeless) + " of the log "
                    + (one ? "does" : "do") + " not say when the shutter opened (openedAt, such as"
                    + " 2027-01-14T16:27:00Z): kept, but no frame can be found for " + (one ? "it" : "them"));
        }
        return warnings;
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
}
