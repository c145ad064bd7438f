package ebblight.core.exposure;

import ebblight.core.numeric.Powers;
import java.util.ArrayList;
import java.util.List;

/** What can be done where no setting reaches the time wished for. */
final class WaysOut {

    private static final int MOST_FRAMES = 999;

    private WaysOut() {}

    static List<WayOut> of(SettingsRequest request, double exposureValue, List<List<Filter>> stacks) {
        Camera camera = request.camera();
        double longest = 0;
        double shortest = Double.POSITIVE_INFINITY;
        for (List<Filter> stack : stacks) {
            double stops = 0;
            for (Filter filter : stack) {
                stops += filter.stops();
            }
            longest = Math.max(
                    longest,
                    SettingsSolver.neededSeconds(exposureValue, stops, camera.narrowestFNumber(), camera.lowestIso()));
            shortest = Math.min(
                    shortest,
                    SettingsSolver.neededSeconds(exposureValue, stops, camera.widestFNumber(), camera.highestIso()));
        }
        double equivalent = request.light().longestEquivalentSeconds();
        if (longest < request.fromSeconds()) {
            return tooBright(request, exposureValue, longest);
        }
        if (shortest > request.toSeconds()) {
            return tooDark(request, exposureValue, shortest);
        }
        List<WayOut> ways = new ArrayList<>();
        if (equivalent < SettingsSolver.neededSeconds(exposureValue, 0, camera.widestFNumber(), camera.highestIso())
                || equivalent < request.aimSeconds()) {
            ways.add(new WayOut(
                    WayOut.Kind.TIME,
                    Powers.log2(request.aimSeconds() / equivalent),
                    "the light fades faster than it gathers: no more than " + ShutterTime.words(equivalent)
                            + " of the light now can ever be gathered"));
        }
        ways.add(new WayOut(
                WayOut.Kind.TIME, 0, "between two dial times: ask for a range (--from, --to) instead of one time"));
        ways.add(burst(request, Math.min(longest, request.fromSeconds() / 2)));
        return ways;
    }

    private static List<WayOut> tooBright(SettingsRequest request, double exposureValue, double longest) {
        double missing = Powers.log2(request.fromSeconds() / longest);
        List<WayOut> ways = new ArrayList<>();
        ways.add(new WayOut(
                WayOut.Kind.FILTER,
                missing,
                "a filter that takes " + Numbers.stops(missing) + " more than the bag reaches ("
                        + ShutterTime.words(longest) + " at "
                        + ThirdStops.fLabel(request.camera().narrowestFNumber())
                        + " ISO " + ThirdStops.isoLabel(request.camera().lowestIso()) + ")"));
        double rate = request.light().stopsPerMinute();
        String when =
                rate > 0 ? ", in about " + Numbers.shortest(missing / rate, 0) + " min at the rate it fades now" : "";
        ways.add(new WayOut(
                WayOut.Kind.WAIT,
                missing,
                "wait until the light has fallen by " + Numbers.stops(missing) + ", to EV100 "
                        + Numbers.shortest(exposureValue + request.biasStops() - missing, 1) + when));
        ways.add(burst(request, longest));
        return ways;
    }

    private static WayOut burst(SettingsRequest request, double frameSeconds) {
        int frames = frames(request.fromSeconds() / frameSeconds);
        return new WayOut(
                WayOut.Kind.BURST,
                Powers.log2(request.fromSeconds() / frameSeconds),
                "stack a burst: " + frames + " frames of " + ShutterTime.words(frameSeconds) + " one after the other"
                        + (frames == MOST_FRAMES ? " (more than a camera should be asked for)" : ""));
    }

    /** So many frames, that rounding does not add one. */
    private static int frames(double times) {
        return (int) Math.min(MOST_FRAMES, Math.ceil(times - 1e-9 * times));
    }

    private static List<WayOut> tooDark(SettingsRequest request, double exposureValue, double shortest) {
        double missing = Powers.log2(shortest / request.toSeconds());
        return List.of(
                new WayOut(
                        WayOut.Kind.TIME,
                        missing,
                        "take " + ShutterTime.words(shortest) + ": even at "
                                + ThirdStops.fLabel(request.camera().widestFNumber()) + " and ISO "
                                + ThirdStops.isoLabel(request.camera().highestIso()) + " without a filter it is "
                                + Numbers.stops(missing) + " too dark for the time asked"),
                new WayOut(
                        WayOut.Kind.WAIT,
                        -missing,
                        "come when it is " + Numbers.stops(missing) + " brighter, at EV100 "
                                + Numbers.shortest(exposureValue + request.biasStops() + missing, 1)),
                new WayOut(
                        WayOut.Kind.BURST,
                        missing,
                        "expose darker and stack: " + frames(Powers.exp2(missing))
                                + " frames of " + ShutterTime.words(request.toSeconds())
                                + " added up gather the same light"));
    }
}
