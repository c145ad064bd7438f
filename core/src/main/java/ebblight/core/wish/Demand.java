package ebblight.core.wish;

import ebblight.core.exposure.Numbers;
import ebblight.core.exposure.ShutterTime;
import ebblight.core.motion.FlowLines;
import ebblight.core.motion.RegionMotion;
import ebblight.core.motion.Remaining;
import ebblight.core.numeric.Rounding;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleUnaryOperator;

/**
 * What a wish asks of the shutter time for one part.
 *
 * @param wish the wish
 * @param region id of the part
 * @param likely times at which it most likely holds
 * @param sure times at which it holds over the whole likely range
 * @param note what is to be said of it, or empty
 */
public record Demand(Wish wish, String region, List<Span> likely, List<Span> sure, String note) {

    private static final double SHARP_DIAGONALS = 1.0 / 1500;
    private static final double STREAK_WIDTHS = 1.0 / 20;
    private static final double SHORTEST = 1.0 / 8000;
    private static final double LONGEST = 4 * 3600;
    private static final double LINES_FROM = 0.25;
    private static final double LINES_TO = 1.5;

    private static final String SMOOTH_ALREADY = "it is smoother than that at any time";

    public Demand {
        likely = List.copyOf(likely);
        sure = List.copyOf(sure);
    }

    /** Whether it cannot be met because the part shows too little at the shortest time already. */
    boolean smoothAlready() {
        return note.equals(SMOOTH_ALREADY);
    }

    /** What is left of a part's texture on the screen: change and standing together, as a share of its mean. */
    public static double left(RegionMotion region, double ratio) {
        double changing = region.texture() * ratio;
        return Math.sqrt(changing * changing + region.standing() * region.standing());
    }

    /** What each word that fits a part would ask of the shutter time, in a picture of survey pixels. */
    public static List<Demand> ofEveryWord(RegionMotion region, int width, int height) {
        List<Demand> demands = new ArrayList<>();
        for (Word word : Word.values()) {
            if (word.fits(region.part().kind())) {
                demands.add(of(new Wish(region.part().id(), word, false), region, width, height));
            }
        }
        return demands;
    }

    /**
     * The demand of a wish on a part in a picture of {@code width × height} survey pixels.
     */
    static Demand of(Wish wish, RegionMotion region, int width, int height) {
        double diagonal = Math.sqrt((double) width * width + (double) height * height);
        String id = region.part().id();
        return switch (region.part().kind()) {
            case FIXED -> new Demand(wish, id, List.of(Span.ALL), List.of(Span.ALL), "");
            case DRIFTING -> drifting(wish, region, width, diagonal);
            case FLOWING, SWAYING -> renewing(wish, region, diagonal);
        };
    }

    private static Demand drifting(Wish wish, RegionMotion region, int width, double diagonal) {
        String id = region.part().id();
        if (region.velocity().isEmpty() || region.velocity().get().speed() < 1e-9) {
            return new Demand(
                    wish, id, List.of(Span.ALL), List.of(), "nothing drifts here that I can see: any time will do");
        }
        RegionMotion.Velocity v = region.velocity().get();
        double error = Math.max(0.05, v.relativeError());
        if (wish.word() == Word.STREAKED) {
            double from = STREAK_WIDTHS * width / v.speed();
            return new Demand(
                    wish,
                    id,
                    List.of(new Span(from, Double.POSITIVE_INFINITY)),
                    List.of(new Span(from * (1 + error), Double.POSITIVE_INFINITY)),
                    "");
        }
        double to = SHARP_DIAGONALS * diagonal / v.speed();
        return new Demand(wish, id, List.of(new Span(0, to)), List.of(new Span(0, to / (1 + error))), "");
    }

    private static Demand renewing(Wish wish, RegionMotion region, double diagonal) {
        String id = region.part().id();
        boolean seen = region.flags().seen();
        DoubleUnaryOperator likely = t -> left(region, region.at().apply(t).ratio());
        DoubleUnaryOperator high = t -> left(region, region.at().apply(t).high());
        DoubleUnaryOperator low = t -> left(region, region.at().apply(t).low());
        if (!seen && wish.word() != Word.LINES && wish.word() != Word.TRAILS) {
            return new Demand(
                    wish, id, List.of(Span.ALL), List.of(), "nothing moves here that I can see: any time will do");
        }
        return switch (wish.word()) {
            case LINES -> lines(wish, region);
            case GONE -> gone(wish, region);
            case TRAILS -> {
                double from = 4 * Math.max(region.correlationSeconds(), 0.05);
                yield new Demand(
                        wish,
                        id,
                        List.of(new Span(from, Double.POSITIVE_INFINITY)),
                        List.of(),
                        "four times as long as a passage lasts");
            }
            case SHARP -> {
                double limit = SHARP_DIAGONALS * diagonal;
                double to = crossing(region.swingPixels(), limit, false);
                yield new Demand(wish, id, List.of(new Span(0, to)), List.of(new Span(0, to / 2)), "");
            }
            case STILL -> still(wish, region, diagonal, likely, high);
            case AS_SEEN -> {
                double to = crossing(likely, Word.AS_SEEN.least(), true);
                if (to == 0) {
                    yield new Demand(wish, id, List.of(), List.of(), SMOOTH_ALREADY);
                }
                double sureTo = crossing(low, Word.AS_SEEN.least(), true);
                yield new Demand(wish, id, List.of(new Span(0, to)), List.of(new Span(0, Math.min(to, sureTo))), "");
            }
            default -> smooth(wish, region, likely, high, low);
        };
    }

    private static Demand lines(Wish wish, RegionMotion region) {
        FlowLines lines = region.lines();
        double period = region.rhythm().periodSeconds();
        String waves = period > 0 ? ", waves come every " + Numbers.shortest(period, 1) + " s" : "";
        return lines.seconds() > 0
                ? new Demand(
                        wish,
                        region.part().id(),
                        List.of(new Span(lines.fromSeconds(), lines.toSeconds())),
                        List.of(),
                        "strongest at " + ShutterTime.words(lines.seconds()) + "; release as the water runs back"
                                + waves)
                : new Demand(
                        wish,
                        region.part().id(),
                        List.of(new Span(LINES_FROM, LINES_TO)),
                        List.of(),
                        "no lines seen in these frames, so by common practice; release as the water runs back" + waves);
    }

    /** Passers-by leave a veil that no time removes, and specks that a longer one does. */
    private static Demand gone(Wish wish, RegionMotion region) {
        double veil = region.passing().veil();
        double most = Word.GONE.most();
        String covered =
                "places are covered " + Rounding.up(100 * region.passing().coveredShare()) + " % of the time";
        if (veil > most) {
            return new Demand(
                    wish,
                    region.part().id(),
                    List.of(),
                    List.of(),
                    covered + ", which leaves a veil of " + Numbers.shortest(100 * veil, 1)
                            + " % at any time: take the median of a burst instead");
        }
        DoubleUnaryOperator likely =
                t -> root(region.texture() * region.at().apply(t).ratio(), veil);
        DoubleUnaryOperator high =
                t -> root(region.texture() * region.at().apply(t).high(), veil);
        double from = crossing(likely, most, true);
        double sureFrom = crossing(high, most, true);
        return new Demand(
                wish,
                region.part().id(),
                from < LONGEST ? List.of(new Span(from, Double.POSITIVE_INFINITY)) : List.of(),
                sureFrom < LONGEST ? List.of(new Span(sureFrom, Double.POSITIVE_INFINITY)) : List.of(),
                covered);
    }

    private static double root(double a, double b) {
        return Math.sqrt(a * a + b * b);
    }

    private static Demand still(
            Wish wish, RegionMotion region, double diagonal, DoubleUnaryOperator likely, DoubleUnaryOperator high) {
        double shortEnough = crossing(region.swingPixels(), SHARP_DIAGONALS * diagonal, false);
        double longEnough = crossing(likely, Word.STILL.most(), true);
        double sureLong = crossing(high, Word.STILL.most(), true);
        List<Span> spans = new ArrayList<>();
        List<Span> sure = new ArrayList<>();
        if (shortEnough > SHORTEST) {
            spans.add(new Span(0, shortEnough));
            sure.add(new Span(0, shortEnough / 2));
        }
        if (longEnough < LONGEST) {
            spans.add(new Span(longEnough, Double.POSITIVE_INFINITY));
        }
        if (sureLong < LONGEST) {
            sure.add(new Span(sureLong, Double.POSITIVE_INFINITY));
        }
        return new Demand(
                wish,
                region.part().id(),
                spans,
                sure,
                spans.isEmpty() ? "it swings at every time; choose the frame of a lull" : "");
    }

    private static Demand smooth(
            Wish wish,
            RegionMotion region,
            DoubleUnaryOperator likely,
            DoubleUnaryOperator high,
            DoubleUnaryOperator low) {
        String id = region.part().id();
        double most = wish.word().most();
        double from = crossing(likely, most, true);
        if (region.standing() > most || from >= LONGEST) {
            String why = region.standing() > most
                    ? "what stands in it (" + percent(region.standing()) + ") is more than the word allows: no time"
                            + " removes it"
                    : "not within four hours";
            return new Demand(wish, id, List.of(), List.of(), why);
        }
        double sureFrom = crossing(high, most, true);
        double to = Double.POSITIVE_INFINITY;
        double sureTo = Double.POSITIVE_INFINITY;
        if (wish.closed() && wish.word().least() > 0) {
            to = crossing(likely, wish.word().least(), true);
            sureTo = crossing(low, wish.word().least(), true);
        }
        if (to == 0) {
            return new Demand(wish, id, List.of(), List.of(), SMOOTH_ALREADY);
        }
        List<Span> sure = sureFrom <= sureTo && sureFrom < LONGEST ? List.of(new Span(sureFrom, sureTo)) : List.of();
        Remaining at = region.at().apply(from);
        String note = at.basis() == Remaining.Basis.TOO_FAR ? "the clip is too short to tell times this long" : "";
        return new Demand(wish, id, List.of(new Span(from, to)), sure, note);
    }

    private static String percent(double share) {
        return Rounding.up(100 * share) + " %";
    }

    /**
     * The time at which a curve crosses {@code limit}, by halving on a logarithmic scale; 1/8000 s when it has crossed
     * before, four hours when it never does.
     */
    private static double crossing(DoubleUnaryOperator curve, double limit, boolean falling) {
        double sign = falling ? 1 : -1;
        if (sign * (curve.applyAsDouble(SHORTEST) - limit) <= 0) {
            return falling ? 0 : SHORTEST;
        }
        if (sign * (curve.applyAsDouble(LONGEST) - limit) > 0) {
            return LONGEST;
        }
        double low = StrictMath.log(SHORTEST);
        double high = StrictMath.log(LONGEST);
        for (int k = 0; k < 50; k++) {
            double middle = (low + high) / 2;
            if (sign * (curve.applyAsDouble(StrictMath.exp(middle)) - limit) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return StrictMath.exp(high);
    }
}
