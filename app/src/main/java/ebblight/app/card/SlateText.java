package ebblight.app.card;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.UsageException;
import ebblight.core.card.Slate;
import ebblight.core.exposure.Filter;
import ebblight.core.wish.Wish;
import java.time.DateTimeException;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/** A slate as {@code slate/1}: one short JSON document in a code. */
public final class SlateText {

    private static final String SCHEMA = "slate/1";
    private static final int LONGEST_VIEW = 40;
    private static final int MOST_FILTERS = 4;

    private SlateText() {}

    /** Writes a slate; whole seconds, so that the code stays coarse. */
    public static String of(Slate slate) {
        JsonObject text = new JsonObject();
        text.put("schema", SCHEMA);
        text.put(
                "time",
                DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
                        slate.time().atOffset(slate.offset()).truncatedTo(ChronoUnit.SECONDS)));
        if (!slate.view().isEmpty()) {
            text.put("view", slate.view());
        }
        text.put("filters", new JsonArray(slate.filters()));
        if (!slate.wish().isEmpty()) {
            text.put("wish", new JsonArray(slate.wish()));
        }
        return JsonWriter.string(text);
    }

    /** Reads a slate; empty when the text is none. */
    public static Optional<Slate> read(String text) {
        try {
            JsonObject object = JsonParser.object().from(text);
            OffsetDateTime time = OffsetDateTime.parse(object.getString("time", ""));
            return SCHEMA.equals(object.getString("schema"))
                    ? Optional.of(new Slate(
                            time.toInstant(),
                            time.getOffset(),
                            object.getString("view", ""),
                            strings(object.getArray("filters", new JsonArray())),
                            strings(object.getArray("wish", new JsonArray()))))
                    : Optional.empty();
        } catch (JsonParserException | DateTimeException e) {
            return Optional.empty();
        }
    }

    private static List<String> strings(JsonArray array) {
        return array.stream().map(String::valueOf).toList();
    }

    /** A slate from typed words. */
    public static Slate typed(OffsetDateTime time, String view, List<String> filters, List<String> wish) {
        if (view.length() > LONGEST_VIEW) {
            throw new UsageException("--view: at most " + LONGEST_VIEW + " signs fit on a slate");
        }
        if (filters.size() > MOST_FILTERS) {
            throw new UsageException("--filters: at most " + MOST_FILTERS + " filters fit on a slate");
        }
        for (String filter : filters) {
            try {
                Filter.parse(filter);
            } catch (IllegalArgumentException e) {
                throw new UsageException("--filters: " + e.getMessage());
            }
        }
        for (String each : wish) {
            try {
                Wish.parse(each);
            } catch (IllegalArgumentException e) {
                throw new UsageException("--wish: " + e.getMessage());
            }
        }
        return new Slate(time.toInstant(), time.getOffset(), view, filters, wish);
    }
}
