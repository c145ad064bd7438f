package ebblight.core.exposure;

import ebblight.core.numeric.Powers;
import ebblight.core.optics.DepthOfField;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Finds filters, aperture and sensitivity that reach a shutter time in the light there is. Every subset of the bag,
 * every third of a stop of aperture and the sensitivity that fits best are tried; the ranking sums what each costs.
 */
public final class SettingsSolver {

    /** A single wished time is met within this. */
    private static final double MEETS_STOPS = 1.0 / 3 + 1e-9;

    private static final int MOST_CHOICES = 9;
    private static final int MOST_PER_STACK = 2;

    /** A dial moves a time by a sixth of a stop at most: nothing beyond half a stop of the wish can meet it. */
    private static final double NEAR_TIMES = 0.7;

    private final SettingsRequest request;
    private final double exposureValue;
    private final double[] fNumbers;
    private final double[] isos;

    private SettingsSolver(SettingsRequest request) {
        this.request = request;
        exposureValue = request.meter().exposureValue100() - request.biasStops();
        Camera camera = request.camera();
        fNumbers = thirds(6, camera.widestFNumber(), camera.narrowestFNumber(), ThirdStops::fNumber);
        isos = thirds(3, camera.lowestIso() / 100, camera.highestIso() / 100, ThirdStops::iso);
    }

    /** The steps of a dial between two of its values, both included. */
    private static double[] thirds(int perDoubling, double from, double to, IntToDoubleFunction dial) {
        int first = (int) Math.ceil(perDoubling * Powers.log2(from) - 1e-6);
        int last = (int) Math.floor(perDoubling * Powers.log2(to) + 1e-6);
        return IntStream.rangeClosed(first, last).mapToDouble(dial).toArray();
    }

    /** Solves a request; choices best first, or ways out where there is none. */
    public static SettingsAnswer solve(SettingsRequest request) {
        return new SettingsSolver(request).answer();
    }

    private SettingsAnswer answer() {
        List<Choice> all = new ArrayList<>();
        List<List<Filter>> stacks = stacks();
        for (List<Filter> stack : stacks) {
            all.addAll(bestOf(stack));
        }
        all.sort(Comparator.comparingDouble(Choice::totalCost).thenComparingDouble(c -> c.stops()));
        List<Choice> kept = all.size() > MOST_CHOICES ? all.subList(0, MOST_CHOICES) : all;
        List<WayOut> ways = kept.isEmpty() ? WaysOut.of(request, exposureValue, stacks) : List.of();
        return new SettingsAnswer(
                request.meter().exposureValue100(), kept, ways, Reach.of(request, exposureValue, stacks));
    }

    /** Every set of filters that may be on the lens: neutral ones up to the stack limit, the others always apart. */
    private List<List<Filter>> stacks() {
        List<Filter> bag = request.bag();
        List<List<Filter>> stacks = new ArrayList<>();
        for (int mask = 0; mask < 1 << bag.size(); mask++) {
            List<Filter> stack = new ArrayList<>();
            int dense = 0;
            int variable = 0;
            for (int k = 0; k < bag.size(); k++) {
                if ((mask & 1 << k) != 0) {
                    Filter filter = bag.get(k);
                    stack.add(filter);
                    dense += filter.kind() == Filter.Kind.NEUTRAL ? 1 : 0;
                    variable += filter.kind() == Filter.Kind.VARIABLE || filter.kind() == Filter.Kind.POLARISER ? 1 : 0;
                }
            }
            boolean graduatedAlone = stack.stream().anyMatch(f -> f.kind() == Filter.Kind.GRADUATED);
            if (dense <= request.maxStack() && variable <= 1 && !graduatedAlone) {
                stack.sort(Comparator.comparingDouble((Filter f) -> -f.stops()));
                stacks.add(stack);
            }
        }
        return stacks;
    }

    /** The best settings with one set of filters, the second only when its aperture differs by a stop. */
    private List<Choice> bestOf(List<Filter> stack) {
        double stops = 0;
        double variance = 0;
        for (Filter filter : stack) {
            stops += filter.stops();
            variance += filter.rangeStops() * filter.rangeStops();
        }
        List<Choice> found = new ArrayList<>();
        for (double fNumber : fNumbers) {
            for (double iso : isos) {
                double needed = neededSeconds(exposureValue, stops, fNumber, iso);
                if (needed > NEAR_TIMES * request.fromSeconds() && needed * NEAR_TIMES < request.toSeconds()) {
                    choice(stack, stops, variance, fNumber, iso, needed).ifPresent(found::add);
                }
            }
        }
        found.sort(Comparator.comparingDouble(Choice::totalCost));
        List<Choice> kept = new ArrayList<>();
        for (Choice choice : found) {
            boolean different =
                    kept.stream().allMatch(k -> Math.abs(2 * Powers.log2(k.fNumber() / choice.fNumber())) >= 1 - 1e-9);
            if (different && kept.size() < MOST_PER_STACK) {
                kept.add(choice);
            }
        }
        return kept;
    }

    /** Seconds that the light as metered asks for. */
    static double neededSeconds(double exposureValue, double stops, double fNumber, double iso) {
        return fNumber * fNumber * 100 / iso * Powers.exp2(stops - exposureValue);
    }

    private Optional<Choice> choice(
            List<Filter> stack, double stops, double variance, double fNumber, double iso, double needed) {
        Camera camera = request.camera();
        OptionalDouble lit = request.light().openFor(needed);
        if (lit.isEmpty()) {
            return Optional.empty();
        }
        double open = request.reciprocity().corrected(lit.getAsDouble());
        boolean timed = open <= camera.timedLimitSeconds() * (1 + 1e-9);
        double seconds = needed;
        String dial;
        if (timed) {
            int step = ThirdStops.timeStep(open);
            if (step < ThirdStops.firstTimeStep()) {
                return Optional.empty();
            }
            double set = ThirdStops.seconds(step);
            // What the dial can do moves the time as metered by the same share.
            seconds = needed * set / open;
            open = set;
            dial = ThirdStops.timeLabel(step);
        } else {
            dial = "bulb " + ShutterTime.words(open);
        }
        double off = Powers.log2(seconds / request.aimSeconds());
        boolean single = request.toSeconds() <= request.fromSeconds() * 1.01;
        boolean meets = single
                ? Math.abs(off) <= MEETS_STOPS
                : seconds >= request.fromSeconds() * 0.999 && seconds <= request.toSeconds() * 1.001;
        if (!meets) {
            return Optional.empty();
        }
        Optional<DepthOfField> depth = request.depth()
                .map(d -> DepthOfField.at(
                        DepthOfField.focusBetween(d.nearestMetres(), d.farthestMetres()),
                        camera.focalMillimetres(),
                        fNumber,
                        camera.circleMillimetres()));
        List<Choice.Cost> costs = Costs.of(request, stack, fNumber, iso, seconds, open, timed, depth);
        double gathered = gathered(open);
        return Optional.of(new Choice(
                stack,
                stops,
                fNumber,
                iso,
                seconds,
                open,
                dial,
                timed,
                camera.busySeconds(open),
                depth,
                costs,
                Powers.log2(gathered / needed),
                Math.sqrt(variance)));
    }

    /** The forward calculation: seconds of metered light that an open time gathers. */
    private double gathered(double openSeconds) {
        double film = openSeconds;
        if (openSeconds > 1 && request.reciprocity().exponent() > 1) {
            film = Powers.pow(openSeconds, 1 / request.reciprocity().exponent());
        }
        return request.light().gathered(film);
    }
}
