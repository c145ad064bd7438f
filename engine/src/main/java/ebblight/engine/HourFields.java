package ebblight.engine;

import com.grack.nanojson.JsonArray;
import ebblight.core.outing.HourWishes;
import ebblight.core.outing.LocalTime;
import ebblight.core.outing.Range;
import ebblight.core.outing.Scene;
import ebblight.core.outing.Twilight;
import ebblight.core.outing.Weather;
import ebblight.core.tide.TideSpans;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;

/** Reads wishes about the hour, the clock they speak of, and a forecast. */
final class HourFields {

    private static final List<String> DAYS = List.of("mon", "tue", "wed", "thu", "fri", "sat", "sun");

    /** Fields that are no wish. */
    private static final List<String> AROUND = List.of(
            "schema",
            "name",
            "note",
            "at",
            "elevationMetres",
            "zone",
            "offsets",
            "from",
            "to",
            "station",
            "table",
            "weather",
            "cloud",
            "meter",
            "view",
            "skylineDegrees",
            "minMinutes",
            "setUpMinutes",
            "guard",
            "guess",
            "exposure",
            "kit");

    private static final List<String> WISHES = List.of(
            "hours",
            "days",
            "twilight",
            "sunAltitude",
            "sunBearing",
            "sunInFrame",
            "moonAltitude",
            "moonFraction",
            "moonInFrame",
            "tideMetres",
            "tideDirection",
            "ev100");

    private HourFields() {}

    /** Refuses what is neither a wish nor around one: a wish with a slip of the pen would be no wish at all. */
    static void checkNames(Set<String> names) {
        for (String name : names) {
            boolean forecast = false;
            for (Weather.Kind kind : Weather.Kind.values()) {
                forecast |= kind.word().equals(name);
            }
            if (!forecast && !AROUND.contains(name) && !WISHES.contains(name)) {
                throw new RequestException(
                        name,
                        "is not known; wishes are " + String.join(", ", WISHES)
                                + ", cloudCover, windMetresPerSecond, windFromDegrees, pressureHectopascals,"
                                + " swellMetres, swellSeconds, swellFromDegrees");
            }
        }
    }

    /** The wishes, cheap ones first: the search asks them in this order. */
    static HourWishes read(Fields fields, Scene scene) {
        HourWishes wishes = HourWishes.at(scene);
        if (fields.has("hours")) {
            List<String> hours = fields.texts("hours");
            if (hours.size() != 2) {
                throw new RequestException(fields.path("hours"), "must be two hours such as [\"05:00\", \"22:00\"]");
            }
            HourWishes before = wishes;
            int from = minute(fields.path("hours"), hours.get(0));
            int to = minute(fields.path("hours"), hours.get(1));
            wishes = Checked.of(fields.path("hours"), () -> before.withHours(from, to));
        }
        if (fields.has("days")) {
            HourWishes before = wishes;
            Set<Integer> days = days(fields);
            wishes = Checked.of(fields.path("days"), () -> before.withDays(days));
        }
        if (fields.has("tideDirection")) {
            HourWishes before = wishes;
            wishes = Checked.of(
                    fields.path("tideDirection"),
                    () -> before.withTideDirection(TideSpans.Direction.of(fields.text("tideDirection"))));
        }
        if (fields.has("twilight")) {
            HourWishes before = wishes;
            wishes = Checked.of(fields.path("twilight"), () -> before.withTwilight(twilights(fields)));
        }
        wishes = range(fields, "sunAltitude", wishes, HourWishes::withSunAltitude);
        wishes = range(fields, "sunBearing", wishes, HourWishes::withSunBearing);
        wishes = flag(fields, "sunInFrame", wishes, HourWishes::withSunInFrame);
        wishes = range(fields, "moonAltitude", wishes, HourWishes::withMoonAltitude);
        wishes = flag(fields, "moonInFrame", wishes, HourWishes::withMoonInFrame);
        wishes = range(fields, "moonFraction", wishes, HourWishes::withMoonFraction);
        wishes = range(fields, "tideMetres", wishes, HourWishes::withTideMetres);
        wishes = range(fields, "ev100", wishes, HourWishes::withExposureValue100);
        for (Weather.Kind kind : Weather.Kind.values()) {
            wishes = range(fields, kind.word(), kind.direction(), wishes, (w, range) -> w.withWeather(kind, range));
        }
        return wishes;
    }

    private static HourWishes range(
            Fields fields, String name, HourWishes wishes, BiFunction<HourWishes, Range, HourWishes> with) {
        return range(fields, name, false, wishes, with);
    }

    /** A direction from 300 to 60 degrees runs over north. */
    private static HourWishes range(
            Fields fields,
            String name,
            boolean direction,
            HourWishes wishes,
            BiFunction<HourWishes, Range, HourWishes> with) {
        if (!fields.has(name)) {
            return wishes;
        }
        double[] ends = fields.numbers(name);
        if (ends.length != 2) {
            throw new RequestException(fields.path(name), "must be a lower and a higher number, such as [1, 2.5]");
        }
        double last = direction && ends[1] < ends[0] ? ends[1] + 360 : ends[1];
        return Checked.of(fields.path(name), () -> with.apply(wishes, new Range(ends[0], last)));
    }

    private static HourWishes flag(
            Fields fields, String name, HourWishes wishes, BiFunction<HourWishes, Boolean, HourWishes> with) {
        return fields.has(name)
                ? Checked.of(fields.path(name), () -> with.apply(wishes, fields.flag(name, false)))
                : wishes;
    }

    private static int minute(String field, String typed) {
        TextReader rest = new TextReader(typed);
        int hour = rest.digits(1, 2);
        int minute = rest.one(":").digits(2, 2);
        if (!rest.readWhole() || minute > 59) {
            throw new RequestException(field, "\"" + typed + "\" is no hour; expected one such as 05:00");
        }
        return 60 * hour + minute;
    }

    private static Set<Integer> days(Fields fields) {
        Set<Integer> days = new HashSet<>();
        for (String typed : fields.texts("days")) {
            String day = typed.trim().toLowerCase(Locale.ROOT);
            int index = day.length() < 3 ? -1 : DAYS.indexOf(day.substring(0, 3));
            if (index < 0) {
                throw new RequestException(
                        fields.path("days"), "\"" + typed + "\" is no day; expected " + String.join(", ", DAYS));
            }
            days.add(index);
        }
        return days;
    }

    private static Set<Twilight> twilights(Fields fields) {
        Set<Twilight> kinds = EnumSet.noneOf(Twilight.class);
        for (String word : fields.texts("twilight")) {
            kinds.add(Twilight.of(word));
        }
        return kinds;
    }

    /** The clock in {@code offsets}, rows of an instant and the offset that holds from it; UTC when there is none. */
    static LocalTime clock(Fields fields) {
        List<LocalTime.Step> steps = new ArrayList<>();
        JsonArray rows = fields.rows("offsets");
        for (int i = 0; i < rows.size(); i++) {
            String field = fields.path("offsets") + "[" + i + "]";
            if (!(rows.get(i) instanceof JsonArray row) || row.size() != 2 || !row.isString(0) || !row.isString(1)) {
                throw new RequestException(field, "must be an instant and an offset such as +01:00");
            }
            steps.add(new LocalTime.Step(
                    Instants.parse(field, row.getString(0)),
                    Checked.of(field, () -> Instants.offset(row.getString(1)))));
        }
        return steps.isEmpty()
                ? LocalTime.fixed(ZoneOffset.UTC)
                : Checked.of(fields.path("offsets"), () -> new LocalTime(steps));
    }

    /** The forecast in {@code weather}: rows with {@code time} and what each tells. */
    static Optional<Weather> weather(Fields fields) {
        List<Weather.Row> rows = new ArrayList<>();
        for (Fields row : fields.parts("weather")) {
            Map<Weather.Kind, Double> values = new EnumMap<>(Weather.Kind.class);
            for (Weather.Kind kind : Weather.Kind.values()) {
                if (row.has(kind.word())) {
                    values.put(kind, row.number(kind.word()));
                }
            }
            rows.add(Checked.of(row.path("time"), () -> new Weather.Row(Instants.read(row, "time"), values)));
        }
        return rows.isEmpty()
                ? Optional.empty()
                : Optional.of(Checked.of(fields.path("weather"), () -> new Weather(rows)));
    }
}
