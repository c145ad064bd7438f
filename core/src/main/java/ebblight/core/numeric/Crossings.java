package ebblight.core.numeric;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/** Where a continuous function passes through zero: coarse steps, then bisection. */
public final class Crossings {

    private static final int HALVINGS = 60;

    private Crossings() {}

    /**
     * A passage through zero.
     *
     * @param at where, the first point at which the function has its new sign, to the tolerance asked
     * @param rising whether the function grows there
     */
    public record Crossing(double at, boolean rising) {}

    /**
     * All passages from {@code from} to {@code to}, in order. Two passages less than a step apart are found when the
     * three points about them show a bend towards zero whose parabola reaches it.
     *
     * @param step distance of the points looked at first, above 0
     * @param tolerance how near the passage is found, above 0
     */
    public static List<Crossing> of(DoubleUnaryOperator f, double from, double to, double step, double tolerance) {
        if (!(step > 0 && tolerance > 0)) {
            throw new IllegalArgumentException("step and tolerance must be above 0, were " + step + ", " + tolerance);
        }
        List<Crossing> found = new ArrayList<>();
        double a = from;
        double atA = f.applyAsDouble(a);
        double beforeA = a;
        double atBeforeA = atA;
        double doneUpTo = from;
        while (a < to) {
            double b = Math.min(to, a + step);
            double atB = f.applyAsDouble(b);
            boolean same = atA >= 0 == atB >= 0;
            if (same && beforeA < a && atBeforeA >= 0 == atA >= 0) {
                double turn = turn(beforeA, atBeforeA, a, atA, b, atB);
                // two neighbouring triples may see the same turn
                if (turn > Math.max(beforeA, doneUpTo) && turn < b && f.applyAsDouble(turn) >= 0 != atA >= 0) {
                    found.add(bisect(f, turn < a ? beforeA : a, turn, tolerance));
                    doneUpTo = turn < a ? a : b;
                    found.add(bisect(f, turn, doneUpTo, tolerance));
                }
            } else if (!same) {
                found.add(bisect(f, a, b, tolerance));
            }
            beforeA = a;
            atBeforeA = atA;
            a = b;
            atA = atB;
        }
        return found;
    }

    /** The passage between two points at which the function has different signs. */
    public static Crossing bisect(DoubleUnaryOperator f, double from, double to, double tolerance) {
        double a = from;
        double b = to;
        boolean above = f.applyAsDouble(a) >= 0;
        for (int i = 0; i < HALVINGS && b - a > tolerance; i++) {
            double middle = 0.5 * (a + b);
            if (f.applyAsDouble(middle) >= 0 == above) {
                a = middle;
            } else {
                b = middle;
            }
        }
        return new Crossing(b, !above);
    }

    /** Where the parabola through three points turns towards zero; outside of them when it does not. */
    private static double turn(double x0, double y0, double x1, double y1, double x2, double y2) {
        double left = (y1 - y0) / (x1 - x0);
        double right = (y2 - y1) / (x2 - x1);
        double bend = (right - left) / (x2 - x0);
        if (bend == 0 || bend > 0 != y1 >= 0) {
            return Double.NEGATIVE_INFINITY;
        }
        return 0.5 * (x0 + x1 - left / bend);
    }
}
