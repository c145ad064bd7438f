package ebblight.app.serve;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.after.FinishDraft;
import ebblight.app.after.PartShares;
import ebblight.app.ask.Asked;
import ebblight.app.ask.UsageException;
import ebblight.app.cache.DiskCache;
import ebblight.app.cache.Stamps;
import ebblight.app.card.FilterDocument;
import ebblight.app.card.LearnedFilters;
import ebblight.app.card.Ratings;
import ebblight.app.card.SlatedCard;
import ebblight.app.card.SortDocument;
import ebblight.app.kit.KitStore;
import ebblight.app.kit.MeasuredFilter;
import ebblight.app.made.GivenFiles;
import ebblight.app.made.PictureMaker;
import ebblight.app.memory.Calibrations;
import ebblight.app.memory.Remembered;
import ebblight.app.outing.OutingFolder;
import ebblight.core.exposure.FilterCheck;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import ebblight.imaging.card.CardSorter;
import ebblight.imaging.card.FilterFrames;
import ebblight.imaging.card.SortedCard;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** What the pages of After ask for: the same classes answer that stand behind the commands. */
final class AfterDesk {

    private final OutingFolder folder;
    private final Desk desk;
    private final DiskCache cache;
    private final KitStore kit;
    private final Path data;
    private final PictureMaker maker;
    private @Nullable FinishDraft draft;
    private String drafted = "";

    AfterDesk(OutingFolder folder, Desk desk, DiskCache cache, KitStore kit, Path data, PictureMaker maker) {
        this.data = data;
        this.folder = folder;
        this.desk = desk;
        this.cache = cache;
        this.kit = kit;
        this.maker = maker;
    }

    OutingFolder folder() {
        return folder;
    }

    private Path path(JsonObject request, String field) throws IOException {
        String typed = request.getString(field, "");
        if (typed.isEmpty()) {
            throw new RequestException(field, "is missing: name a file or folder of the outing");
        }
        return folder.inside(typed);
    }

    String sortKey(JsonObject request) throws IOException {
        Path card = path(request, "folder");
        StringBuilder stamp = new StringBuilder();
        if (card.equals(folder.root())) {
            for (Path file : folder.loose()) {
                stamp.append(Stamps.of(file));
            }
        } else {
            stamp.append(Stamps.of(card));
        }
        return DiskCache.name(".json", "sort", SortDocument.VERSION, stamp.toString());
    }

    Optional<JsonObject> known(String key) throws IOException {
        return cache.get(key).map(bytes -> Asked.parse(new String(bytes, StandardCharsets.UTF_8)));
    }

    private void keep(String key, JsonObject answer) throws IOException {
        cache.put(key, JsonWriter.string(answer).getBytes(StandardCharsets.UTF_8));
    }

    /**
     * A card as {@code sort/1}, its folder named as it lies in the outing; of the outing's own folder the frames that lie
     * loose in it.
     */
    JsonObject sort(JsonObject request, String key, Work work) throws IOException {
        Path card = path(request, "folder");
        SortedCard sorted = sorted(card, work);
        SlatedCard slated = new SlatedCard(sorted);
        JsonObject answer = SortDocument.of(card, sorted, slated);
        answer.put("filters", new LearnedFilters(sorted, slated, work).documents());
        inOuting(answer);
        Optional<Remembered> outing = Remembered.around(folder.root());
        if (outing.isPresent()) {
            Remembered.tried(() -> outing.get().sorted(card, answer, work));
        }
        answer.put("folder", card.equals(folder.root()) ? "." : folder.relative(card));
        keep(key, answer);
        return answer;
    }

    private SortedCard sorted(Path card, Work work) throws IOException {
        return card.equals(folder.root())
                ? CardSorter.sortLoose(card, folder::isLoose, work)
                : CardSorter.sort(card, work);
    }

    /** Keeps in the kit what the slates of a card taught of its filters. */
    JsonObject learn(JsonObject request, Work work) throws IOException {
        SortedCard sorted = sorted(path(request, "folder"), work);
        LearnedFilters filters = new LearnedFilters(sorted, new SlatedCard(sorted), work);
        JsonObject answer = new JsonObject();
        answer.put("kept", filters.keep(kit, data));
        return answer;
    }

    /** Writes marks of what is kept beside the pictures. */
    JsonObject rate(JsonObject request) throws IOException {
        JsonArray marks = request.getArray("frames", new JsonArray());
        JsonArray written = new JsonArray();
        for (JsonObject mark : Asked.rows(marks)) {
            written.add(Ratings.keep(path(mark, "path"), mark.getBoolean("best", false)));
        }
        JsonObject answer = new JsonObject();
        answer.put("sidecars", written);
        return inOuting(answer);
    }

    /** What was made before of the same request, where it still lies as it was left. */
    Optional<JsonObject> made(String key) throws IOException {
        Optional<JsonObject> known = known(key);
        if (known.isEmpty()) {
            return Optional.empty();
        }
        Path file = folder.root().resolve(known.get().getString("file", ""));
        return Files.isRegularFile(file) && Stamps.of(file).equals(known.get().getString("stamp"))
                ? known
                : Optional.empty();
    }

    /** Makes a picture as the command line would, with its record beside it. */
    JsonObject make(MakeRequest request, String key, Work work) throws IOException {
        Path output = request.freeOutput();
        Path scratch = Files.createTempDirectory("ebblight-page");
        JsonObject answer;
        try {
            answer = inOuting(maker.make(request.arguments(output, scratch), work));
        } finally {
            GivenFiles.remove(scratch);
        }
        if (answer.has("file")) {
            answer.put("stamp", Stamps.of(output));
            keep(key, answer);
        }
        return answer;
    }

    /** An answer with files named by their path in the outing. */
    private JsonObject inOuting(JsonObject answer) {
        String root = folder.root() + folder.root().getFileSystem().getSeparator();
        for (Map.Entry<String, Object> each : answer.entrySet()) {
            Object value = each.getValue();
            if (value instanceof String text && text.startsWith(root)) {
                each.setValue(folder.relative(Path.of(text)));
            } else if (value instanceof JsonObject object) {
                inOuting(object);
            } else if (value instanceof JsonArray array) {
                array.stream()
                        .filter(JsonObject.class::isInstance)
                        .map(JsonObject.class::cast)
                        .forEach(this::inOuting);
            }
        }
        return answer;
    }

    /** The draft of a picture that was opened before. */
    Optional<FinishDraft> opened(JsonObject request) throws IOException {
        String stamp = Stamps.of(path(request, "path"));
        synchronized (this) {
            return stamp.equals(drafted) ? Optional.ofNullable(draft) : Optional.empty();
        }
    }

    /** The draft of a picture, opened where it was not yet. */
    FinishDraft ready(JsonObject request, Work work) throws IOException {
        Optional<FinishDraft> known = opened(request);
        return known.isPresent() ? known.get() : open(request, work);
    }

    /** What tells the picture of a request from what it was before. */
    String stamp(JsonObject request) throws IOException {
        return Stamps.of(path(request, "path"));
    }

    FinishDraft open(JsonObject request, Work work) throws IOException {
        Path file = path(request, "path");
        String stamp = Stamps.of(file);
        FinishDraft read = FinishDraft.read(file, work);
        synchronized (this) {
            draft = read;
            drafted = stamp;
        }
        return read;
    }

    /** The request for the parts of the view, when a draft names the frames that tell them. */
    private static Optional<JsonObject> partsRequest(JsonObject request) {
        if (!request.has("frames")) {
            return Optional.empty();
        }
        JsonObject asked = new JsonObject();
        asked.put("schema", "parts/1");
        asked.put("frames", request.get("frames"));
        if (request.has("strokes")) {
            asked.put("strokes", request.get("strokes"));
        }
        return Optional.of(asked);
    }

    /** Whether the parts that a draft needs are known, or none are needed. */
    boolean partsKnown(JsonObject request) throws IOException {
        Optional<JsonObject> asked = partsRequest(request);
        return asked.isEmpty() || desk.known(desk.key(asked.get())) != null;
    }

    /** Looks at the frames of a draft for its parts; only the one worker of the jobs calls this. */
    void findParts(JsonObject request, Job job) throws IOException {
        Optional<JsonObject> asked = partsRequest(request);
        if (asked.isPresent()) {
            desk.answer(asked.get(), desk.key(asked.get()), job);
        }
    }

    private Optional<PartShares> parts(JsonObject request) throws IOException {
        Optional<JsonObject> asked = partsRequest(request);
        JsonObject whole = asked.isEmpty() ? null : desk.known(desk.key(asked.get()));
        if (whole == null) {
            return Optional.empty();
        }
        JsonObject answer = whole.getObject("answer");
        Optional<byte[]> map = desk.blob(whole, "regions");
        return map.isEmpty()
                ? Optional.empty()
                : Optional.of(PartShares.of(answer, answer.getInt("mapWidth"), answer.getInt("mapHeight"), map.get()));
    }

    /** A draft as the address of its picture and what is to be said of it. */
    JsonObject draw(FinishDraft of, JsonObject request, Work work) throws IOException {
        JsonObject finish = request.getObject("finish");
        if (finish == null) {
            throw new RequestException("finish", "is missing");
        }
        FinishDraft.Drawn drawn = of.draw(finish, parts(request), work);
        String name = DiskCache.name(
                ".jpg",
                "draft",
                Stamps.of(path(request, "path")),
                JsonWriter.string(finish),
                partsRequest(request).map(JsonWriter::string).orElse(""));
        return kept(name, drawn);
    }

    /** Keeps a drawn picture under a name, and answers with what is known of it and where it is. */
    JsonObject kept(String name, FinishDraft.Drawn drawn) throws IOException {
        cache.put(name, drawn.jpeg());
        JsonObject blobs = new JsonObject();
        blobs.put("picture", "/api/blobs/" + name);
        JsonObject whole = new JsonObject();
        whole.put("answer", drawn.facts());
        whole.put("blobs", blobs);
        return whole;
    }

    /** What a filter takes, by one pair; kept in the kit where a filter of it is named. */
    JsonObject filter(JsonObject request, Work work) throws IOException {
        Path without = path(request, "without");
        Path with = path(request, "with");
        work.progress(0, "reading the pair");
        FilterFrames reader = new FilterFrames();
        FilterCheck check =
                FilterCheck.of(List.of(reader.pair(without, with, Optional.empty(), OptionalDouble.empty())));
        JsonObject answer = FilterDocument.of(List.of(without, with), check, reader.warnings());
        String name = request.getString("filter", "");
        if (!name.isEmpty()) {
            JsonObject stored = kit.read();
            JsonObject row = MeasuredFilter.find(stored, name);
            String day = FilterDocument.dateOf(with);
            MeasuredFilter.put(row, check, day);
            kit.write(stored);
            Calibrations.add(data, row, check, day);
            answer.put("filter", row.getString("name"));
        }
        return inOuting(answer);
    }

    /** The message of a refusal in the page's words: it has no options. */
    static UsageException said(UsageException e) {
        return new UsageException(String.valueOf(e.getMessage())
                .replaceFirst("^-o: ", "")
                .replaceAll("--([a-z])", "$1")
                .replaceAll("(long|at)-(edge|most)", "$1 $2"));
    }
}
