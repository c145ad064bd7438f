package ebblight.core.exposure;

import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Rounding;

/**
 * The third-stop series of apertures (ISO 517), shutter times (ISO 516) and sensitivities (ISO 12232): the labels on
 * the dial and the exact powers of two behind them (the standards from memory; the labels are common practice).
 */
public final class ThirdStops {

    /** A typed aperture or sensitivity this near a label means the exact value behind it. */
    static final double NEAR_LABEL_STOPS = 0.15;

    /** An f-number that came as a fraction is the label's but for the last bits. */
    private static final double WRITTEN_ALIKE = 1e-6;

    /** Cameras write the time of a dial to about this share. */
    private static final double SAME_LABEL = 0.01;

    private static final String[] F_LABELS = {
        "1", "1.1", "1.2", "1.4", "1.6", "1.8", "2", "2.2", "2.5", "2.8", "3.2", "3.5", "4", "4.5", "5", "5.6", "6.3",
        "7.1", "8", "9", "10", "11", "13", "14", "16", "18", "20", "22", "25", "29", "32", "36", "40", "45", "51", "57",
        "64"
    };

    private static final String[] ISO_LABELS = {
        "25", "32", "40", "50", "64", "80", "100", "125", "160", "200", "250", "320", "400", "500", "640", "800",
        "1000", "1250", "1600", "2000", "2500", "3200", "4000", "5000", "6400", "8000", "10000", "12800", "16000",
        "20000", "25600", "32000", "40000", "51200", "64000", "80000", "102400"
    };

    private static final String[] TIME_LABELS = {
        "1/8000", "1/6400", "1/5000", "1/4000", "1/3200", "1/2500", "1/2000", "1/1600", "1/1250", "1/1000", "1/800",
        "1/640", "1/500", "1/400", "1/320", "1/250", "1/200", "1/160", "1/125", "1/100", "1/80", "1/60", "1/50", "1/40",
        "1/30", "1/25", "1/20", "1/15", "1/13", "1/10", "1/8", "1/6", "1/5", "1/4", "0.3s", "0.4s", "0.5s", "0.6s",
        "0.8s", "1s", "1.3s", "1.6s", "2s", "2.5s", "3.2s", "4s", "5s", "6s", "8s", "10s", "13s", "15s", "20s", "25s",
        "30s"
    };

    private static final int FIRST_ISO = -6;
    private static final int FIRST_TIME = -39;

    private ThirdStops() {}

    /** Exact f-number of third-stop step {@code k} from f/1: 2^(k/6). */
    public static double fNumber(int k) {
        return Powers.exp2(k / 6.0);
    }

    /** Exact sensitivity of step {@code k} from ISO 100. */
    public static double iso(int k) {
        return 100 * Powers.exp2(k / 3.0);
    }

    /** Exact shutter time in seconds of step {@code k} from 1 s. */
    public static double seconds(int k) {
        return Powers.exp2(k / 3.0);
    }

    /** Steps from f/1 nearest to an f-number. */
    public static int fStep(double fNumber) {
        return (int) Rounding.up(6 * Powers.log2(fNumber));
    }

    /** Steps from ISO 100 nearest to a sensitivity. */
    public static int isoStep(double iso) {
        return (int) Rounding.up(3 * Powers.log2(iso / 100));
    }

    /** Steps from 1 s nearest to a shutter time. */
    public static int timeStep(double seconds) {
        return (int) Rounding.up(3 * Powers.log2(seconds));
    }

    /**
     * The exact value behind a typed f-number: that of a label of the dial, else the nearest third or half of a stop, as on
     * dials of halves (1.7, 3.3, 6.7), else the typed value. f/1.2 and f/13 stand on both dials and mean the third.
     */
    public static double exactFNumber(double typed) {
        int k = fStep(typed);
        double third = fNumber(k);
        double half = Powers.exp2(Rounding.up(4 * Powers.log2(typed)) / 4.0);
        boolean onDial = k >= 0 && k < F_LABELS.length;
        if (onDial && Math.abs(typed - Double.parseDouble(F_LABELS[k])) < WRITTEN_ALIKE) {
            return third;
        }
        boolean nearerThird = onDial && Math.abs(Powers.log2(typed / third)) <= Math.abs(Powers.log2(typed / half));
        double exact = nearerThird ? third : half;
        return near(typed, exact, 2) ? exact : typed;
    }

    /** The exact value behind a typed sensitivity when it is near a label, else the typed value. */
    public static double exactIso(double typed) {
        double exact = iso(isoStep(typed));
        return near(typed, exact, 1) ? exact : typed;
    }

    /**
     * The exact time behind one that stands on a dial; any other, such as one timed by hand, is as given.
     *
     * @param written seconds as a camera writes them
     */
    public static double exactSeconds(double written) {
        int at = timeStep(written) - FIRST_TIME;
        if (at < 0 || at >= TIME_LABELS.length) {
            return written;
        }
        double label = ShutterTime.parse(TIME_LABELS[at]);
        return Math.abs(written / label - 1) <= SAME_LABEL ? seconds(at + FIRST_TIME) : written;
    }

    private static boolean near(double typed, double exact, int stopsPerDoubling) {
        return Math.abs(stopsPerDoubling * Powers.log2(typed / exact)) <= NEAR_LABEL_STOPS;
    }

    /** The label of an f-number: that of the dial where it is one, else two decimals. */
    public static String fLabel(double fNumber) {
        int k = fStep(fNumber);
        boolean onDial = k >= 0 && k < F_LABELS.length && Math.abs(2 * Powers.log2(fNumber / fNumber(k))) < 1e-6;
        return "f/" + (onDial ? F_LABELS[k] : Numbers.shortest(fNumber, 2));
    }

    /** The label of a sensitivity, without "ISO". */
    public static String isoLabel(double iso) {
        int k = isoStep(iso) - FIRST_ISO;
        boolean onDial = k >= 0 && k < ISO_LABELS.length && Math.abs(Powers.log2(iso / iso(k + FIRST_ISO))) < 1e-6;
        return onDial ? ISO_LABELS[k] : Numbers.shortest(iso, 0);
    }

    /** The nominal value of an ISO label as a number. */
    public static double isoNominal(double iso) {
        return Double.parseDouble(isoLabel(iso));
    }

    /** The nominal value of an f-number label as a number. */
    public static double fNominal(double fNumber) {
        return Double.parseDouble(fLabel(fNumber).substring(2));
    }

    /**
     * The label of the shutter time of step {@code k}; the common dial ends at 30 s, which is 32 s. Cameras that count
     * further themselves are told the seconds in words.
     */
    static String timeLabel(int k) {
        int at = k - FIRST_TIME;
        if (at >= TIME_LABELS.length) {
            return ShutterTime.words(seconds(k));
        }
        if (at < 0) {
            throw new IllegalArgumentException("no dial has a shutter time of step " + k);
        }
        return TIME_LABELS[at];
    }

    static int firstTimeStep() {
        return FIRST_TIME;
    }
}
