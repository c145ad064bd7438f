package ebblight.imaging.card;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which of the lone pixels are hot: those that stay at one place of the sensor whatever it looks at. A star or a drop
 * of spray does not, and a lamp of one view is not in another.
 */
final class HotPixels {

    /** Groups in which a place must stand out, unless a dark frame shows it. */
    private static final int LEAST_VIEWS = 2;

    private final Set<Long> hot = new HashSet<>();
    private final boolean sure;

    private HotPixels(boolean sure) {
        this.sure = sure;
    }

    static HotPixels of(List<Views.Group> groups) {
        long views = groups.stream().filter(g -> g.kind() == Views.Kind.VIEW).count();
        boolean darks = groups.stream().anyMatch(g -> g.kind() == Views.Kind.DARKS);
        HotPixels found = new HotPixels(darks || views >= LEAST_VIEWS);
        Map<Long, List<Views.Group>> seen = new HashMap<>();
        for (Views.Group group : groups) {
            for (CardFrame frame : group.frames()) {
                for (int place : frame.lone()) {
                    List<Views.Group> in = seen.computeIfAbsent(onSensor(frame, place), k -> new ArrayList<>(2));
                    if (!in.contains(group)) {
                        in.add(group);
                    }
                }
            }
        }
        seen.forEach((place, in) -> {
            if (in.size() >= LEAST_VIEWS || in.get(0).kind() == Views.Kind.DARKS) {
                found.hot.add(place);
            }
        });
        return found;
    }

    /** Lone pixels of a frame that are hot; where nothing tells, all of them. */
    int count(CardFrame frame) {
        int n = 0;
        for (int place : frame.lone()) {
            n += !sure || hot.contains(onSensor(frame, place)) ? 1 : 0;
        }
        return n;
    }

    /** Whether other views or darks tell hot pixels from stars. */
    boolean sure() {
        return sure;
    }

    private static long onSensor(CardFrame frame, int place) {
        return SensorPlace.of(
                frame.facts().orientation().orElse(1),
                frame.width(),
                frame.height(),
                place % frame.width(),
                place / frame.width());
    }
}
