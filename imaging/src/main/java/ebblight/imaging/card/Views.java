package ebblight.imaging.card;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Puts the frames of a card into groups of one view each, in order of time. */
final class Views {

    /** A view left for longer counts as another: light and tide are others (common practice). */
    private static final double LEFT_SECONDS = 45 * 60;
    /** Frames this near follow each other, so that less likeness tells that the view stayed. */
    private static final double NEAR_SECONDS = 20;

    private static final double ALIKE = 0.4;
    private static final double ALIKE_WHEN_NEAR = 0.2;
    private static final double SAME_FOCAL = 0.05;
    /** Members of a group with which a frame is compared: the last ones, and its first. */
    private static final int COMPARED = 3;

    /** Median light below this, in stops under white, is that of a cap: a night sky still leaves more in 8 bits. */
    private static final double DARK_STOPS = -9;

    private final List<Group> groups = new ArrayList<>();

    /** Frames of one view, or darks, or a slate. */
    static final class Group {
        private final Kind kind;
        private final List<CardFrame> frames = new ArrayList<>();
        private final List<ViewSketch> sketches = new ArrayList<>();

        Group(Kind kind) {
            this.kind = kind;
        }

        Kind kind() {
            return kind;
        }

        List<CardFrame> frames() {
            return frames;
        }

        private CardFrame last() {
            return frames.get(frames.size() - 1);
        }
    }

    /** What a group is of. */
    enum Kind {
        VIEW,
        DARKS,
        SLATE
    }

    static List<Group> of(List<CardFrame> frames, Work work) {
        Views views = new Views();
        ViewSketch[] sketches = new ViewSketch[frames.size()];
        work.forEach(
                sketches.length, i -> sketches[i] = ViewSketch.of(frames.get(i).cells()));
        for (int i = 0; i < sketches.length; i++) {
            work.check();
            work.progress((double) i / sketches.length, "grouping by view");
            CardFrame frame = frames.get(i);
            Group group = views.groupOf(frame, sketches[i]);
            group.frames.add(frame);
            group.sketches.add(sketches[i]);
        }
        return views.groups;
    }

    private Group groupOf(CardFrame frame, ViewSketch sketch) {
        if (!frame.slateText().isEmpty()) {
            return added(new Group(Kind.SLATE));
        }
        if (isDark(frame)) {
            return groups.stream()
                    .filter(g -> g.kind == Kind.DARKS && sameCamera(g.last(), frame))
                    .findFirst()
                    .orElseGet(() -> added(new Group(Kind.DARKS)));
        }
        double best = 0;
        int found = -1;
        for (int k = groups.size() - 1; k >= 0; k--) {
            Group group = groups.get(k);
            if (group.kind == Kind.VIEW && couldBe(group, frame)) {
                double likeness = likeness(group, sketch);
                boolean near = frame.seconds() - group.last().closedSeconds() < NEAR_SECONDS;
                if (likeness > (near ? ALIKE_WHEN_NEAR : ALIKE) && likeness > best) {
                    best = likeness;
                    found = k;
                }
            }
        }
        return found < 0 ? added(new Group(Kind.VIEW)) : groups.get(found);
    }

    private Group added(Group group) {
        groups.add(group);
        return group;
    }

    private static boolean isDark(CardFrame frame) {
        return frame.clippedFraction() < 0.01 && frame.medianLevel() < DARK_STOPS;
    }

    private static boolean couldBe(Group group, CardFrame frame) {
        CardFrame last = group.last();
        boolean left = frame.seconds() - last.closedSeconds() > LEFT_SECONDS; // false when a time is unknown
        return !left && sameCamera(last, frame) && sameFocal(last, frame);
    }

    private static boolean sameCamera(CardFrame a, CardFrame b) {
        boolean known = a.facts().camera().isPresent() && b.facts().camera().isPresent();
        return a.width() == b.width()
                && a.height() == b.height()
                && (!known || a.facts().camera().equals(b.facts().camera()));
    }

    private static boolean sameFocal(CardFrame a, CardFrame b) {
        OptionalDouble first = a.facts().focalMillimetres();
        OptionalDouble second = b.facts().focalMillimetres();
        return first.isEmpty()
                || second.isEmpty()
                || Math.abs(second.getAsDouble() / first.getAsDouble() - 1) <= SAME_FOCAL;
    }

    private static double likeness(Group group, ViewSketch sketch) {
        int n = group.sketches.size();
        double best = group.sketches.get(0).likeness(sketch);
        for (int i = Math.max(1, n - COMPARED); i < n; i++) {
            best = Math.max(best, group.sketches.get(i).likeness(sketch));
        }
        return best;
    }
}
