package ebblight.app.outing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.grack.nanojson.JsonObject;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class OutingFileTest {

    @TempDir
    Path temporary;

    private OutingFile file;

    @BeforeEach
    void prepare() throws IOException {
        Path root = Files.createDirectories(temporary.resolve("outing"));
        Files.writeString(root.resolve("clip.mp4"), "x");
        file = new OutingFile(OutingFolder.open(root), temporary.resolve("elsewhere"));
    }

    @Test
    void aNewOutingHasOneViewForEveryClip() throws IOException {
        JsonObject outing = file.read();
        assertThat(outing.getInt("revision")).isZero();
        assertThat(outing.getArray("views").getObject(0).getString("frames")).isEqualTo("clip.mp4");
        assertThat(file.path()).doesNotExist();
    }

    @Test
    void everyWriteRaisesTheRevisionAndAnOlderOneIsRefusedWithTheNewerDocument() throws IOException {
        JsonObject first = file.read();
        JsonObject written = file.write(first);
        assertThat(written.getInt("revision")).isEqualTo(1);
        first.put("name", "from a stale page");
        assertThatThrownBy(() -> file.write(first))
                .isInstanceOfSatisfying(
                        StaleRevisionException.class,
                        e -> assertThat(e.newer().getInt("revision")).isEqualTo(1));
        assertThat(file.read().getString("name")).isEqualTo("outing");
    }

    @Test
    void ofManyWritersAtOnceNoneIsLostAndNoneOverwritesAnother() throws Exception {
        int writers = 8;
        AtomicInteger refused = new AtomicInteger();
        List<Future<JsonObject>> futures = new ArrayList<>();
        ExecutorService pool = Executors.newFixedThreadPool(writers);
        for (int i = 0; i < writers; i++) {
            futures.add(pool.submit(() -> {
                OutingFile mine = new OutingFile(OutingFolder.open(temporary.resolve("outing")), temporary);
                while (true) {
                    try {
                        return mine.write(mine.read());
                    } catch (StaleRevisionException e) {
                        refused.incrementAndGet();
                    }
                }
            }));
        }
        pool.shutdown();
        for (Future<JsonObject> future : futures) {
            assertThat(future.get(30, TimeUnit.SECONDS)).isNotNull();
        }
        assertThat(pool.awaitTermination(30, TimeUnit.SECONDS)).isTrue();
        assertThat(file.read().getInt("revision")).isEqualTo(writers);
    }

    @Test
    void aBrokenDocumentIsNamedAndLeftAlone() throws IOException {
        Files.writeString(file.path(), "{\"schema\":\"outing/1\",");
        assertThatThrownBy(file::read)
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("outing.json")
                .hasMessageContaining("move it away");
        assertThat(file.path()).hasContent("{\"schema\":\"outing/1\",");
    }

    @Test
    void aZoneThatIsNoneIsRefused() throws IOException {
        JsonObject outing = file.read();
        outing.put("zone", "Nowhere/Atall");
        assertThatThrownBy(() -> file.write(outing)).hasMessageContaining("zone");
    }
}
