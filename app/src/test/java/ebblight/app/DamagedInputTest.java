package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import ebblight.app.pocket.BuiltPage;
import ebblight.core.numeric.Work;
import ebblight.imaging.ClipWriter;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.GreyPng;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.TiffWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Files as a bad card or a bad copy leaves them, through the commands: an answer or one sentence, never a fault of ours,
 * never a hang, the input as it was, and nothing half written. The profile {@code damage} runs many more cases.
 */
class DamagedInputTest {

    /** For each kind of file; a thousand and more with {@code -Pdamage}. */
    private static final int CASES = Integer.getInteger("ebblight.damage.cases", 40);

    /** Longer than any case takes on a busy machine; a reader that goes in circles takes for ever. */
    private static final int SECONDS = 90;

    private static final PictureFacts NO_FACTS = new PictureFacts(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            1,
            List.of(),
            "test frame");

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    /** What is damaged, and the command it is given to; DAMAGED and OUT stand for paths. */
    enum Kind {
        JPEG_IN_A_STACK("f102.jpg", false, "stack", "FOLDER", "-o", "OUT/o.tif"),
        JPEG_MEASURED("f102.jpg", false, "measure", "FOLDER", "--json"),
        JPEG_ON_A_CARD("f102.jpg", false, "sort", "FOLDER", "--json"),
        JPEG_FINISHED("f102.jpg", false, "finish", "DAMAGED", "-o", "OUT/o.jpg"),
        TIFF("p.tif", false, "write", "DAMAGED", "-o", "OUT/o.jpg"),
        PNG("p.png", false, "repair", "DAMAGED", "--level", "0.5", "-o", "OUT/o.tif"),
        CLIP("c.mp4", false, "preview", "DAMAGED", "--time", "8s", "-o", "OUT/o.jpg"),
        STROKES("strokes.json", true, "measure", "FOLDER", "--strokes", "DAMAGED", "--json"),
        PARTS("parts.json", true, "blend", "FOLDER", "--parts", "DAMAGED", "-o", "OUT/o.tif"),
        FINISH("finish.json", true, "finish", "FOLDER/f101.jpg", "--with", "DAMAGED", "-o", "OUT/o.tif"),
        REPAIR("repair.json", true, "repair", "FOLDER/f101.jpg", "--with", "DAMAGED", "-o", "OUT/o.tif"),
        RECORD("sea.tif.json", true, "again", "DAMAGED", "-o", "OUT/o.tif"),
        WISHES("wishes.json", true, "when", "DAMAGED", "--json"),
        WEATHER("weather.csv", true, "when", "FOLDER/wishes.json", "--json"),
        TIDE_TABLE(
                "table.csv",
                true,
                "tide",
                "--table",
                "DAMAGED",
                "--from",
                "2027-01-01T00:00Z",
                "--to",
                "2027-01-02T00:00Z",
                "--json"),
        CAMERA(
                "camera.json",
                true,
                "settings",
                "--meter",
                "f/8 1/60 ISO100",
                "--time",
                "8s",
                "--filters",
                "6",
                "--camera",
                "DAMAGED"),
        OUTING("outing.json", true, "pocket", "FOLDER", "-o", "OUT/page"),
        LOG("log.json", true, "outing", "join", "OUT/outing", "DAMAGED");

        private final String file;
        private final boolean text;

        @SuppressWarnings("ImmutableEnumChecker") // List.of
        private final List<String> command;

        Kind(String file, boolean text, String... command) {
            this.file = file;
            this.text = text;
            this.command = List.of(command);
        }
    }

    @ParameterizedTest
    @EnumSource
    void isAnsweredOrRefusedInOneSentence(Kind kind) throws Exception {
        if (kind == Kind.OUTING) {
            BuiltPage.assume();
        }
        Path whole = Files.createDirectory(folder.resolve("whole"));
        writeWhole(whole, kind);
        byte[] bytes = Files.readAllBytes(whole.resolve(kind.file));
        ExecutorService aside = Executors.newSingleThreadExecutor();
        int answered = 0;
        try {
            for (int k = 0; k < CASES; k++) {
                byte[] damaged = k == 0
                        ? bytes
                        : Damage.to(
                                bytes,
                                kind.text,
                                new SplittableRandom(1_000_003L * kind.name().hashCode() + k));
                if (one(kind, k, whole, damaged, aside)) {
                    answered++;
                }
            }
        } finally {
            aside.shutdownNow();
        }
        // The undamaged file is among them, so at least one is answered: the command line above is right.
        assertThat(answered).isPositive();
    }

    /** Whether there was an answer. */
    private boolean one(Kind kind, int k, Path whole, byte[] damaged, ExecutorService aside) throws Exception {
        Path input = whole.resolve(kind.file);
        Files.write(input, damaged);
        Path out = Files.createDirectory(folder.resolve("out" + k));
        if (kind == Kind.LOG) {
            Files.copy(
                    whole.resolve("outing.json"),
                    Files.createDirectory(out.resolve("outing")).resolve("outing.json"));
        }
        long before = count(out);
        String[] command = kind.command.stream()
                .map(w -> w.replace("DAMAGED", input.toString())
                        .replace("FOLDER", whole.toString())
                        .replace("OUT/", out + "/"))
                .toArray(String[]::new);
        String which = kind + " case " + k + ": "
                + HexFormat.of().formatHex(Arrays.copyOf(damaged, Math.min(64, damaged.length)));
        Said said = within(() -> Said.by(command), aside, which);
        assertThat(said.code()).as(which + "\n" + said.err()).isIn(0, 2, 3, 4);
        assertThat(said.err()).as(which).doesNotContain("\tat ").doesNotContain("our fault");
        if (said.code() != 0 && said.code() != 4) {
            if (said.out().isEmpty()) { // "again" tells on standard output what is missing
                assertThat(said.err().lines().filter(l -> l.startsWith("ebblight: ")))
                        .as(which)
                        .hasSize(1);
            }
            assertThat(count(out)).as(which + " left something").isEqualTo(before);
        }
        assertThat(Files.readAllBytes(input)).as(which).isEqualTo(damaged);
        try (Stream<Path> all = Files.walk(out)) {
            assertThat(all.filter(p -> p.toString().endsWith(".part")))
                    .as(which)
                    .isEmpty();
        }
        try (Stream<Path> all = Files.walk(out)) {
            for (Path path : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
        return said.code() == 0;
    }

    private static Said within(Callable<Said> command, ExecutorService aside, String which) throws Exception {
        try {
            return aside.submit(command).get(SECONDS, TimeUnit.SECONDS);
        } catch (TimeoutException e) {
            return fail(which + " does not come to an end", e);
        } catch (ExecutionException e) {
            return fail(which + " breaks", e);
        }
    }

    private static long count(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).count();
        }
    }

    private static void writeWhole(Path to, Kind kind) throws Exception {
        for (int k = 0; k < 4; k++) {
            TestFrames.write(to, k, 64, 48);
        }
        switch (kind) {
            case TIFF ->
                TiffWriter.write(
                        to.resolve("p.tif"),
                        CodedPicture.srgb8(64, 48, TestFrames.codes(1, 64, 48)),
                        NO_FACTS,
                        Work.alone());
            case PNG -> GreyPng.writeColour(to.resolve("p.png"), TestFrames.codes(1, 64, 48), 64, 48);
            case CLIP -> {
                try (ClipWriter clip = ClipWriter.begin(to.resolve("c.mp4"), 64, 48, 10)) {
                    for (int k = 0; k < 20; k++) {
                        clip.add(TestFrames.codes(k, 64, 48));
                    }
                    clip.commit();
                }
            }
            case RECORD ->
                Said.by("stack", to.toString(), "-o", to.resolve("sea.tif").toString());
            default -> writeTexts(to);
        }
    }

    private static void writeTexts(Path to) throws Exception {
        write(
                to,
                "strokes.json",
                "{'schema':'strokes/1','strokes':[{'kind':'flowing','points':[[0.1,0.7],[0.4,0.8]]}]}");
        write(
                to,
                "parts.json",
                "{'schema':'blend/1','parts':[{'region':'rest','time':'2s'},{'region':'fixed-1','frame':'lull'}]}");
        write(
                to,
                "finish.json",
                "{'schema':'finish/1','level':1,'crop':{'paper':[40,30],'border':3,'at':[0.5,0.5]},'exposure':0.5,"
                        + "'blackAndWhite':{'filter':{'hueDegrees':30,'factor':2.5}},'tone':{'shadows':0.5,'lights':-0.3},"
                        + "'grade':3,'toning':{'shadows':{'hueDegrees':70,'chroma':6}}}");
        write(
                to,
                "repair.json",
                "{'schema':'repair/1','cast':{'red':0.95,'green':1,'blue':1.04},'vignetting':0.4,"
                        + "'dust':[{'x':0.31,'y':0.12,'radius':0.04}],'level':-0.6}");
        write(
                to,
                "wishes.json",
                "{'schema':'wishes/1','at':'48.65,-2.03','zone':'Europe/Paris','from':'2027-01-01','to':'2027-01-03',"
                        + "'station':'nearest','minMinutes':20,'sunAltitude':[-6,5],'tideMetres':[0,14],"
                        + "'view':{'azimuth':270,'focalMillimetres':24},'weather':'weather.csv','windMetresPerSecond':[0,20],"
                        + "'guard':{'feetMetres':8,'wayBackMetres':7.5,'marginMetres':0.5},'exposure':{'time':'2m'}}");
        write(
                to,
                "weather.csv",
                """
                time,windMetresPerSecond,cloudCover
                2027-01-01T00:00Z,4,0.5
                2027-01-01T06:00Z,,0.2
                2027-01-03T00:00Z,7.5,1
                """);
        write(
                to,
                "table.csv",
                """
                time,heightMetres,kind
                2026-12-31T22:10Z,1.4,low
                2027-01-01T04:20Z,11.2,high
                2027-01-01T10:40Z,1.9,low
                2027-01-01T16:50Z,10.8,high
                2027-01-01T23:05Z,2.1,low
                2027-01-02T05:15Z,10.9,high
                """);
        write(to, "camera.json", "{'widestFNumber':2.8,'narrowestFNumber':22,'highestIso':6400,'darkFrame':true}");
        Path outing = to.resolveSibling("outing");
        Said made = Said.by(
                "outing",
                "new",
                outing.toString(),
                "--at",
                "48.65,-2.03",
                "--name",
                "Test rocks",
                "--zone",
                "Europe/Paris",
                "--from",
                "2027-01-10",
                "--to",
                "2027-01-12",
                "--station",
                "nearest",
                "--hour",
                "sunAltitude=-6,5",
                "--time",
                "2m");
        assertThat(made.code()).as(made.err()).isZero();
        Files.copy(outing.resolve("outing.json"), to.resolve("outing.json"));
        Files.copy(outing.resolve("outing.json"), to.resolve("log.json"));
    }

    private static void write(Path folder, String name, String text) throws IOException {
        Files.writeString(folder.resolve(name), text.replace('\'', '"'), StandardCharsets.UTF_8);
    }
}
