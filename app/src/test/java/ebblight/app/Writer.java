package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Every way in which a command writes, with what it is written from; for tests that take the ground from under it. */
enum Writer {
    STACK("o.tif", "stack", "FRAMES", "-o", "OUT/o.tif"),
    PREVIEW("o.jpg", "preview", "FRAMES", "--time", "30s", "-o", "OUT/o.jpg"),
    REGIONS("o.png", "measure", "FRAMES", "--regions-out", "OUT/o.png"),
    BLEND("o.tif", "blend", "FRAMES", "--parts", "SHARED/parts.json", "-o", "OUT/o.tif"),
    REPAIR("o.tif", "repair", "FRAMES/f101.jpg", "--level", "0.5", "-o", "OUT/o.tif"),
    FINISH("o.jpg", "finish", "FRAMES/f101.jpg", "--with", "SHARED/finish.json", "-o", "OUT/o.jpg"),
    PRINT("o.tif", "write", "FRAMES/f101.jpg", "--size", "21x14", "--ppi", "150", "-o", "OUT/o.tif"),
    CONTACT("o.pdf", "write", "--contact", "FRAMES", "-o", "OUT/o.pdf"),
    SLATE("o.png", "slate", "-o", "OUT/o.png"),
    DAY("o.pdf", "when", "SHARED/wishes.json", "--sheet", "OUT/o.pdf"),
    PHONE("outing.pocket.json", "pocket", "SHARED/outing", "-o", "OUT"),
    LOG("outing.json", "outing", "join", "OUT", "SHARED/log.json"),
    RATINGS("f101.xmp", "sort", "OUT", "--rate", "--learn");

    private static final String OLD = "{\"schema\":\"of the day before\"}";

    /** What it writes first of all. */
    final String file;

    @SuppressWarnings("ImmutableEnumChecker") // List.of
    private final List<String> command;

    Writer(String file, String... command) {
        this.file = file;
        this.command = List.of(command);
    }

    /** What all of them read. */
    static void writeInputs(Path shared) throws Exception {
        Path frames = Files.createDirectory(shared.resolve("frames"));
        for (int k = 0; k < 6; k++) {
            TestFrames.write(frames, k, 600, 400);
        }
        text(shared, "parts.json", "{'schema':'blend/1','parts':[{'region':'rest','time':'2s'}]}");
        text(shared, "finish.json", "{'schema':'finish/1','level':1,'exposure':0.5,'blackAndWhite':{}}");
        text(
                shared,
                "wishes.json",
                "{'schema':'wishes/1','at':'48.65,-2.03','from':'2027-01-01','to':'2027-01-08','sunAltitude':[-6,5]}");
        Said made = Said.by(
                "outing",
                "new",
                shared.resolve("outing").toString(),
                "--at",
                "48.65,-2.03",
                "--name",
                "Test rocks",
                "--from",
                "2027-01-10",
                "--to",
                "2027-01-12",
                "--hour",
                "sunAltitude=-6,5");
        assertThat(made.code()).as(made.err()).isZero();
        text(
                shared,
                "log.json",
                "{'schema':'outing/1','revision':0,'log':[{'openedAt':'2027-01-11T17:00:00Z','openSeconds':30}]}");
    }

    /** Puts something of the same name into the folder {@code out}, and what is read there. */
    void prepare(Path shared, Path out) throws IOException {
        switch (this) {
            case LOG -> Files.copy(shared.resolve("outing/outing.json"), out.resolve("outing.json"));
            case RATINGS -> {
                for (int k = 0; k < 6; k++) {
                    String frame = "f" + (100 + k) + ".jpg";
                    Files.copy(shared.resolve("frames").resolve(frame), out.resolve(frame));
                }
            }
            default -> Files.writeString(out.resolve(file), OLD);
        }
    }

    /** The command as it would be typed. */
    List<String> line(Path shared, Path out) {
        return command.stream()
                .map(word -> word.replace("FRAMES", shared.resolve("frames").toString())
                        .replace("SHARED", shared.toString())
                        .replace("OUT", out.toString()))
                .toList();
    }

    /** Files in place by their names within {@code out}; what is hidden is no result. */
    static Map<Path, Long> sizes(Path out) throws IOException {
        Map<Path, Long> sizes = new TreeMap<>();
        try (Stream<Path> all = Files.walk(out)) {
            for (Path file : all.filter(Files::isRegularFile).toList()) {
                if (!file.getFileName().toString().startsWith(".")) {
                    sizes.put(out.relativize(file), Files.size(file));
                }
            }
        }
        return sizes;
    }

    private static void text(Path shared, String name, String text) throws IOException {
        Files.writeString(shared.resolve(name), text.replace('\'', '"'));
    }
}
