package ebblight.core.outing;

import ebblight.core.outing.RangeCondition.Label;
import ebblight.core.outing.RangeCondition.Quantity;
import ebblight.core.tide.TideCurve;
import ebblight.core.tide.TideSpans;

/** Wishes about the water. */
final class TideConditions {

    /** At midnight the constants are renewed: heights by up to 2 mm, rates by 2 mm an hour. */
    private static final double JUMP = 0.002;

    private TideConditions() {}

    static Condition height(TideCurve curve, Range range) {
        return new RangeCondition(
                "tideMetres",
                range,
                new Quantity(
                        curve::heightMetres, curve::knows, Math.max(1e-6, curve.fastestMetresPerHour() / 60), JUMP),
                new Label("water ", " m", "", 1));
    }

    static Condition direction(TideCurve curve, TideSpans.Direction direction) {
        return new DirectionCondition(curve, direction);
    }

    private record DirectionCondition(TideCurve curve, TideSpans.Direction direction) implements Condition {

        @Override
        public String word() {
            return "tideDirection";
        }

        @Override
        public String unit() {
            return "m/h";
        }

        @Override
        public double margin(double epochSeconds) {
            if (!curve.knows(epochSeconds)) {
                return Double.NEGATIVE_INFINITY;
            }
            double rising = curve.risingMetresPerHour(epochSeconds);
            return direction == TideSpans.Direction.RISING ? rising : -rising;
        }

        @Override
        public int look(double epochSeconds, double margin) {
            return Double.isInfinite(margin)
                    ? 1
                    : Looking.again(margin, Math.max(1e-6, curve.steepestMetresPerHourSquared() / 60), JUMP);
        }

        @Override
        public String words(double fromEpochSeconds, double toEpochSeconds) {
            return direction.word() + " water";
        }
    }
}
