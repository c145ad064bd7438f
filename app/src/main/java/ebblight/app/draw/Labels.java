package ebblight.app.draw;

import ebblight.app.draw.Drawing.Hold;
import ebblight.app.draw.Drawing.Lettering;
import java.util.ArrayList;
import java.util.List;

/** Words of one row, each set at the first of its places where it covers none that stand already. */
final class Labels {

    /** About how much of the size a line of words takes up over and under its foot. */
    private static final double ABOVE = 0.8;

    private static final double BELOW = 0.25;

    private final Drawing to;
    private final List<Box> taken = new ArrayList<>();

    Labels(Drawing to) {
        this.to = to;
    }

    private record Box(double left, double top, double right, double bottom) {
        boolean meets(Box other) {
            return left < other.right && right > other.left && top < other.bottom && bottom > other.top;
        }
    }

    /** A place for words: the foot of their line, and which side of it they lie on. */
    record Place(double x, double y, Hold hold) {}

    /** Sets words at the first free place, at the first of all when none is free: they must be read. */
    void set(Lettering type, String words, List<Place> places) {
        if (!setIfFree(type, words, places)) {
            put(type, words, places.get(0));
        }
    }

    /** Sets words at the first free place, and leaves them out when none is free. */
    boolean setIfFree(Lettering type, String words, List<Place> places) {
        for (Place place : places) {
            if (taken.stream().noneMatch(box(type, words, place)::meets)) {
                put(type, words, place);
                return true;
            }
        }
        return false;
    }

    private void put(Lettering type, String words, Place place) {
        taken.add(box(type, words, place));
        to.text(place.x(), place.y(), type.held(place.hold()), words);
    }

    private Box box(Lettering type, String words, Place place) {
        double wide = to.width(type, words);
        double left =
                switch (place.hold()) {
                    case START -> place.x();
                    case MIDDLE -> place.x() - wide / 2;
                    case END -> place.x() - wide;
                };
        return new Box(left, place.y() - ABOVE * type.size(), left + wide, place.y() + BELOW * type.size());
    }
}
