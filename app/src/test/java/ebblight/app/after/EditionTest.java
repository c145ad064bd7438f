package ebblight.app.after;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.UsageException;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Numbers of an edition are given once. */
class EditionTest {

    private static final int EACH = 12;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private Path print = Path.of("");
    private Path register = Path.of("");

    @BeforeEach
    void writeAPrint() throws Exception {
        print = Files.writeString(folder.resolve("print.tif"), "abc");
        register = folder.resolve("edition.json");
    }

    private Edition.Print wanted(int of, int number, String paper) {
        return new Edition.Print(print, "The Door", of, number, "60 × 40 cm", paper);
    }

    /** SHA-256 of "abc" is the first example of FIPS 180-4 (in its published test vectors). */
    @Test
    void theChecksumIsThatOfTheFile() throws Exception {
        JsonObject entry = new Edition(register).enter(wanted(3, 0, "cotton"));
        assertThat(entry.getString("sha256"))
                .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
        assertThat(entry.getInt("number")).isEqualTo(1);
        assertThat(entry.getInt("of")).isEqualTo(3);
    }

    @Test
    void numbersRunOutAndAreNeverGivenTwice() throws Exception {
        Edition edition = new Edition(register);
        edition.enter(wanted(3, 2, "cotton"));
        assertThat(edition.enter(wanted(3, 0, "cotton")).getInt("number")).isEqualTo(1);
        assertThat(edition.enter(wanted(0, 0, "cotton")).getInt("number")).isEqualTo(3);
        assertThatThrownBy(() -> edition.enter(wanted(0, 0, "cotton")))
                .isInstanceOf(UsageException.class)
                .hasMessageContaining("all 3 numbers");
        assertThatThrownBy(() -> edition.enter(wanted(0, 2, "silk")))
                .isInstanceOf(UsageException.class)
                .hasMessageContaining("given already");
        // the same print again is a lost certificate
        assertThat(edition.enter(wanted(0, 2, "cotton")).getInt("given")).isEqualTo(3);
        assertThatThrownBy(() -> edition.enter(wanted(12, 0, "cotton"))).hasMessageContaining("cannot change");
        assertThatThrownBy(() -> edition.enter(wanted(0, 7, "cotton"))).hasMessageContaining("between 1 and 3");
    }

    @Test
    void aDamagedRegisterIsNamedAndKept() throws Exception {
        for (String text : List.of("", "[]", "{\"schema\":\"edition/1\",\"of\":3}", "{\"schema\":\"outing/1\"}")) {
            Files.writeString(register, text, StandardCharsets.UTF_8);
            assertThatThrownBy(() -> new Edition(register).enter(wanted(3, 0, "cotton")))
                    .isInstanceOf(UnreadableInputException.class)
                    .hasMessageContaining("edition.json");
            assertThat(Files.readString(register)).isEqualTo(text);
        }
        Files.delete(register);
        assertThatThrownBy(() -> new Edition(register).enter(wanted(0, 0, "cotton")))
                .hasMessageContaining("--of");
        assertThatThrownBy(() -> new Edition(folder.resolve("gone/edition.json")).enter(wanted(3, 0, "c")))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("does not exist");
    }

    /** Two programs that know nothing of each other, {@value EACH} numbers each, at the same time. */
    @Test
    void twoProcessesGetDifferentNumbers() throws Exception {
        List<Process> both = new ArrayList<>();
        for (int k = 0; k < 2; k++) {
            both.add(new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-cp",
                            System.getProperty("java.class.path"),
                            EditionTest.class.getName(),
                            register.toString(),
                            print.toString())
                    .redirectErrorStream(true)
                    .start());
        }
        List<Integer> given = new ArrayList<>();
        for (Process each : both) {
            String said = new String(each.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(each.waitFor()).as(said).isZero();
            said.lines().map(Integer::valueOf).forEach(given::add);
        }
        assertThat(given)
                .containsExactlyInAnyOrderElementsOf(
                        IntStream.rangeClosed(1, 2 * EACH).boxed().toList());
        assertThat(Asked.rows(Asked.parse(Files.readString(register)).getArray("prints")))
                .extracting(p -> p.getInt("number"))
                .containsExactlyInAnyOrderElementsOf(
                        IntStream.rangeClosed(1, 2 * EACH).boxed().toList());
    }

    /** The other process: enters prints and says which numbers it got. */
    public static void main(String[] arguments) throws IOException {
        Edition edition = new Edition(Path.of(arguments[0]));
        for (int i = 0; i < EACH; i++) {
            JsonObject entry = edition.enter(
                    new Edition.Print(Path.of(arguments[1]), "The Door", 2 * EACH, 0, "60 × 40 cm", "cotton"));
            System.out.println(entry.getInt("number"));
        }
    }
}
