package ebblight.core.wish;

import ebblight.core.exposure.Numbers;
import ebblight.core.exposure.ShutterTime;
import ebblight.core.motion.Clip;
import ebblight.core.motion.Kind;
import ebblight.core.motion.Measurement;
import ebblight.core.motion.RegionMotion;
import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Rounding;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

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
        Clip clip = measurement.survey().clip();
        return of(wishes, new Picture(measurement.regions(), clip.width(), clip.height()));
    }

    /** What wishes are weighed against: the parts, the largest of a kind first, and the size in survey pixels. */
    record Picture(List<RegionMotion> regions, int width, int height) {}

    static Wishes of(List<Wish> wishes, Picture picture) {
        List<Demand> demands = new ArrayList<>();
        for (Wish wish : wishes) {
            List<RegionMotion> about =
                    picture.regions().stream().filter(wish::about).toList();
            if (about.isEmpty()) {
                throw new IllegalArgumentException("the wish " + wish.text() + " is about nothing in this picture; its"
                        + " parts are " + parts(picture));
            }
            for (RegionMotion region : about) {
                if (!wish.word().fits(region.part().kind())) {
                    throw new IllegalArgumentException("\"" + wish.word().text() + "\" is no wish for "
                            + region.part().id() + "; words are "
                            + String.join(", ", Word.fitting(region.part().kind())));
                }
            }
            // A wish for a kind is weighed on its largest part: specks at an edge do not decide.
            demands.add(Demand.of(wish, about.get(0), picture.width(), picture.height()));
        }
        return weigh(demands, picture);
    }

    private static String parts(Picture picture) {
        return String.join(
                ", ", picture.regions().stream().map(r -> r.part().id()).toList());
    }

    private static Wishes weigh(List<Demand> demands, Picture picture) {
        List<Span> likely = common(demands, Demand::likely);
        List<Span> sure = common(demands, Demand::sure);
        if (likely.isEmpty()) {
            return new Wishes(demands, List.of(), Optional.of(clash(demands, picture)));
        }
        List<Window> windows = new ArrayList<>();
        for (Span span : likely) {
            List<Span> inside = Span.both(List.of(span), sure);
            windows.add(new Window(span, inside.isEmpty() ? Optional.empty() : Optional.of(inside.get(0))));
        }
        return new Wishes(demands, List.copyOf(windows), Optional.empty());
    }

    private static Clash clash(List<Demand> demands, Picture picture) {
        for (Demand demand : demands) {
            if (demand.likely().isEmpty()) {
                return new Clash(
                        demand,
                        demand,
                        Double.POSITIVE_INFINITY,
                        0,
                        Double.POSITIVE_INFINITY,
                        waysOutOfNever(demand, picture));
            }
        }
        List<Gap> apart = new ArrayList<>();
        for (int a = 0; a < demands.size(); a++) {
            for (int b = 0; b < demands.size(); b++) {
                if (Span.both(demands.get(a).likely(), demands.get(b).likely()).isEmpty()) {
                    Gap.of(demands.get(a), demands.get(b), List.of(Span.ALL)).ifPresent(apart::add);
                }
            }
        }
        Gap worst = (apart.isEmpty() ? partedByOthers(demands) : apart)
                .stream().reduce((x, y) -> y.stops > x.stops ? y : x).orElseThrow();
        List<Clash.Way> ways = ways(worst, picture);
        return new Clash(worst.first, worst.second, worst.stops, worst.shorter, worst.longer, ways);
    }

    /** Where any two would go together: what keeps two of as few as clash apart, once the others are held to. */
    private static List<Gap> partedByOthers(List<Demand> demands) {
        List<Demand> few = new ArrayList<>(demands);
        for (Demand demand : demands) {
            few.remove(demand);
            if (!common(few, Demand::likely).isEmpty()) {
                few.add(demand);
            }
        }
        List<Gap> parted = new ArrayList<>();
        for (int a = 0; a < few.size(); a++) {
            for (int b = 0; b < few.size(); b++) {
                if (a != b) {
                    List<Demand> others = new ArrayList<>(few);
                    others.remove(few.get(a));
                    others.remove(few.get(b));
                    Gap.of(few.get(a), few.get(b), common(others, Demand::likely))
                            .ifPresent(parted::add);
                }
            }
        }
        return parted;
    }

    private static List<Span> common(List<Demand> demands, Function<Demand, List<Span>> of) {
        List<Span> common = List.of(Span.ALL);
        for (Demand demand : demands) {
            common = Span.both(common, of.apply(demand));
        }
        return common;
    }

    /** By how many stops the one demand ends before the other begins. */
    private record Gap(Demand first, Demand second, double stops, double shorter, double longer) {

        /** The narrowest, of the times that lie within {@code held}; empty when the first does not end before. */
        static Optional<Gap> of(Demand first, Demand second, List<Span> held) {
            Optional<Gap> narrowest = Optional.empty();
            for (Span a : Span.both(first.likely(), held)) {
                for (Span b : Span.both(second.likely(), held)) {
                    double stops = Powers.log2(b.fromSeconds() / a.toSeconds());
                    boolean before = a.toSeconds() < b.fromSeconds();
                    if (before && (narrowest.isEmpty() || stops < narrowest.get().stops)) {
                        narrowest = Optional.of(new Gap(first, second, stops, a.toSeconds(), b.fromSeconds()));
                    }
                }
            }
            return narrowest;
        }
    }

    /** What is left to do when no time fulfils a wish. */
    private static List<Clash.Way> waysOutOfNever(Demand demand, Picture picture) {
        boolean shorter = demand.wish().word() == Word.STILL || demand.smoothAlready();
        double[] listed = Measurement.listedSeconds();
        double nearest = shorter ? listed[0] : listed[listed.length - 1];
        return List.of(
                new Clash.Way("relax", List.of(), 0, "relax " + demand.wish().text() + ": " + demand.note()),
                new Clash.Way(
                        "nearest",
                        List.of(nearest),
                        1,
                        "come as near as it gets: at " + ShutterTime.words(nearest) + " "
                                + becomes(demand.region(), nearest, picture)),
                new Clash.Way(
                        "measure",
                        List.of(),
                        0,
                        "measure again, from a longer clip or from frames 10 to 12 s apart: the range may narrow"));
    }

    private static List<Clash.Way> ways(Gap gap, Picture picture) {
        double shorter = gap.shorter;
        double longer = gap.longer;
        String first = gap.first.region();
        String second = gap.second.region();
        double middle = Math.sqrt(shorter * longer);
        int frames = (int) Math.min(LARGEST_CARD_FRAMES, Math.ceil((1 - 1e-9) * longer / shorter));
        return List.of(
                new Clash.Way(
                        "between",
                        List.of(middle),
                        1,
                        "one exposure of " + ShutterTime.words(middle) + ": "
                                + becomes(first, middle, picture) + ", "
                                + becomes(second, middle, picture)),
                new Clash.Way(
                        "blend",
                        List.of(shorter, longer),
                        2,
                        "two exposures blended: " + ShutterTime.words(shorter) + " for " + first + ", "
                                + ShutterTime.words(longer) + " for " + second),
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
    static String becomes(String id, double seconds, Picture picture) {
        for (RegionMotion region : picture.regions()) {
            if (region.part().id().equals(id)) {
                if (region.part().kind() == Kind.DRIFTING && region.velocity().isPresent()) {
                    double way = region.velocity().get().speed() * seconds;
                    double width = picture.width();
                    return id + " travels " + Numbers.shortest(100 * way / width, 1) + " % of the width";
                }
                if (region.part().kind() == Kind.FIXED || region.part().kind() == Kind.DRIFTING) {
                    return id + " stays";
                }
                double left = Demand.left(region, region.at().apply(seconds).ratio());
                return id + " " + Word.forLeft(left).text() + " (" + Numbers.shortest(100 * left, 1) + " % left)";
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
