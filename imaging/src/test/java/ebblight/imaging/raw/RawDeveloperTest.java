package ebblight.imaging.raw;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;

/** What goes wrong in the worker costs one file and is told; the next file is developed as if nothing had been. */
class RawDeveloperTest {

    private static final Path RAW =
            Path.of(System.getProperty("ebblight.shared", "../shared"), "data", "raw", "CRW_0101.CRW");

    private static byte[] real() throws IOException {
        Assumptions.assumeTrue(Files.exists(RAW), "no real RAW file at " + RAW);
        Assumptions.assumeTrue(LibRaw.load().isPresent(), "LibRaw is not installed (Debian: libraw-bin)");
        return Files.readAllBytes(RAW);
    }

    private static byte[] developed(RawDeveloper developer, byte[] file) throws RawException {
        ByteBuffer[] memory = new ByteBuffer[1];
        developer.develop(file, (w, h) -> memory[0] = ByteBuffer.allocate(6 * w * h));
        return memory[0].array();
    }

    @Test
    void theWorkerIsKeptFromFileToFile() throws Exception {
        byte[] file = real();
        try (RawDeveloper developer = new RawDeveloper(List.of(), 100)) {
            byte[] first = developed(developer, file);
            long worker = developer.process().orElseThrow().pid();
            assertThat(developed(developer, file)).isEqualTo(first);
            assertThat(developer.process().orElseThrow().pid()).isEqualTo(worker);
        }
    }

    @Test
    void aWorkerKilledAtItsWorkCostsThatFrameOnly() throws Exception {
        byte[] file = real();
        try (RawDeveloper developer = new RawDeveloper(List.of(), 100)) {
            byte[] whole = developed(developer, file);
            ProcessHandle worker = developer.process().orElseThrow();
            assertThatThrownBy(() -> developer.develop(file, (w, h) -> {
                        worker.destroyForcibly();
                        return ByteBuffer.allocate(6 * w * h);
                    }))
                    .isInstanceOf(RawException.class)
                    .hasMessageContaining("its worker ended with code");
            assertThat(developed(developer, file)).isEqualTo(whole);
        }
    }

    @Test
    void aWorkerKilledWhileIdleCostsNothing() throws Exception {
        byte[] file = real();
        try (RawDeveloper developer = new RawDeveloper(List.of(), 100)) {
            byte[] whole = developed(developer, file);
            ProcessHandle worker = developer.process().orElseThrow();
            worker.destroyForcibly();
            worker.onExit().get();
            assertThat(developed(developer, file)).isEqualTo(whole);
        }
    }

    @Test
    void aWorkerThatHangsIsGivenUp() throws Exception {
        byte[] file = real();
        try (RawDeveloper developer = new RawDeveloper(List.of(), 0)) {
            assertThatThrownBy(() -> developed(developer, file)).isInstanceOf(RawException.class);
        }
    }

    @Test
    void itsMemoryIsBounded() throws Exception {
        byte[] file = real();
        try (RawDeveloper developer = new RawDeveloper(List.of(), 100)) {
            developed(developer, file);
            Path limits = Path.of("/proc", developer.process().orElseThrow().pid() + "", "limits");
            Assumptions.assumeTrue(Files.exists(limits), "no Linux");
            assertThat(Files.readAllLines(limits))
                    .anySatisfy(line -> assertThat(line).matches("Max address space +5120000000 .*"));
        }
    }

    @Test
    void filesCutOffOrOfAnotherKindAreRefusedInWords() throws Exception {
        byte[] file = real();
        byte[] noise = new byte[100_000];
        new Random(1).nextBytes(noise);
        try (RawDeveloper developer = new RawDeveloper(List.of(), 100)) {
            for (byte[] bad : List.of(
                    Arrays.copyOf(file, file.length / 2), Arrays.copyOf(file, 1000), Arrays.copyOf(file, 3), noise)) {
                assertThatThrownBy(() -> developed(developer, bad))
                        .isInstanceOf(RawException.class)
                        .hasMessageMatching("(could not be developed|is damaged or cut off|says that it holds).*");
            }
        }
    }

    @Test
    void withoutLibRawTheWayToItIsTold() {
        try (RawDeveloper developer = new RawDeveloper(List.of("-D" + LibRaw.PROPERTY + "=no-such-library"), 100)) {
            assertThatThrownBy(() -> developed(developer, new byte[10]))
                    .isInstanceOf(RawException.class)
                    .hasMessageContaining("Debian: apt-get install libraw-bin")
                    .hasMessageContaining("macOS: brew install libraw")
                    .hasMessageContaining("Windows: ");
        }
    }
}
