package ebblight.core.outing;

import ebblight.core.light.LightModel;
import ebblight.core.outing.RangeCondition.Label;
import ebblight.core.outing.RangeCondition.Quantity;

/** Wishes about how light it is. */
final class LightCondition {

    /** Steepest piece of sun's and moon's light against altitude; the fits are tested to stay under it. */
    private static final double STOPS_PER_DEGREE = 1.65;

    /** What the pieces of the fits differ by where they join, all joins together. */
    private static final double JUMP_STOPS = 0.15;

    private LightCondition() {}

    static Condition exposureValue100(LightModel light, Range range) {
        return new RangeCondition(
                "ev100",
                range,
                Quantity.of(
                        light::exposureValue100,
                        STOPS_PER_DEGREE * SkyConditions.DEGREES_PER_MINUTE
                                + light.cloud().fastestStopsPerMinute(),
                        JUMP_STOPS),
                new Label("light EV100 ", "", "", 1));
    }
}
