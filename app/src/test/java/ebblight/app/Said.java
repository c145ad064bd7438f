package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** What a command said when it was run in this process, by the same way in as from a shell. */
record Said(int code, String out, String err) {

    static Said by(String... command) {
        PrintStream out = System.out;
        PrintStream err = System.err;
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        ByteArrayOutputStream complained = new ByteArrayOutputStream();
        System.setOut(new PrintStream(said, true, StandardCharsets.UTF_8));
        System.setErr(new PrintStream(complained, true, StandardCharsets.UTF_8));
        try {
            int code = EbblightCommand.run(command);
            return new Said(code, said.toString(StandardCharsets.UTF_8), complained.toString(StandardCharsets.UTF_8));
        } finally {
            System.setOut(out);
            System.setErr(err);
        }
    }

    /** One clear sentence and no answer: {@code words} are in it, nothing of the program's inside is. */
    void refuses(int expected, String... words) {
        assertThat(code).as(err).isEqualTo(expected);
        assertThat(out).isEmpty();
        String sentence = err.lines()
                .filter(l -> l.startsWith("ebblight: "))
                .reduce((a, b) -> a + "\n" + b)
                .orElse("");
        assertThat(sentence).as(err).isNotEmpty().doesNotContain("\n").doesNotContain("Exception");
        assertThat(err).doesNotContain("\tat ").doesNotContain("our fault");
        for (String word : words) {
            assertThat(sentence).contains(word);
        }
    }
}
