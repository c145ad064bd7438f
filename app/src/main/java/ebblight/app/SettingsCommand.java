package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.app.ask.Words;
import ebblight.app.kit.DataFolder;
import ebblight.app.kit.KitStore;
import ebblight.app.kit.MeasuredFilter;
import ebblight.engine.Engine;
import ebblight.engine.RequestException;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code settings}: ranked ways to reach a shutter time. */
@Command(
        name = "settings",
        mixinStandardHelpOptions = true,
        description = {
            "Finds filters, aperture and ISO that reach a shutter time in the light there is.",
            "Neutral-density filters are not solar filters: never look at the sun through an optical finder."
        })
final class SettingsCommand implements Callable<Integer> {

    private static final String CAMERA_SCHEMA = "camera/1";

    @Mixin
    private final JsonOption json = new JsonOption();

    @Option(
            names = "--meter",
            required = true,
            paramLabel = "READING",
            description = "What the meter says without filters: \"f/16 1/100 ISO100\".")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private String meter;

    @Option(names = "--time", paramLabel = "T", description = "Shutter time wanted: 0.8s, 30s, 4m.")
    private @Nullable String time;

    @Option(names = "--from", paramLabel = "T", description = "Shortest shutter time wanted, with --to.")
    private @Nullable String from;

    @Option(names = "--to", paramLabel = "T", description = "Longest shutter time wanted, with --from.")
    private @Nullable String to;

    @Option(
            names = "--filters",
            split = ",",
            paramLabel = "F",
            description = "Filters in the bag: stops (6), factors (nd1000), densities (3.0d), pol, vnd2-8.")
    private List<String> filters = List.of();

    @Option(
            names = "--measured",
            split = ",",
            paramLabel = "F=STOPS",
            description = "Measured stops of a filter of the bag: 10=10.3.")
    private List<String> measured = List.of();

    @Option(names = "--kit", description = "Take the filters of the bag from the kit, with what was measured of them.")
    private boolean kit;

    @Option(
            names = "--fading",
            paramLabel = "R",
            description = "Stops a minute by which the light fades; negative when it grows.")
    private double fading;

    @Option(names = "--reciprocity", paramLabel = "P", description = "Film: corrected = metered^P above 1 s.")
    private double reciprocity = 1;

    @Option(
            names = "--max-stack",
            paramLabel = "N",
            description = "Most neutral filters on the lens at once (default: ${DEFAULT-VALUE}).")
    private int maxStack = 2;

    @Option(
            names = "--bias",
            paramLabel = "STOPS",
            description = "How much brighter than the meter says; negative for darker.")
    private double bias;

    @Option(names = "--nearest", paramLabel = "M", description = "Nearest distance that must be sharp, in metres.")
    private @Nullable Double nearest;

    @Option(
            names = "--farthest",
            paramLabel = "M",
            description = "Farthest distance that must be sharp, in metres; infinity when left out.")
    private @Nullable Double farthest;

    @Option(names = "--camera", paramLabel = "FILE", description = "Limits of camera and lens (camera/1).")
    private @Nullable Path camera;

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        JsonObject request = new JsonObject();
        request.put("schema", "settings/1");
        request.put("meter", meter);
        putIfGiven(request, "time", time);
        putIfGiven(request, "from", from);
        putIfGiven(request, "to", to);
        JsonArray bag = new JsonArray(filters);
        JsonArray stops = new JsonArray();
        if (kit) {
            MeasuredFilter.bag(new KitStore(DataFolder.data()).read(), bag, stops);
        }
        stops.addAll(measured); // what is typed comes last and holds
        request.put("filters", bag);
        request.put("measured", stops);
        request.put("fadingStopsPerMinute", fading);
        request.put("reciprocityExponent", reciprocity);
        request.put("maxStack", maxStack);
        request.put("biasStops", bias);
        putIfGiven(request, "nearestMetres", nearest);
        putIfGiven(request, "farthestMetres", farthest);
        if (farthest != null && nearest == null) {
            throw new UsageException("--farthest: give --nearest too");
        }
        if (camera != null) {
            request.put("camera", cameraOf(camera));
        }
        JsonObject answer = ask(request);
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            print(answer, printer);
        }
        return answer.getArray("choices").isEmpty() ? ExitCode.NO_ANSWER : ExitCode.DONE;
    }

    private static JsonObject cameraOf(Path file) throws IOException {
        JsonObject document = SurveyRequest.document(file);
        String schema = document.getString("schema", CAMERA_SCHEMA);
        if (!schema.equals(CAMERA_SCHEMA)) {
            throw new UnreadableInputException(file, "is a " + schema + ", expected a " + CAMERA_SCHEMA);
        }
        return document;
    }

    private JsonObject ask(JsonObject request) throws IOException {
        try {
            return Asked.of(new Engine(), request, printer.work());
        } catch (RequestException e) {
            // what the file of the camera holds is input, not usage
            if (camera != null && String.valueOf(e.getMessage()).startsWith("camera")) {
                throw new UnreadableInputException(camera, String.valueOf(e.getMessage()));
            }
            throw e;
        }
    }

    private static void putIfGiven(JsonObject request, String name, @Nullable Object value) {
        if (value != null) {
            request.put(name, value);
        }
    }

    static void print(JsonObject answer, Printer printer) {
        printer.line("light  EV100 %.1f", answer.getDouble("exposureValue100"));
        JsonArray choices = answer.getArray("choices");
        if (!choices.isEmpty()) {
            printer.line("");
            printer.line(
                    printer.strong("    filters     aperture  ISO    shutter          open       off (± filters)"));
        }
        for (int i = 0; i < choices.size(); i++) {
            JsonObject choice = choices.getObject(i);
            List<String> names =
                    choice.getArray("filters").stream().map(String::valueOf).toList();
            printer.line(
                    "%2d  %-10s  f/%-6s  %-5s  %-15s  %-9s  %+.2f (± %.2f) stop",
                    i + 1,
                    names.isEmpty() ? "none" : String.join(" + ", names),
                    plain(choice.getDouble("fNumber")),
                    plain(choice.getDouble("iso")),
                    choice.getString("dial"),
                    Words.time(choice.getDouble("correctedSeconds")),
                    choice.getDouble("errorStops"),
                    choice.getDouble("errorRangeStops"));
            if (choice.isNumber("focusMetres")) {
                printer.line(printer.faint("    focus at " + Words.number(choice.getDouble("focusMetres"), 2)
                        + " m: sharp from " + Words.number(choice.getDouble("nearMetres"), 2) + " m to "
                        + (choice.isNumber("farMetres")
                                ? Words.number(choice.getDouble("farMetres"), 1) + " m"
                                : "infinity")));
            }
            for (Object caution : choice.getArray("cautions")) {
                printer.line(printer.faint("    " + caution));
            }
        }
        JsonArray ways = answer.getArray("ways");
        if (choices.isEmpty()) {
            printer.line("");
            printer.line(printer.strong("nothing in the bag reaches it; ways out:"));
        }
        for (int i = 0; i < ways.size(); i++) {
            printer.line(" - " + ways.getObject(i).getString("text"));
        }
        printer.line("");
        printer.line(printer.faint("Neutral-density filters are not solar filters: never look at the sun through an"
                + " optical finder."));
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString(Math.round(value)) : Double.toString(value);
    }
}
