package ebblight.core.exposure;

import java.util.List;

/**
 * Ways to reach a shutter time, best first; where there is none, ways out.
 *
 * @param exposureValue100 of the scene, without bias
 */
public record SettingsAnswer(double exposureValue100, List<Choice> choices, List<WayOut> ways) {

    public SettingsAnswer {
        choices = List.copyOf(choices);
        ways = List.copyOf(ways);
    }
}
