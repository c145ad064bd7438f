package ebblight.core.outing;

import ebblight.core.exposure.Numbers;
import java.util.function.DoublePredicate;
import java.util.function.DoubleUnaryOperator;

/**
 * A number that shall lie in a range.
 *
 * @param word the wish's name
 * @param range wished
 * @param quantity the number
 * @param label for a person: what comes before and after it
 */
record RangeCondition(String word, Range range, Quantity quantity, Label label) implements Condition {

    /**
     * A number over time.
     *
     * @param value at an instant
     * @param known whether it can be told
     * @param fastestPerMinute bound on its change in a minute
     * @param jump what it may differ at once besides
     */
    record Quantity(DoubleUnaryOperator value, DoublePredicate known, double fastestPerMinute, double jump) {

        static Quantity of(DoubleUnaryOperator value, double fastestPerMinute, double jump) {
            return new Quantity(value, t -> true, fastestPerMinute, jump);
        }
    }

    /** Words around the number: {@code "sun " 4.2 "°" " high"}. */
    record Label(String before, String unit, String after, int decimals) {}

    @Override
    public String unit() {
        return label.unit();
    }

    @Override
    public double margin(double epochSeconds) {
        return quantity.known().test(epochSeconds)
                ? range.margin(quantity.value().applyAsDouble(epochSeconds))
                : Double.NEGATIVE_INFINITY;
    }

    @Override
    public int look(double epochSeconds, double margin) {
        return Double.isInfinite(margin) ? 1 : Looking.again(margin, quantity.fastestPerMinute(), quantity.jump());
    }

    @Override
    public String words(double fromEpochSeconds, double toEpochSeconds) {
        String from = number(fromEpochSeconds);
        String to = number(toEpochSeconds);
        return label.before() + (from.equals(to) ? from : from + " to " + to) + label.unit() + label.after();
    }

    private String number(double epochSeconds) {
        return quantity.known().test(epochSeconds)
                ? Numbers.shortest(quantity.value().applyAsDouble(epochSeconds), label.decimals())
                : "unknown";
    }
}
