package ebblight.app.after;

import com.grack.nanojson.JsonObject;
import ebblight.engine.Fields;
import ebblight.engine.RequestException;
import ebblight.imaging.repair.Cast;
import ebblight.imaging.repair.Dust;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Supplier;

/**
 * The numbers of a repair, {@code repair/1}: what docs/schemas/repair.md describes.
 *
 * @param cornerStops of {@code vignetting}
 */
public record RepairFile(
        Optional<Cast> cast,
        Optional<Cast.Area> neutral,
        OptionalDouble cornerStops,
        List<Dust> dust,
        OptionalDouble levelDegrees) {

    private static final Set<String> KNOWN = Set.of("schema", "name", "cast", "neutral", "vignetting", "dust", "level");

    /**
     * The numbers that a document holds.
     *
     * @throws RequestException naming the field that cannot be meant
     */
    public static RepairFile read(JsonObject document) {
        Fields fields = new Fields(document, "");
        if (!"repair/1".equals(fields.text("schema"))) {
            throw new RequestException("schema", "must be repair/1, was " + fields.text("schema"));
        }
        for (String key : document.keySet()) {
            if (!KNOWN.contains(key)) {
                throw new RequestException(
                        key, "is no part of a repair; known are cast, neutral, vignetting, dust and level");
            }
        }
        Optional<Cast> cast = Optional.empty();
        if (fields.has("cast")) {
            Fields c = fields.part("cast");
            double green = c.number("green", 1);
            cast = Optional.of(checked("cast", () -> new Cast(c.number("red") / green, c.number("blue") / green)));
        }
        Optional<Cast.Area> neutral =
                fields.has("neutral") ? Optional.of(area("neutral", fields.numbers("neutral"))) : Optional.empty();
        List<Dust> dust = new ArrayList<>();
        if (fields.has("dust")) {
            for (Fields each : fields.parts("dust")) {
                dust.add(checked(
                        each.path("x"), () -> new Dust(each.number("x"), each.number("y"), each.number("radius"))));
            }
        }
        return new RepairFile(cast, neutral, number(fields, "vignetting"), dust, number(fields, "level"));
    }

    private static OptionalDouble number(Fields fields, String name) {
        return fields.has(name) ? OptionalDouble.of(fields.number(name)) : OptionalDouble.empty();
    }

    /** An area from left, top, right and bottom. */
    public static Cast.Area area(String field, double[] values) {
        if (values.length != 4) {
            throw new RequestException(
                    field, "must be four numbers: left, top, right, bottom as fractions of the picture");
        }
        return checked(field, () -> new Cast.Area(values[0], values[1], values[2], values[3]));
    }

    private static <T> T checked(String field, Supplier<T> value) {
        try {
            return value.get();
        } catch (IllegalArgumentException e) {
            throw new RequestException(field, String.valueOf(e.getMessage()));
        }
    }
}
