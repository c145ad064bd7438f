package ebblight.imaging.card;

import ebblight.core.numeric.Work;
import ebblight.imaging.OpenedPicture;
import ebblight.imaging.UnreadableInputException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds dust before the sensor: soft dark spots that stay at one place of it in two views or more, in nearly every
 * frame that is smooth there. Clouds and waves do not come back to the same place.
 */
final class DustFinder {

    /** Frames of a view that are looked at, and views. */
    private static final int FRAMES = 4;

    private static final int MOST_VIEWS = 12;
    private static final int LEAST_VIEWS = 2;
    /** Frames that must show a spot. */
    private static final int LEAST_SHOWN = 4;
    /** Share of the frames that are smooth there. */
    private static final double NEARLY_ALL = 0.75;
    /** Spots that are told; a sensor with more needs cleaning, not a list. */
    private static final int MOST_SPOTS = 60;

    private DustFinder() {}

    /** Spots that stay at one place of the sensor in two views or more. */
    static List<SortedCard.DustSpot> find(List<Views.Group> groups, Work work) {
        DustCount count = new DustCount();
        int views = 0;
        for (Views.Group group : groups) {
            if (group.kind() == Views.Kind.VIEW && views < MOST_VIEWS) {
                work.progress((double) views / Math.min(MOST_VIEWS, groups.size()), "looking for dust");
                for (CardFrame frame : best(group)) {
                    work.check();
                    try (OpenedPicture picture = OpenedPicture.openSmaller(frame.file(), CardReader.MOST_PIXELS)) {
                        count.add(new SpotMap(picture), views);
                    } catch (UnreadableInputException e) {
                        // read once before; gone since: the other frames serve
                    }
                }
                views++;
            }
        }
        return views < LEAST_VIEWS ? List.of() : strongest(told(count));
    }

    /** The frames of a view that show dust best: small apertures, nothing overexposed, held level. */
    private static List<CardFrame> best(Views.Group group) {
        return group.frames().stream()
                .filter(f ->
                        f.clippedFraction() < 0.2 && f.facts().orientation().orElse(1) <= 1)
                .sorted(Comparator.comparingDouble(f -> -f.facts().fNumber().orElse(0)))
                .limit(FRAMES)
                .toList();
    }

    private static List<SortedCard.DustSpot> told(DustCount count) {
        List<SortedCard.DustSpot> spots = new ArrayList<>();
        for (int scale = 0; scale < SpotMap.RADII.length; scale++) {
            for (int p = 0; p < count.width() * count.height(); p++) {
                int row = p / count.width();
                int shown = count.shown(scale, p);
                if (shown >= LEAST_SHOWN
                        && count.views(scale, p) >= LEAST_VIEWS
                        && shown >= NEARLY_ALL * count.smooth(scale, p)) {
                    spots.add(new SortedCard.DustSpot(
                            (p % count.width() + 0.5) / count.width(),
                            (row + 0.5) / count.height(),
                            (double) SpotMap.RADII[scale] / count.width(),
                            count.meanStops(scale, p),
                            count.views(scale, p)));
                }
            }
        }
        return spots;
    }

    /** Of places that overlap the strongest one. */
    private static List<SortedCard.DustSpot> strongest(List<SortedCard.DustSpot> found) {
        found.sort(Comparator.comparingDouble(s -> -s.stops()));
        List<SortedCard.DustSpot> kept = new ArrayList<>();
        for (SortedCard.DustSpot spot : found) {
            boolean apart = kept.stream()
                    .noneMatch(k -> Math.hypot(k.x() - spot.x(), k.y() - spot.y()) < 2 * (k.radius() + spot.radius()));
            if (apart && kept.size() < MOST_SPOTS) {
                kept.add(spot);
            }
        }
        return List.copyOf(kept);
    }
}
