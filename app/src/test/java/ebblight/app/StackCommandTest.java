package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What {@code stack --json} prints. */
class StackCommandTest {

    private static final int WIDTH = 240;
    private static final int HEIGHT = 160;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    /** Frame {@code k} of a view: rock below, above it a pattern that is another one in every frame. */
    private void write(int k, double shift) throws Exception {
        byte[] codes = new byte[3 * WIDTH * HEIGHT];
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            int y = p / WIDTH;
            double x = p % WIDTH + shift;
            double phase = y < HEIGHT / 2 ? 7 * k : 0;
            double value = 0.5
                    + 0.2 * Math.sin(x / 3.3 + Math.sin(y / 7.0) + phase)
                    + 0.2 * Math.sin(y / 4.1 + Math.sin(x / 9.0) + 2 * phase);
            for (int c = 0; c < 3; c++) {
                codes[3 * p + c] = (byte) Math.round(255 * value);
            }
        }
        PictureFacts facts = new PictureFacts(
                OptionalDouble.of(0.5),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.of(LocalDateTime.of(2027, 1, 14, 17, 15, k)),
                1,
                List.of(),
                "test frame");
        JpegWriter.write(folder.resolve("f" + k + ".jpg"), CodedPicture.srgb8(WIDTH, HEIGHT, codes), facts);
    }

    private JsonObject stack(String... more) {
        String[] command = new String[5 + more.length];
        command[0] = "stack";
        command[1] = folder.toString();
        command[2] = "-o";
        command[3] = folder.resolve("out.tif").toString();
        command[4] = "--json";
        System.arraycopy(more, 0, command, 5, more.length);
        PrintStream before = System.out;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        System.setOut(new PrintStream(bytes, true, StandardCharsets.UTF_8));
        try {
            assertThat(EbblightCommand.run(command)).isZero();
        } finally {
            System.setOut(before);
        }
        return Asked.parse(bytes.toString(StandardCharsets.UTF_8));
    }

    @Test
    void everyFieldOfTheContractIsThere() throws Exception {
        for (int k = 0; k < 3; k++) {
            write(k, 0);
        }
        Files.writeString(folder.resolve("text.jpg"), "no picture");
        JsonObject answer = stack();
        assertThat(answer.getString("schema")).isEqualTo("stack/1");
        assertThat(answer.getInt("frames")).isEqualTo(3);
        assertThat(answer.getDouble("seconds")).isCloseTo(1.5, within(1e-9));
        assertThat(answer.getObject("gaps").getInt("count")).isEqualTo(2);
        assertThat(answer.getObject("gaps").getDouble("seconds")).isCloseTo(1, within(1e-6));
        assertThat(Path.of(answer.getString("file"))).isRegularFile();
        assertThat(answer.getArray("skipped")).hasSize(1);
        assertThat(answer.getArray("skipped").getObject(0).getString("file")).endsWith("text.jpg");
    }

    @Test
    void alignmentSaysWhenItCouldNotTellWhatStandsStill() throws Exception {
        for (int k = 0; k < 3; k++) {
            write(k, 0);
        }
        assertThat(stack("--align").getArray("warnings").getString(0))
                .contains("whole picture")
                .contains("5 frames");
    }

    /** Above, every frame is another; held by the whole picture they do not fit, by the rock they do. */
    @Test
    void alignmentHoldsWhatStandsStill() throws Exception {
        double[] shifts = {0, 0.7, -0.6, 0.9, -1.1, 0.4, -0.3, 0.8};
        for (int k = 0; k < shifts.length; k++) {
            write(k, shifts[k]);
        }
        JsonObject answer = stack("--align");
        assertThat(answer.getInt("frames")).isEqualTo(shifts.length);
        assertThat(answer.getArray("warnings")).isEmpty();
    }
}
