package ebblight.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The program in a process of its own, to be stopped, killed or set beside others. */
final class Child {

    private Child() {}

    /**
     * What starts it.
     *
     * @param options of the Java machine
     * @param command as it would be typed
     */
    static List<String> line(List<String> options, List<String> command) {
        List<String> line = new ArrayList<>();
        line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        line.addAll(options);
        line.addAll(List.of("-cp", System.getProperty("java.class.path"), Main.class.getName()));
        line.addAll(command);
        return line;
    }

    /** Starts it with a data folder of its own; what it says goes to {@code said}. */
    static Process start(Path data, Path said, List<String> command) throws IOException {
        return new ProcessBuilder(line(List.of("-XX:TieredStopAtLevel=1", "-Debblight.data=" + data), command))
                .redirectErrorStream(true)
                .redirectOutput(said.toFile())
                .start();
    }
}
