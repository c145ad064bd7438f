package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.UsageException;
import ebblight.app.plan.TideTableFile;
import ebblight.app.plan.WeatherFile;
import ebblight.app.plan.Zone;
import ebblight.core.exposure.ShutterTime;
import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What is planned of an outing besides its place: wishes of the hour, days, shutter time, way back, files. */
final class PlanOptions {

    @Mixin
    private final HourOptions hour = new HourOptions();

    @Option(names = "--from", paramLabel = "DATE", description = "First day to search, such as 2027-01-10.")
    private @Nullable String from;

    @Option(names = "--to", paramLabel = "DATE", description = "The day after the last one to search.")
    private @Nullable String to;

    @Option(names = "--min-minutes", paramLabel = "N", description = "Shortest window (default: 15).")
    private @Nullable Integer minMinutes;

    @Option(names = "--set-up", paramLabel = "N", description = "Minutes from arriving to the first frame: 20.")
    private @Nullable Integer setUp;

    @Option(names = "--time", paramLabel = "T", description = "Shutter time wished: 2m; shortest and longest: 30s,2m.")
    private @Nullable String time;

    @Option(
            names = "--way-back",
            paramLabel = "M",
            description = "Lowest point of the way back in metres above the datum of the tide: adds by when to leave.")
    private @Nullable Double wayBack;

    @Option(names = "--margin", paramLabel = "M", description = "Between still water and that point; at least 0.5.")
    private @Nullable Double margin;

    @Option(names = "--swell", paramLabel = "M@S", description = "Height and period of the swell: 1.5@9.")
    private @Nullable String swell;

    @Option(names = "--cloud", paramLabel = "C", description = "clear, thin, average or dark where no forecast tells.")
    private @Nullable String cloud;

    @Option(names = "--skyline", paramLabel = "DEG", description = "How high the skyline stands in the view.")
    private @Nullable Double skyline;

    @Option(names = "--elevation", paramLabel = "M", description = "Height of the place above the sea.")
    private @Nullable Double elevation;

    @Option(
            names = "--table",
            paramLabel = "FILE",
            description = "High and low waters instead of a station: a CSV file, heading time,heightMetres,kind.")
    private @Nullable Path table;

    @Option(
            names = "--weather",
            paramLabel = "FILE",
            description =
                    "A forecast: a CSV file, heading time and any of cloudCover,windMetresPerSecond,swellMetres, …")
    private @Nullable Path weather;

    /** Puts what was typed into a document of wishes ({@code wishes/1}). */
    void put(JsonObject wishes) throws IOException {
        hour.put(wishes);
        if (from == null != (to == null)) {
            throw new UsageException("--from, --to: give both days or neither");
        }
        put(wishes, "from", from == null ? null : Zone.day("--from", from).toString());
        put(wishes, "to", to == null ? null : Zone.day("--to", to).toString());
        put(wishes, "minMinutes", minMinutes);
        put(wishes, "setUpMinutes", setUp);
        put(wishes, "exposure", time == null ? null : exposure(time));
        put(wishes, "cloud", cloud);
        put(wishes, "skylineDegrees", skyline);
        put(wishes, "elevationMetres", elevation);
        if (wayBack != null) {
            wishes.put("guard", guard(wayBack));
        } else if (margin != null || swell != null) {
            throw new UsageException("--margin, --swell: belong to --way-back, the lowest point you must cross");
        }
        if (table != null) {
            wishes.put("table", TideTableFile.read(table));
            wishes.remove("station");
        }
        put(wishes, "weather", weather == null ? null : WeatherFile.read(weather));
    }

    private static void put(JsonObject wishes, String name, @Nullable Object value) {
        if (value != null) {
            wishes.put(name, value);
        }
    }

    private static JsonObject exposure(String typed) {
        String[] ends = typed.split(",", -1);
        try {
            for (String end : ends) {
                ShutterTime.parse(end);
            }
        } catch (IllegalArgumentException e) {
            throw new UsageException("--time: " + e.getMessage());
        }
        if (ends.length > 2) {
            throw new UsageException("--time: \"" + typed + "\" holds more than a shortest and a longest time");
        }
        JsonObject exposure = new JsonObject();
        exposure.put("from", ends[0].trim());
        exposure.put("to", ends[ends.length - 1].trim());
        return exposure;
    }

    private JsonObject guard(double lowest) {
        JsonObject guard = new JsonObject();
        guard.put("feetMetres", lowest);
        guard.put("marginMetres", margin == null ? 0.5 : margin);
        if (swell != null) {
            String[] parts = swell.split("@", -1);
            try {
                guard.put("swellMetres", Double.parseDouble(parts[0]));
                guard.put("swellSeconds", Double.parseDouble(parts[1]));
            } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
                throw new UsageException("--swell: \"" + swell + "\" cannot be read; expected metres@seconds: 1.5@9");
            }
        }
        return guard;
    }
}
