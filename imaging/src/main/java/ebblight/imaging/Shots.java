package ebblight.imaging;

import ebblight.core.numeric.Powers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** When and how long the frames of a stack gathered light. */
final class Shots {

    /** Exposures that differ less than this count as the same. */
    private static final double SAME_STOPS = 0.05;

    private final List<Shot> shots = new ArrayList<>();
    private boolean scaled;

    private record Shot(double at, OptionalDouble exposure) {}

    /** By what the light of a frame must be multiplied to be that of the first one's exposure. */
    double gain(OptionalDouble exposure) {
        OptionalDouble first = shots.isEmpty() ? exposure : shots.get(0).exposure;
        if (exposure.isEmpty() || first.isEmpty()) {
            return 1;
        }
        double gain = first.getAsDouble() / exposure.getAsDouble();
        if (Math.abs(Powers.log2(gain)) < SAME_STOPS) {
            return 1;
        }
        scaled = true;
        return gain;
    }

    void add(double at, OptionalDouble exposure) {
        shots.add(new Shot(at, exposure));
    }

    int count() {
        return shots.size();
    }

    /** Whether some frame had to be scaled to the first one's exposure. */
    boolean scaled() {
        return scaled;
    }

    /** Sum of the exposures; of a clip, whose frames have none, the time it spans. */
    OptionalDouble totalSeconds(boolean clip) {
        if (allExposed()) {
            return OptionalDouble.of(
                    shots.stream().mapToDouble(s -> s.exposure.orElse(0)).sum());
        }
        int n = shots.size();
        double span = n < 2 ? 0 : shots.get(n - 1).at - shots.get(0).at;
        return clip && span > 0 ? OptionalDouble.of(span * n / (n - 1)) : OptionalDouble.empty();
    }

    /** Times without light between the exposures, where both instants and exposures are known. */
    Optional<StackResult.Gaps> gaps() {
        if (!allExposed() || shots.size() < 2 || Double.isNaN(shots.get(0).at)) {
            return Optional.empty();
        }
        int count = 0;
        double sum = 0;
        double longest = 0;
        for (int k = 1; k < shots.size(); k++) {
            Shot before = shots.get(k - 1);
            double gap = shots.get(k).at - before.at - before.exposure.orElse(0);
            if (gap > 0) {
                count++;
                sum += gap;
                longest = Math.max(longest, gap);
            }
        }
        return Optional.of(new StackResult.Gaps(count, sum, longest));
    }

    private boolean allExposed() {
        return shots.stream().allMatch(s -> s.exposure.isPresent());
    }
}
