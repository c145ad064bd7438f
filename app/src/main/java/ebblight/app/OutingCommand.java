package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.UsageException;
import ebblight.app.outing.OutingFile;
import ebblight.app.outing.OutingFolder;
import ebblight.app.plan.PlannedOuting;
import ebblight.app.plan.StationCatalogue;
import ebblight.app.plan.WishesFile;
import ebblight.app.plan.Zone;
import ebblight.core.sky.Place;
import ebblight.engine.RequestException;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code outing}: the folder of an outing. */
@Command(
        name = "outing",
        mixinStandardHelpOptions = true,
        description = "Begins an outing: a folder of plain files that outlives the program.",
        subcommands = {OutingCommand.New.class, OutingViewCommand.class, OutingJoinCommand.class})
final class OutingCommand implements Callable<Integer> {

    @Override
    public Integer call() {
        throw new UsageException("outing: say what to do, such as outing new FOLDER");
    }

    /** {@code outing new}: writes outing.json. */
    @Command(
            name = "new",
            mixinStandardHelpOptions = true,
            description = {
                "Writes outing.json into a folder: place, zone, station, and what is wished of the hour.",
                "The folder is made when it is not there; an outing that is there already is left as it is."
            })
    static final class New implements Callable<Integer> {

        @Mixin
        private final JsonOption json = new JsonOption();

        @Mixin
        private final ViewOptions view = new ViewOptions();

        @Mixin
        private final PlanOptions plan = new PlanOptions();

        @Parameters(paramLabel = "FOLDER", description = "Where the outing is kept.")
        @SuppressWarnings("NullAway.Init") // set by picocli
        private Path folder;

        @Option(names = "--name", paramLabel = "N", description = "Name of the place, for people.")
        private @Nullable String name;

        @Option(names = "--at", paramLabel = "LAT,LON", description = "The place, such as 48.65,-2.03.")
        private @Nullable String at;

        @Option(names = "--zone", paramLabel = "Z", description = "Time zone (default: that of this machine).")
        private @Nullable String zone;

        @Option(names = "--station", paramLabel = "ID|NAME", description = "Tide station, or nearest.")
        private @Nullable String station;

        @Option(names = "--wishes", paramLabel = "WISHES.json", description = "Takes place and wishes from a file.")
        private @Nullable Path wishes;

        private final Printer printer = new Printer();

        @Override
        public Integer call() throws IOException {
            JsonObject wished = wished();
            if (!Files.exists(folder)) {
                Files.createDirectories(folder);
            }
            if (Files.exists(folder.resolve("outing.json"))) {
                throw new UnreadableInputException(
                        folder.resolve("outing.json"), "is there already; open it, or choose another folder");
            }
            OutingFile file = new OutingFile(OutingFolder.open(folder), folder);
            JsonObject document = file.read();
            PlannedOuting.put(document, wished);
            JsonObject written = file.write(document);
            JsonObject answer = new JsonObject();
            answer.put("schema", "outing-new/1");
            answer.put("file", file.path().toString());
            answer.put("outing", written);
            if (json.wanted()) {
                printer.line(Asked.print(answer));
            } else {
                printer.line("written: " + file.path());
                printer.line("Open it by ./ebblight open " + folder);
            }
            return ExitCode.DONE;
        }

        /** The wishes of the file, with what was typed beside it. */
        private JsonObject wished() throws IOException {
            JsonObject wished = new JsonObject();
            if (wishes != null) {
                wished.putAll(SurveyRequest.document(wishes));
                try {
                    JsonObject request = WishesFile.request(wished, wishes.resolveSibling(""));
                    // an outing is moved about: it keeps the rows of files, not their names
                    for (String file : List.of("table", "weather")) {
                        if (wished.has(file)) {
                            wished.put(file, request.get(file));
                        }
                    }
                    WishesFile.check(wished, printer.work());
                } catch (RequestException e) {
                    throw new UnreadableInputException(wishes, String.valueOf(e.getMessage()));
                }
            }
            if (at != null) {
                Place place = TideCommand.place("--at", at);
                wished.put("at", place.latitudeDegrees() + "," + place.longitudeDegrees());
            }
            if (zone != null) {
                wished.put("zone", Zone.of("--zone", zone).name());
            }
            if (name != null) {
                wished.put("name", name);
            }
            if (station != null) {
                wished.put("station", station(station));
                wished.remove("table");
            }
            view.put(wished);
            plan.put(wished);
            try {
                WishesFile.check(wished, printer.work());
            } catch (RequestException e) {
                throw new UsageException("--hour or an option beside it: " + e.getMessage());
            }
            return wished;
        }

        private static String station(String typed) throws IOException {
            return typed.equals("nearest")
                    ? typed
                    : StationCatalogue.read().one("--station", typed).id();
        }
    }
}
