package ebblight.core.outing;

import ebblight.core.light.LightModel;
import ebblight.core.sky.CameraView;
import ebblight.core.sky.Sky;
import ebblight.core.tide.TideCurve;
import java.util.Optional;

/**
 * A place as the search sees it.
 *
 * @param sky over the place; best read from a table of positions
 * @param light on its ground
 * @param clock on its walls
 * @param tide of its water, when known
 * @param view of the lens, when it matters
 * @param skylineDegrees how high the skyline stands in the view; 0 for a level horizon
 * @param weather when there is a forecast
 */
public record Scene(
        Sky sky,
        LightModel light,
        LocalTime clock,
        Optional<TideCurve> tide,
        Optional<CameraView> view,
        double skylineDegrees,
        Optional<Weather> weather) {

    public Scene {
        if (!(skylineDegrees >= 0 && skylineDegrees < 90)) {
            throw new IllegalArgumentException("a skyline stands 0 to 90 degrees high, was " + skylineDegrees);
        }
    }
}
