package ebblight.core.exposure;

import java.util.List;

/**
 * Ways to reach a shutter time, best first; where there is none, ways out.
 *
 * @param exposureValue100 of the scene, without bias
 * @param reach the times that the bag gives at base sensitivity
 */
public record SettingsAnswer(double exposureValue100, List<Choice> choices, List<WayOut> ways, List<Reach> reach) {

    public SettingsAnswer {
        choices = List.copyOf(choices);
        ways = List.copyOf(ways);
        reach = List.copyOf(reach);
    }
}
