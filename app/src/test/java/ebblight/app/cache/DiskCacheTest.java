package ebblight.app.cache;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class DiskCacheTest {

    @TempDir
    Path folder;

    private static Clock at(long second) {
        return Clock.fixed(Instant.ofEpochSecond(second), ZoneOffset.UTC);
    }

    @Test
    void neverGrowsBeyondItsBoundAndKeepsWhatWasUsedLast() throws IOException {
        for (int i = 0; i < 20; i++) {
            DiskCache cache = new DiskCache(folder, 10_000, at(i));
            cache.put("file" + i, new byte[1000]);
            assertThat(cache.get("file0")).isPresent();
        }
        DiskCache cache = new DiskCache(folder, 10_000, at(30));
        try (Stream<Path> list = Files.list(folder)) {
            long bytes = list.mapToLong(p -> p.toFile().length()).sum();
            assertThat(bytes).isLessThanOrEqualTo(10_000);
        }
        assertThat(cache.get("file0")).as("used at every step").isPresent();
        assertThat(cache.get("file1")).as("used once, long ago").isEmpty();
        assertThat(cache.get("file19")).isPresent();
    }

    @Test
    void namesDifferWhenAnyPartDiffers() {
        assertThat(DiskCache.name("", "ab", "c")).isNotEqualTo(DiskCache.name("", "a", "bc"));
    }
}
