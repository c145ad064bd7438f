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

    private static final double LOOK_SECONDS = 600;
    private static final double MOST_LOOKS = 300;

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

    /** From the first minute to the last where it runs one way, else between the least and the most on the way. */
    @Override
    public String words(double fromEpochSeconds, double toEpochSeconds) {
        if (!quantity.known().test(fromEpochSeconds) || !quantity.known().test(toEpochSeconds)) {
            return label.before() + "not known throughout";
        }
        double first = quantity.value().applyAsDouble(fromEpochSeconds);
        double last = quantity.value().applyAsDouble(toEpochSeconds);
        double least = Math.min(first, last);
        double most = Math.max(first, last);
        int looks = (int) Math.min(MOST_LOOKS, Math.ceil((toEpochSeconds - fromEpochSeconds) / LOOK_SECONDS));
        for (int i = 1; i < looks; i++) {
            double at = fromEpochSeconds + (toEpochSeconds - fromEpochSeconds) * i / looks;
            if (quantity.known().test(at)) {
                double value = quantity.value().applyAsDouble(at);
                least = Math.min(least, value);
                most = Math.max(most, value);
            }
        }
        String from = number(first);
        String to = number(last);
        String low = number(least);
        String high = number(most);
        String numbers = low.equals(high)
                ? low
                : (from.equals(low) && to.equals(high)) || (from.equals(high) && to.equals(low))
                        ? from + " to " + to
                        : "between " + low + " and " + high;
        return label.before() + numbers + label.unit() + label.after();
    }

    private String number(double value) {
        return Numbers.shortest(value, label.decimals()).replace('-', '−');
    }
}
