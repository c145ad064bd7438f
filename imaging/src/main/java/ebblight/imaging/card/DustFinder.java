package ebblight.imaging.card;

import ebblight.core.numeric.Work;
import java.util.List;

/** Dust before the sensor. */
final class DustFinder {

    private DustFinder() {}

    /** Spots that stay at one place of the sensor in two views or more. */
    static List<SortedCard.DustSpot> find(List<Views.Group> groups, Work work) {
        return List.of();
    }
}
