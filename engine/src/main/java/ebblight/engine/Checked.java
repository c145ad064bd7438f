package ebblight.engine;

import java.util.function.Supplier;

/** Turns a refusal of core into one that names the field of the request. */
final class Checked {

    private Checked() {}

    static <T> T of(String field, Supplier<T> value) {
        try {
            return value.get();
        } catch (NumberFormatException e) {
            throw new RequestException(field, "holds something that is no number");
        } catch (IllegalArgumentException e) {
            throw new RequestException(field, String.valueOf(e.getMessage()));
        }
    }
}
