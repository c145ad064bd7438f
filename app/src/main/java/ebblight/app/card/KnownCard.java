package ebblight.app.card;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.cache.DiskCache;
import ebblight.app.cache.Stamps;
import ebblight.app.kit.DataFolder;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;

/**
 * What sorting a card found, kept in the disposable cache as long as no picture on the card changes its name, size or
 * time. A cache that cannot be read or written costs time, never the answer.
 */
public final class KnownCard {

    private static final long MOST_BYTES = 1L << 30;

    private final Optional<DiskCache> cache;
    private final String name;

    private KnownCard(Optional<DiskCache> cache, String name) {
        this.cache = cache;
        this.name = name;
    }

    /** The place for the answer about a card as it is now. */
    public static KnownCard of(Path card) throws IOException {
        Optional<DiskCache> cache;
        try {
            cache = Optional.of(new DiskCache(DataFolder.cache().resolve("cards"), MOST_BYTES, Clock.systemUTC()));
        } catch (IOException e) {
            cache = Optional.empty();
        }
        String name =
                DiskCache.name(".json", "card", SortDocument.VERSION, card.toString(), Stamps.of(card.toRealPath()));
        return new KnownCard(cache, name);
    }

    /** What was found before; empty when the card changed since, or was never sorted. */
    public Optional<JsonObject> found() {
        try {
            Optional<byte[]> bytes = cache.isPresent() ? cache.get().get(name) : Optional.empty();
            return bytes.map(b -> Asked.parse(new String(b, StandardCharsets.UTF_8)));
        } catch (IOException | IllegalArgumentException | IllegalStateException e) {
            return Optional.empty();
        }
    }

    /** Keeps what was found now. */
    public void keep(JsonObject document) {
        try {
            if (cache.isPresent()) {
                cache.get().put(name, JsonWriter.string(document).getBytes(StandardCharsets.UTF_8));
            }
        } catch (IOException e) {
            // a full or closed disk: the card is measured again the next time
        }
    }
}
