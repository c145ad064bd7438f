package ebblight.engine;

import com.grack.nanojson.JsonArray;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Writes values by the rule of all documents: numbers are finite, unknown is null. */
final class Json {

    private Json() {}

    /** The number, or null when it is infinite or not a number. */
    static @Nullable Double number(double value) {
        return Double.isFinite(value) ? value : null;
    }

    static @Nullable Double number(OptionalDouble value) {
        return value.isPresent() ? number(value.getAsDouble()) : null;
    }

    static JsonArray array(double... values) {
        JsonArray array = new JsonArray();
        for (double value : values) {
            array.add(number(value));
        }
        return array;
    }
}
