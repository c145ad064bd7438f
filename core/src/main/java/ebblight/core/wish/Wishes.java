package ebblight.core.wish;

import ebblight.core.exposure.ShutterTime;
import ebblight.core.motion.Kind;
import ebblight.core.motion.Measurement;
import ebblight.core.motion.RegionMotion;
import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Rounding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** All wishes for a picture: the shutter window in which they hold, or how they clash and the ways out. */
public final class Wishes {

    private static final double LARGEST_CARD_FRAMES = 9999;
    private static final double RAW_MEGABYTES = 30;

    private final List<Demand> demands;
    private final List<Window> windows;
    private final Optional<Clash> clash;

    private Wishes(List<Demand> demands, List<Window> windows, Optional<Clash> clash) {
        this.demands = demands;
        this.windows = windows;
        this.clash = clash;
    }

    /**
     * Weighs wishes against what was measured.
     *
     * @throws IllegalArgumentException when a wish names a part that is not there
     */
    public static Wishes of(List<Wish> wishes, Measurement measurement) {
        int width = measurement.survey().clip().width();
        int height = measurement.survey().clip().height();
        List<Demand> demands = new ArrayList<>();
        for (Wish wish : wishes) {
            List<RegionMotion> about =
                    measurement.regions().stream().filter(wish::about).toList();
            if (about.isEmpty()) {
                throw new IllegalArgumentException("the wish " + wish.text() + " is about nothing in this picture; its"
                        + " parts are " + parts(measurement));
            }
            for (RegionMotion region : about) {
                if (!wish.word().fits(region.part().kind())) {
                    throw new IllegalArgumentException("\"" + wish.word().text() + "\" is no wish for "
                            + region.part().id() + "; words are "
                            + String.join(", ", Word.fitting(region.part().kind())));
                }
            }
            // A wish for a kind is weighed on its largest part: specks at an edge do not decide.
            demands.add(Demand.of(wish, about.get(0), width, height));
        }
        return weigh(demands, measurement);
    }

    private static String parts(Measurement measurement) {
        return String.join(
                ", ", measurement.regions().stream().map(r -> r.part().id()).toList());
    }

    private static Wishes weigh(List<Demand> demands, Measurement measurement) {
        List<Span> likely = List.of(Span.ALL);
        List<Span> sure = List.of(Span.ALL);
        for (Demand demand : demands) {
            likely = Span.both(likely, demand.likely());
            sure = Span.both(sure, demand.sure());
        }
        if (likely.isEmpty()) {
            return new Wishes(demands, List.of(), Optional.of(clash(demands, measurement)));
        }
        List<Window> windows = new ArrayList<>();
        for (Span span : likely) {
            List<Span> inside = Span.both(List.of(span), sure);
            windows.add(new Window(span, inside.isEmpty() ? Optional.empty() : Optional.of(inside.get(0))));
        }
        return new Wishes(demands, List.copyOf(windows), Optional.empty());
    }

    private static Clash clash(List<Demand> demands, Measurement measurement) {
        for (Demand demand : demands) {
            if (demand.likely().isEmpty()) {
                return new Clash(
                        demand,
                        demand,
                        Double.POSITIVE_INFINITY,
                        0,
                        Double.POSITIVE_INFINITY,
                        waysOutOfNever(demand, measurement));
            }
        }
        Clash worst = null;
        for (int a = 0; a < demands.size(); a++) {
            for (int b = 0; b < demands.size(); b++) {
                if (a != b
                        && Span.both(demands.get(a).likely(), demands.get(b).likely())
                                .isEmpty()) {
                    Clash clash = between(demands.get(a), demands.get(b), measurement);
                    if (clash.stops() >= 0 && (worst == null || clash.stops() > worst.stops())) {
                        worst = clash;
                    }
                }
            }
        }
        return worst != null ? worst : between(demands.get(0), demands.get(demands.size() - 1), measurement);
    }

    /** What is left to do when no time fulfils a wish. */
    private static List<Clash.Way> waysOutOfNever(Demand demand, Measurement measurement) {
        boolean shorter = demand.wish().word() == Word.STILL || demand.wish().word() == Word.AS_SEEN;
        double[] listed = Measurement.listedSeconds();
        double nearest = shorter ? listed[0] : listed[listed.length - 1];
        return List.of(
                new Clash.Way("relax", List.of(), 0, "relax " + demand.wish().text() + ": " + demand.note()),
                new Clash.Way(
                        "nearest",
                        List.of(nearest),
                        1,
                        "come as near as it gets: at " + ShutterTime.words(nearest) + " "
                                + becomes(demand.region(), nearest, measurement)),
                new Clash.Way(
                        "measure",
                        List.of(),
                        0,
                        "measure again, from a longer clip or from frames 10 to 12 s apart: the range may narrow"));
    }

    private static Clash between(Demand first, Demand second, Measurement measurement) {
        double gap = Double.POSITIVE_INFINITY;
        double shorter = 0;
        double longer = 0;
        for (Span a : first.likely()) {
            for (Span b : second.likely()) {
                double stops = a.toSeconds() > 0 ? Powers.log2(b.fromSeconds() / a.toSeconds()) : -1;
                if (stops >= 0 && stops < gap) {
                    gap = stops;
                    shorter = a.toSeconds();
                    longer = b.fromSeconds();
                }
            }
        }
        if (Double.isInfinite(gap)) {
            return new Clash(first, second, -1, shorter, longer, List.of());
        }
        return new Clash(first, second, gap, shorter, longer, ways(first, second, shorter, longer, measurement));
    }

    private static List<Clash.Way> ways(
            Demand first, Demand second, double shorter, double longer, Measurement measurement) {
        double middle = Math.sqrt(shorter * longer);
        int frames = (int) Math.min(LARGEST_CARD_FRAMES, Math.ceil(longer / shorter));
        return List.of(
                new Clash.Way(
                        "between",
                        List.of(middle),
                        1,
                        "one exposure of " + ShutterTime.words(middle) + ": "
                                + becomes(first.region(), middle, measurement) + ", "
                                + becomes(second.region(), middle, measurement)),
                new Clash.Way(
                        "blend",
                        List.of(shorter, longer),
                        2,
                        "two exposures blended: " + ShutterTime.words(shorter) + " for " + first.region() + ", "
                                + ShutterTime.words(longer) + " for " + second.region()),
                new Clash.Way(
                        "burst",
                        List.of(shorter),
                        frames,
                        "a burst stacked: " + frames + " frames of " + ShutterTime.words(shorter) + " over "
                                + ShutterTime.words(longer) + ", about "
                                + Rounding.up(frames * RAW_MEGABYTES / 100) * 100
                                + " MB as RAW; gaps between frames leave more texture than one exposure"));
    }

    /** What a part is at a time, in the words of the scale. */
    static String becomes(String id, double seconds, Measurement measurement) {
        for (RegionMotion region : measurement.regions()) {
            if (region.part().id().equals(id)) {
                if (region.part().kind() == Kind.DRIFTING && region.velocity().isPresent()) {
                    double way = region.velocity().get().speed() * seconds;
                    double width = measurement.survey().clip().width();
                    return id + " travels " + Rounding.up(1000 * way / width) / 10.0 + " % of the width";
                }
                if (region.part().kind() == Kind.FIXED || region.part().kind() == Kind.DRIFTING) {
                    return id + " stays";
                }
                double left = Demand.left(region, region.at().apply(seconds).ratio());
                return id + " " + Word.forLeft(left).text() + " (" + Rounding.up(1000 * left) / 10.0 + " % left)";
            }
        }
        return id;
    }

    /** What each wish asks for. */
    public List<Demand> demands() {
        return demands;
    }

    /** Where all wishes hold, shortest first; empty when they clash. */
    public List<Window> windows() {
        return windows;
    }

    /** How they clash, when they do. */
    public Optional<Clash> clash() {
        return clash;
    }
}
