package ebblight.imaging;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/** Programs that are not ours, asked what they see; a test that needs an absent one is skipped and says so. */
public final class OtherProgram {

    public static final String PYTHON = "/usr/bin/python3";

    private OtherProgram() {}

    /** Skips the test where {@code command} does not run. */
    public static void need(String what, String... command) {
        Assumptions.assumeTrue(runs(command), what + " is not installed");
    }

    static void needNumpy() {
        need("NumPy for " + PYTHON, PYTHON, "-c", "import numpy");
    }

    private static boolean runs(String... command) {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor() == 0;
        } catch (IOException e) {
            return false;
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    /** What the program prints on both streams. */
    public static String output(String... command) throws Exception {
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        return text;
    }

    /** Runs a Python program that must succeed. */
    public static void python(Path folder, String program, Path... arguments) throws Exception {
        Path script = folder.resolve("program.py");
        Files.writeString(script, program, StandardCharsets.UTF_8);
        String[] command = new String[2 + arguments.length];
        command[0] = PYTHON;
        command[1] = script.toString();
        for (int i = 0; i < arguments.length; i++) {
            command[2 + i] = arguments[i].toString();
        }
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        if (process.waitFor() != 0) {
            throw new AssertionError(text);
        }
    }

    /** A folder of real pictures and clips beside the checkout; skips the test where there is none. */
    public static Path shared(String folder) {
        Path path = Path.of(System.getProperty("ebblight.shared", "../shared"), "data", folder);
        Assumptions.assumeTrue(Files.exists(path), "no real files at " + path);
        return path;
    }
}
