package ebblight.core.outing;

/** Numbers from {@code low} to {@code high}, both included. */
public record Range(double low, double high) {

    public Range {
        if (!(low <= high)) {
            throw new IllegalArgumentException(
                    "a range runs from the lower to the higher number, was " + low + " to " + high);
        }
    }

    /** How deep inside a value lies; negative: how far outside. */
    double margin(double value) {
        return Math.min(value - low, high - value);
    }
}
