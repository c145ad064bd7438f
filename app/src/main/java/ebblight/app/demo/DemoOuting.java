package ebblight.app.demo;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.core.motion.Kind;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.demo.View;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.GreyPng;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.OutputFile;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** The folder of the demo: what the photographer brings home, and in {@code true} what the scene truly did. */
public final class DemoOuting {

    /** Width of the true exposures in pixels, that of a survey. */
    public static final int TRUE_WIDTH = 480;

    /** Instants a second of a true exposure: the mean of the sea is within 1 % of one with six times as many. */
    private static final double TRUE_FRAMES_PER_SECOND = 8;

    private static final String STROKES = "strokes.json";

    private final Path folder;
    private final Coast coast;
    private final View view;
    private final Kind[] kinds;

    private DemoOuting(Path folder, Coast coast, View view, Kind[] kinds) {
        this.folder = folder;
        this.coast = coast;
        this.view = view;
        this.kinds = kinds;
    }

    /** Writes clip, burst, meter reading, kit, card and the true map of kinds. */
    public static DemoOuting write(Path folder, Work work) throws IOException {
        Files.createDirectories(folder.resolve("true"));
        Coast coast = Coast.evening();
        work.progress(0, "building the coast");
        Evening evening = new Evening(coast, work);
        View view = coast.view(TRUE_WIDTH, work);
        Kind[] kinds = view.kinds(work);
        DemoOuting outing = new DemoOuting(folder, coast, view, kinds);
        evening.write(outing.clip(), outing.burst(), work);
        CardFolder.write(folder.resolve("card"), coast, work);
        text(folder.resolve("meter.txt"), meter());
        text(
                folder.resolve("kit.json"),
                JsonWriter.indent("  ").string().value(kit()).done());
        try (InputStream drawn = DemoOuting.class.getResourceAsStream(STROKES)) {
            OutputFile.write(
                    outing.strokes(), Objects.requireNonNull(drawn, STROKES).readAllBytes());
        }
        outing.writeKinds();
        return outing;
    }

    private static void text(Path file, String text) throws IOException {
        OutputFile.write(file, (text + "\n").getBytes(StandardCharsets.UTF_8));
    }

    private static JsonObject kit() {
        JsonObject camera = new JsonObject();
        camera.put("name", "invented, 36 × 24 mm");
        camera.put("sensorWidthMillimetres", 36);
        camera.put("sensorHeightMillimetres", 24);
        camera.put("lowestIso", 100);
        camera.put("highestIso", 6400);
        camera.put("baseIso", 100);
        camera.put("timedLimitSeconds", 32);
        camera.put("inBag", true);
        JsonObject lens = new JsonObject();
        lens.put("name", "invented, 28 mm");
        lens.put("focalMillimetres", 28);
        lens.put("widestFNumber", 2.8);
        lens.put("narrowestFNumber", 22);
        lens.put("inBag", true);
        JsonArray filters = new JsonArray();
        for (String stops : bag()) {
            JsonObject filter = new JsonObject();
            filter.put("name", stops + " stops");
            filter.put("takes", stops);
            filter.put("inBag", true);
            filters.add(filter);
        }
        JsonObject kit = new JsonObject();
        kit.put("schema", "kit/1");
        kit.put("cameras", new JsonArray(List.of(camera)));
        kit.put("lenses", new JsonArray(List.of(lens)));
        kit.put("filters", filters);
        return kit;
    }

    private void writeKinds() throws IOException {
        byte[] map = new byte[kinds.length];
        JsonArray words = new JsonArray();
        for (Kind kind : Kind.values()) {
            words.add(kind.word());
        }
        List<Kind> order = List.of(Kind.values());
        for (int p = 0; p < map.length; p++) {
            map[p] = (byte) order.indexOf(kinds[p]);
        }
        GreyPng.write(folder.resolve("true/kinds.png"), map, view.width(), view.height());
        JsonObject truth = new JsonObject();
        truth.put("schema", "demo-truth/1");
        truth.put("kindsFile", "kinds.png");
        truth.put("kinds", words);
        truth.put("width", view.width());
        View.Drift drift = view.meanDrift(kinds);
        JsonArray pixels = new JsonArray();
        pixels.add(drift.right());
        pixels.add(drift.down());
        truth.put("driftPixelsPerSecond", pixels);
        truth.put("fadingStopsPerMinute", coast.fadingStopsPerMinute());
        text(
                folder.resolve("true/truth.json"),
                JsonWriter.indent("  ").string().value(truth).done());
    }

    /** True exposures that all open with the clip, written as JPEG. */
    public List<TrueExposure> expose(List<Double> seconds, Work work) throws IOException {
        List<TrueExposure> exposures = new ArrayList<>();
        work.progress(0.5, "exposing the truth");
        List<RgbPicture> pictures = view.exposures(0, seconds, TRUE_FRAMES_PER_SECOND, work);
        for (int i = 0; i < pictures.size(); i++) {
            double time = seconds.get(i);
            Path file = folder.resolve("true/" + name(time) + ".jpg");
            PictureFacts facts = PictureFacts.of(
                    FrameFacts.none(), OptionalDouble.of(time), 1, List.of(), Coast.NAME + ", invented: true exposure");
            JpegWriter.write(file, CodedPicture.srgb(pictures.get(i), work), facts);
            exposures.add(new TrueExposure(time, pictures.get(i), file));
        }
        return exposures;
    }

    /** A time as part of a file name: 2s, 12.5s. */
    public static String name(double seconds) {
        return seconds == Math.rint(seconds) ? Math.round(seconds) + "s" : String.format(Locale.ROOT, "%.1fs", seconds);
    }

    public Path clip() {
        return folder.resolve("clip.mp4");
    }

    /** The lines that the photographer drew along posts, rock, grass, water and sky. */
    public Path strokes() {
        return folder.resolve(STROKES);
    }

    public Path burst() {
        return folder.resolve("burst");
    }

    /** What the meter said without a filter, before the clip. */
    public static String meter() {
        return Evening.meter();
    }

    /** The filters of the bag, stops as engraved. */
    public static List<String> bag() {
        return Evening.bag();
    }

    /** True fading in stops a minute. */
    public double fadingStopsPerMinute() {
        return coast.fadingStopsPerMinute();
    }

    /** True mean drift of the clouds in pixels a second of a picture of {@code width}. */
    public View.Drift drift(int width) {
        View.Drift drift = view.meanDrift(kinds);
        double scale = (double) width / view.width();
        return new View.Drift(drift.right() * scale, drift.down() * scale);
    }

    /** How every pixel truly moves, at {@link #TRUE_WIDTH}. */
    public List<Kind> kinds() {
        return List.of(kinds);
    }

    /** Every file and folder at the top of the outing. */
    public List<String> listed() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.sorted().map(Path::toString).toList();
        }
    }
}
