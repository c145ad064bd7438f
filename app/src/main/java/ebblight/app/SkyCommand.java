package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.UsageException;
import ebblight.app.plan.Zone;
import ebblight.core.exposure.Filter;
import ebblight.core.exposure.ShutterTime;
import ebblight.engine.Engine;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code sky}: sun, moon, events and light. */
@Command(
        name = "sky",
        mixinStandardHelpOptions = true,
        description = {
            "Tells where sun and moon stand, when they rise, set and enter the picture, and how light it is.",
            "Never look at the sun through an optical finder."
        })
final class SkyCommand implements Callable<Integer> {

    @Mixin
    private final JsonOption json = new JsonOption();

    @Mixin
    private final ViewOptions view = new ViewOptions();

    @Option(names = "--at", required = true, paramLabel = "LAT,LON", description = "The place, such as 63.40,-19.05.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private String at;

    @Option(names = "--time", paramLabel = "I", description = "An instant: 2027-01-10T16:30Z, or with +01:00.")
    private @Nullable String time;

    @Option(names = "--day", paramLabel = "DATE", description = "A whole day, such as 2027-01-10.")
    private @Nullable String day;

    @Option(names = "--zone", paramLabel = "Z", description = "Time zone of the day and of what is printed.")
    private @Nullable String zone;

    @Option(names = "--elevation", paramLabel = "M", description = "Height of the place above the sea in metres.")
    private double elevation;

    @Option(names = "--cloud", paramLabel = "C", description = "clear (default), thin, average or dark.")
    private String cloud = "clear";

    @Option(
            names = "--meter",
            paramLabel = "READING@I",
            description = "A meter reading and when it was taken: \"f/8 1/60 ISO100@2027-01-10T16:30Z\".")
    private @Nullable String meter;

    @Option(names = "--skyline", paramLabel = "DEG", description = "How high the skyline stands (default: 0).")
    private double skyline;

    @Option(names = "--wind", paramLabel = "M/S", description = "Wind over the water, for the glitter path.")
    private @Nullable Double wind;

    @Option(names = "--exposure", paramLabel = "T", description = "When is it right for this shutter time? 2m")
    private @Nullable String exposure;

    @Option(names = "--aperture", paramLabel = "N", description = "f-number of that exposure (default: 8).")
    private double aperture = 8;

    @Option(names = "--iso", paramLabel = "S", description = "ISO of that exposure (default: 100).")
    private double iso = 100;

    @Option(names = "--filters", split = ",", paramLabel = "F", description = "Filters on the lens: 6,10.")
    private List<String> filters = List.of();

    private final Printer printer = new Printer();

    @Override
    public Integer call() {
        Zone local = zone == null ? Zone.of("--zone", "UTC") : Zone.of("--zone", zone);
        JsonObject request = new JsonObject();
        request.put("schema", "sky/1");
        request.put("at", at);
        request.put("elevationMetres", elevation);
        request.put("cloud", cloud);
        request.put("skylineDegrees", skyline);
        putSpan(request, local);
        if (meter != null) {
            request.put("meter", reading(meter));
        }
        if (wind != null) {
            request.put("windMetresPerSecond", wind);
        }
        if (exposure != null) {
            request.put("exposure", exposure(exposure));
        }
        view.put(request);
        JsonObject answer = Asked.of(new Engine(), request, printer.work());
        answer.put("zone", local.name());
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            new SkyReport(answer, local, printer).print();
        }
        return ExitCode.DONE;
    }

    private void putSpan(JsonObject request, Zone local) {
        if (time == null == (day == null)) {
            throw new UsageException("--time: give either an instant by --time or a day by --day");
        }
        if (day == null) {
            request.put("time", time);
            return;
        }
        if (zone == null) {
            throw new UsageException("--zone: a day needs its time zone, such as --zone Europe/Paris");
        }
        LocalDate date = Zone.day("--day", day);
        Instant from = local.start(date);
        request.put("from", from.toString());
        request.put("to", local.start(date.plusDays(1)).toString());
        request.put("everySeconds", 3600);
    }

    static JsonObject reading(String typed) {
        int split = typed.lastIndexOf('@');
        if (split < 0) {
            throw new UsageException("--meter: say when it was read, such as \"f/8 1/60 ISO100@2027-01-10T16:30Z\"");
        }
        JsonObject reading = new JsonObject();
        reading.put("reading", typed.substring(0, split));
        reading.put("time", typed.substring(split + 1));
        return reading;
    }

    private JsonObject exposure(String typed) {
        JsonObject wanted = new JsonObject();
        double stops = 0;
        try {
            wanted.put("seconds", ShutterTime.parse(typed));
            for (String filter : filters) {
                stops += Filter.parse(filter).stops();
            }
        } catch (IllegalArgumentException e) {
            throw new UsageException("--exposure, --filters: " + e.getMessage());
        }
        wanted.put("fNumber", aperture);
        wanted.put("iso", iso);
        wanted.put("filterStops", stops);
        return wanted;
    }
}
