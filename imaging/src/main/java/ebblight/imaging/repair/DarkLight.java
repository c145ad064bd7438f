package ebblight.imaging.repair;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * What a sensor gives without light in the time of one picture: from dark frames of that time, or from those of another
 * time, scaled, when dark frames of two times show that it grows as time does.
 *
 * @param light of the dark frames that are used
 * @param lone hot pixels in it, by colour
 * @param step linear light of the smallest code of their files
 * @param scale from their time to the picture's; not a number when nothing tells it: then only places are known
 * @param words how it was come by
 */
record DarkLight(RgbPicture light, Lone[] lone, double step, double scale, String words) {

    /** Growth with time counts as measured when it follows the ratio of times within this many stops. */
    private static final double MOST_OFF = 0.25;
    /** Noises above which a pixel of a dark frame is hot. */
    static final double HOT = 6;
    /** Steps of the files' codes that it must also stand out: one may be noise, and one rounding. */
    private static final double LEAST_STEPS = 2.5;

    static DarkLight of(DarkFrames frames, OptionalDouble seconds, Work work) {
        DarkFrames.Mean matching = frames.matching(seconds);
        List<DarkFrames.Mean> means = frames.means();
        if (matching != null) {
            return of(matching, 1, "dark frames of the picture's time (" + matching.frames() + ")", work);
        }
        DarkFrames.Mean longest = means.get(0);
        if (seconds.isEmpty() || longest.seconds().isEmpty()) {
            return of(longest, 1, "dark frames taken to match: times are not told", work);
        }
        double times = seconds.getAsDouble() / longest.seconds().getAsDouble();
        OptionalDouble growth = growth(means, work);
        if (growth.isEmpty()) {
            return of(
                    longest,
                    Double.NaN,
                    "dark frames of another time, and whether it grows as time does is not"
                            + " measured: only places are used",
                    work);
        }
        String measured = String.format(Locale.ROOT, "%.2f", growth.getAsDouble());
        return Math.abs(growth.getAsDouble()) <= MOST_OFF
                ? of(
                        longest,
                        times,
                        "dark frames of another time, scaled by time as measured (" + measured + " stop off)",
                        work)
                : of(
                        longest,
                        Double.NaN,
                        "dark frames of another time, and it does not grow as time does (" + measured
                                + " stop off): only places are used",
                        work);
    }

    private static DarkLight of(DarkFrames.Mean mean, double scale, String words, Work work) {
        RgbPicture light = mean.light();
        Lone[] lone = new Lone[3];
        for (int c = 0; c < 3; c++) {
            lone[c] = Lone.of(light.plane(c), light.width(), light.height(), work);
        }
        return new DarkLight(light, lone, mean.step(), scale, words);
    }

    /** Stops by which hot pixels grow faster than time between the two longest times; empty when it cannot be told. */
    private static OptionalDouble growth(List<DarkFrames.Mean> means, Work work) {
        if (means.size() < 2 || means.get(1).seconds().isEmpty()) {
            return OptionalDouble.empty();
        }
        DarkLight one = of(means.get(0), 1, "", work);
        DarkLight other = of(means.get(1), 1, "", work);
        double expected =
                means.get(0).seconds().orElse(1) / means.get(1).seconds().orElse(1);
        int n = one.light.width() * one.light.height();
        double[] ratios = new double[n];
        int found = 0;
        for (int i = 0; i < n; i++) {
            int c = one.hottest(i);
            // both far above the noise, neither clipped
            if (one.excess(c, i) > 4 * HOT * one.noise(c)
                    && one.light.plane(c)[i] < 0.9
                    && other.excess(c, i) > 2 * HOT * other.noise(c)) {
                ratios[found++] = Math.log(one.excess(c, i) / other.excess(c, i) / expected) / Math.log(2);
            }
        }
        return found < 3 ? OptionalDouble.empty() : OptionalDouble.of(Quantiles.median(ratios, found));
    }

    /** Whether pixel {@code i} is hot. */
    boolean hot(int i) {
        int c = hottest(i);
        return excess(c, i) > Math.max(HOT * noise(c), LEAST_STEPS * step);
    }

    /** The colour in which pixel {@code i} stands out most. */
    int hottest(int i) {
        int best = 0;
        for (int c = 1; c < 3; c++) {
            best = lone[c].above(i) > lone[best].above(i) ? c : best;
        }
        return best;
    }

    /** Light of pixel {@code i} above those round it. */
    double excess(int c, int i) {
        return lone[c].above(i);
    }

    /** At least what rounding to codes leaves (step / √12). */
    double noise(int c) {
        return Math.max(lone[c].noise(), step / Math.sqrt(12));
    }
}
