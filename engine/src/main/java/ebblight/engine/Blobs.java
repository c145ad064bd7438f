package ebblight.engine;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Named byte arrays that travel beside a request and its answer: frames in, pictures out. A request names a blob by its
 * key. Several frames of one clip are stored under {@code NAME/0}, {@code NAME/1}, …. Arrays are held, not copied.
 */
public final class Blobs {

    private final Map<String, byte[]> byName = new LinkedHashMap<>();

    /** Stores {@code bytes} under {@code name}, replacing what was there. */
    public void put(String name, byte[] bytes) {
        byName.put(name, bytes);
    }

    /** The bytes stored under {@code name}. */
    public Optional<byte[]> get(String name) {
        return Optional.ofNullable(byName.get(name));
    }
}
