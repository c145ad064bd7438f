package ebblight.app.report;

import java.util.List;
import java.util.Optional;

/**
 * What a drawn time axis shows.
 *
 * @param chosenSeconds the chosen time
 * @param parts strips, those in the air first
 * @param windows times at which every wish holds
 * @param clash the two wishes that no one time serves
 * @param bag what the kit reaches, best first
 * @param worth what times are worth, in order of time; may be empty
 * @param fadesBeyondSeconds exposure beyond which light fades faster than it gathers; infinite in steady light
 */
record AxisModel(
        double chosenSeconds,
        List<Part> parts,
        List<Window> windows,
        Optional<Clash> clash,
        List<Reach> bag,
        List<Worth> worth,
        double fadesBeyondSeconds) {

    /** Times from and to; infinite when there is no end. */
    record Span(double from, double to) {

        boolean holds(double seconds) {
            return seconds >= from / TOLERANCE && seconds <= to * TOLERANCE;
        }
    }

    /** A tenth of a stop: dial times are not exact powers of two. */
    private static final double TOLERANCE = 1.07;

    record Window(Span likely, Optional<Span> sure) {}

    /** A word for how a part looks, and when. */
    record Word(String word, Span span) {}

    /** What is left of a part's texture on the screen at a time, as a share. */
    record Left(double seconds, double share) {}

    record Clash(String first, String second, double shorterSeconds, double longerSeconds, double stops) {}

    /** A time that filters and aperture reach. */
    record Reach(double seconds, String filters, String aperture) {}

    /** Share of the picture that changes at a time, and how far the subject stands off what moves round it, 0 to 1. */
    record Worth(double seconds, double changed, double standsOff) {}

    /**
     * One strip.
     *
     * @param wish a word, or empty
     * @param spans where the wish most likely holds
     * @param sure the same over the whole likely range
     * @param strip name of the strip's picture in the page: fourteen pieces, one a stop, and the chosen time
     * @param raised contrast of the strip against the picture's
     */
    record Part(
            String kind,
            String wish,
            List<Span> spans,
            List<Span> sure,
            List<Word> words,
            List<Left> left,
            String strip,
            double raised) {

        boolean air() {
            return kind.equals("drifting") || kind.equals("swaying");
        }

        String name() {
            return Marks.NAMES.getOrDefault(kind, kind);
        }

        boolean holds(double seconds) {
            return wish.isEmpty() || spans.stream().anyMatch(s -> s.holds(seconds));
        }

        /** What is left at a time, straight on a scale of stops; 1 where nothing is known. */
        double leftAt(double seconds) {
            if (left.isEmpty()) {
                return 1;
            }
            int i = 0;
            while (i < left.size() - 2 && left.get(i + 1).seconds() < seconds) {
                i++;
            }
            Left a = left.get(i);
            Left b = left.get(Math.min(i + 1, left.size() - 1));
            if (b.seconds() <= a.seconds()) {
                return a.share();
            }
            double t = Math.log(seconds / a.seconds()) / Math.log(b.seconds() / a.seconds());
            return a.share() + Math.max(0, Math.min(1, t)) * (b.share() - a.share());
        }
    }

    /** Whether a pixel of the drawing lies where every wish holds. */
    boolean inLane(AxisPlaces at, double x) {
        return windows.stream()
                .anyMatch(w ->
                        x > at.at(w.likely().from()) && x < at.at(w.likely().to()));
    }

    /** What the nearest of the times in {@code worth} is worth. */
    Worth worthAt(double seconds) {
        Worth nearest = worth.get(0);
        for (Worth one : worth) {
            boolean nearer =
                    Math.abs(Math.log(one.seconds() / seconds)) < Math.abs(Math.log(nearest.seconds() / seconds));
            nearest = nearer ? one : nearest;
        }
        return nearest;
    }

    /** Whether every wish holds at the chosen time. */
    boolean holds() {
        return parts.stream().allMatch(p -> p.holds(chosenSeconds));
    }

    /** The same without a bag, and with pictures of other strips, whose names begin with {@code before}. */
    AxisModel withStrips(String before) {
        List<Part> others = parts.stream()
                .map(p -> new Part(
                        p.kind(), p.wish(), p.spans(), p.sure(), p.words(), p.left(), before + p.strip(), p.raised()))
                .toList();
        return new AxisModel(chosenSeconds, others, windows, clash, List.of(), worth, fadesBeyondSeconds);
    }
}
