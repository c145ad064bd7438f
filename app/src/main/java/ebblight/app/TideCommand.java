package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.UsageException;
import ebblight.app.plan.StationCatalogue;
import ebblight.app.plan.TideTableFile;
import ebblight.app.plan.Zone;
import ebblight.core.exposure.ShutterTime;
import ebblight.core.sky.Place;
import ebblight.engine.Engine;
import ebblight.engine.RequestException;
import ebblight.engine.StationFields;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code tide}: heights, high and low waters. */
@Command(
        name = "tide",
        mixinStandardHelpOptions = true,
        description = {
            "Tells how high the water stands, from a station's harmonic constants or from a typed table.",
            "Predictions leave out weather, surge and waves. Not for navigation: follow the official tables, local"
                    + " warnings and signs. Never turn your back on the sea."
        })
final class TideCommand implements Callable<Integer> {

    @Mixin
    private final JsonOption json = new JsonOption();

    @ArgGroup(multiplicity = "1")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Source source;

    /** Where the water comes from. */
    static final class Source {

        @Option(names = "--station", paramLabel = "ID|NAME", description = "A tide station, by id or by name.")
        private @Nullable String station;

        @Option(names = "--near", paramLabel = "LAT,LON", description = "The station nearest to a place.")
        private @Nullable String near;

        @Option(
                names = "--table",
                paramLabel = "FILE",
                description = "High and low waters: a CSV file with the heading time,heightMetres,kind.")
        private @Nullable Path table;
    }

    @Option(names = "--from", required = true, paramLabel = "I", description = "Start: 2027-01-10T00:00Z.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private String from;

    @Option(names = "--to", required = true, paramLabel = "I", description = "End.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private String to;

    @Option(names = "--every", paramLabel = "T", description = "Heights every so often: 10m.")
    private @Nullable String every;

    @Option(
            names = "--between",
            split = ",",
            paramLabel = "LOW,HIGH",
            description = "When does the water stand between these heights in metres?")
    private double @Nullable [] between;

    @Option(names = "--direction", paramLabel = "D", description = "With --between: rising, falling or any.")
    private String direction = "any";

    @Option(names = "--zone", paramLabel = "Z", description = "Time zone of what is printed (default: UTC).")
    private String zone = "UTC";

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws IOException {
        Zone local = Zone.of("--zone", zone);
        JsonObject request = new JsonObject();
        request.put("schema", "tide/1");
        request.put("from", from);
        request.put("to", to);
        if (every != null) {
            request.put("everySeconds", seconds(every));
        }
        if (between != null) {
            JsonObject wanted = new JsonObject();
            JsonArray metres = new JsonArray();
            for (double each : between) {
                metres.add(each);
            }
            wanted.put("metres", metres);
            wanted.put("direction", direction);
            request.put("between", wanted);
        }
        JsonArray nearest = putWater(request);
        JsonObject answer = ask(request);
        if (!nearest.isEmpty()) {
            answer.put("nearest", nearest);
        }
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            new TideReport(answer, local, printer).print();
        }
        return ExitCode.DONE;
    }

    private JsonObject ask(JsonObject request) throws IOException {
        try {
            return Asked.of(new Engine(), request, printer.work());
        } catch (RequestException e) {
            // what a table holds is input, not usage
            if (source.table != null && String.valueOf(e.getMessage()).startsWith("table")) {
                throw new UnreadableInputException(source.table, String.valueOf(e.getMessage()));
            }
            throw e;
        }
    }

    /** Puts station or table into the request; tells the nearest stations when a place was given. */
    private JsonArray putWater(JsonObject request) throws IOException {
        JsonArray nearest = new JsonArray();
        if (source.table != null) {
            request.put("table", TideTableFile.read(source.table));
            return nearest;
        }
        StationCatalogue catalogue = StationCatalogue.read();
        if (source.station != null) {
            request.put(
                    "station",
                    StationFields.write(
                            catalogue.one("--station", source.station).station()));
            return nearest;
        }
        Place place = place("--near", String.valueOf(source.near));
        List<StationCatalogue.Entry> found = catalogue.nearest(place, 5);
        for (StationCatalogue.Entry entry : found) {
            JsonObject one = new JsonObject();
            one.put("id", entry.id());
            one.put("name", entry.name());
            one.put("country", entry.country());
            one.put("distanceKilometres", place.kilometresTo(entry.place()));
            nearest.add(one);
        }
        request.put("at", source.near);
        request.put("station", StationFields.write(found.get(0).station()));
        return nearest;
    }

    static Place place(String option, String typed) {
        try {
            return Place.parse(typed);
        } catch (IllegalArgumentException e) {
            throw new UsageException(option + ": " + e.getMessage());
        }
    }

    private static double seconds(String typed) {
        try {
            return ShutterTime.parse(typed);
        } catch (IllegalArgumentException e) {
            throw new UsageException("--every: " + e.getMessage());
        }
    }
}
