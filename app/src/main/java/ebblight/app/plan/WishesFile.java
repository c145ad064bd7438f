package ebblight.app.plan;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.UsageException;
import ebblight.core.numeric.Work;
import ebblight.core.sky.Place;
import ebblight.engine.Engine;
import ebblight.engine.RequestException;
import ebblight.engine.StationFields;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.function.Supplier;

/**
 * Wishes about the hour as people write them ({@code wishes/1}), turned into the engine's {@code when/1}: dates become
 * instants of the zone, a station its constants, files their rows.
 */
public final class WishesFile {

    private WishesFile() {}

    /**
     * The request that a document of wishes means.
     *
     * @param folder against which files are named
     */
    public static JsonObject request(JsonObject wishes, Path folder) throws IOException {
        if (!"wishes/1".equals(wishes.getString("schema"))) {
            throw new RequestException("schema", "must be wishes/1");
        }
        if (!wishes.has("at")) {
            throw new RequestException("at", "is missing; expected latitude,longitude in degrees such as 63.40,-19.05");
        }
        JsonObject request = new JsonObject();
        request.putAll(wishes);
        request.put("schema", "when/1");
        Zone zone = zone(wishes);
        Instant from = instant(wishes, "from", zone);
        Instant to = instant(wishes, "to", zone);
        request.put("from", from.toString());
        request.put("to", to.toString());
        if (to.isAfter(from)) {
            request.put("offsets", zone.offsets(from, to));
        }
        if (wishes.has("station") && !(wishes.get("station") instanceof JsonObject)) {
            request.put("station", station(wishes));
        }
        if (wishes.isString("table")) {
            request.put("table", TideTableFile.read(folder.resolve(wishes.getString("table"))));
        }
        if (wishes.isString("weather")) {
            request.put("weather", WeatherFile.read(folder.resolve(wishes.getString("weather"))));
        }
        return request;
    }

    /** Asks for one day, so that what cannot be used is said before anything is written. */
    public static void check(JsonObject wishes, Work work) throws IOException {
        JsonObject whole = new JsonObject();
        whole.put("hours", JsonArray.from("00:00", "24:00"));
        whole.put("at", "0,0");
        whole.put("from", "2027-01-01");
        whole.put("to", "2027-01-02");
        whole.putAll(wishes);
        whole.put("schema", "wishes/1");
        Asked.of(new Engine(), request(whole, Path.of("")), work);
    }

    /** The zone of a document of wishes; UTC when it names none. */
    public static Zone zone(JsonObject wishes) {
        return named("zone", () -> Zone.of("zone", text(wishes, "zone", "UTC")));
    }

    /** The constants of the station that a place or a document of wishes names, or of the nearest. */
    public static JsonObject station(JsonObject wishes) throws IOException {
        StationCatalogue catalogue = StationCatalogue.read();
        String typed = text(wishes, "station", "");
        if (typed.equals("nearest")) {
            Place place = named("at", () -> Place.parse(text(wishes, "at", "")));
            return StationFields.write(catalogue.nearest(place, 1).get(0).station());
        }
        return StationFields.write(
                named("station", () -> catalogue.one("station", typed)).station());
    }

    private static Instant instant(JsonObject wishes, String field, Zone zone) {
        String typed = text(wishes, field, "");
        if (typed.isEmpty()) {
            throw new RequestException(field, "is missing; expected a day such as 2027-01-10");
        }
        if (typed.contains("T")) {
            try {
                return OffsetDateTime.parse(typed).toInstant();
            } catch (DateTimeParseException e) {
                throw new RequestException(
                        field, "\"" + typed + "\" is no instant; expected a day, or one such as 2027-01-10T16:30Z");
            }
        }
        LocalDate day = named(field, () -> Zone.day(field, typed));
        return zone.start(day);
    }

    private static String text(JsonObject wishes, String field, String otherwise) {
        if (!wishes.has(field)) {
            return otherwise;
        }
        if (!wishes.isString(field)) {
            throw new RequestException(field, "must be text");
        }
        return wishes.getString(field);
    }

    /** Refusals of what is shared with the command line, as of a field. */
    private static <T> T named(String field, Supplier<T> value) {
        try {
            return value.get();
        } catch (UsageException | IllegalArgumentException e) {
            String words = String.valueOf(e.getMessage());
            throw new RequestException(
                    field, words.startsWith(field + ": ") ? words.substring(field.length() + 2) : words);
        }
    }
}
