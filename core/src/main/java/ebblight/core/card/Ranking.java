package ebblight.core.card;

import ebblight.core.exposure.Numbers;
import ebblight.core.numeric.Powers;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The order of the frames of one view, each with its written reasons. Every fault costs so many points; a point is
 * about what a photographer gives up a stop of smoothness for (our own weights, from no standard).
 */
public final class Ranking {

    private static final double PER_STOP_OF_SHARPNESS = 4;
    private static final double ROUGH = 2;
    /** Points within which two frames are alike. */
    private static final double NEAR = 0.3;

    private static final double PER_STOP_OF_CLIPPING = 0.4;
    private static final double MOST_CLIPPING = 2.5;
    private static final double PER_STOP_OF_LEVEL = 0.6;
    private static final double PER_STOP_OF_VEIL = 0.6;
    private static final double PER_DEGREE = 0.1;
    private static final double PER_TEN_HOT = 0.05;

    /** Clipping below this share is that of lamps and glints. */
    private static final double CLIPPED = 0.002;
    /** Differences of level below this are within what one develops away. */
    private static final double OFF_STOPS = 0.7;

    private static final double VEILED_STOPS = 0.5;
    private static final double TILTED_DEGREES = 0.4;
    /** Sharpness above which no eye sees the difference at print size (common practice). */
    public static final double SHARP = 0.92;

    private Ranking() {}

    /** Indices of {@code frames}, the best first. */
    public static List<Integer> order(List<Measured> frames) {
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < frames.size(); i++) {
            order.add(i);
        }
        order.sort(Comparator.comparingDouble(i -> cost(frames.get(i))));
        return order;
    }

    /** Whether a frame is {@code best} or would serve nearly as well. */
    public static boolean near(Measured frame, Measured best) {
        return cost(frame) - cost(best) < NEAR;
    }

    private static double cost(Measured f) {
        double cost = 0;
        if (f.fixedSharpness() > 0) { // false for not a number
            cost += PER_STOP_OF_SHARPNESS * -Powers.log2(Math.min(1, f.fixedSharpness()));
        }
        if (f.smoothness() <= 1) {
            cost += ROUGH * (1 - f.smoothness());
        }
        if (f.clippedFraction() > CLIPPED) {
            cost += Math.min(MOST_CLIPPING, PER_STOP_OF_CLIPPING * Powers.log2(f.clippedFraction() / CLIPPED));
        }
        if (Math.abs(f.levelStops()) > OFF_STOPS) {
            cost += PER_STOP_OF_LEVEL * (Math.abs(f.levelStops()) - OFF_STOPS);
        }
        if (f.veilStops() > VEILED_STOPS) {
            cost += PER_STOP_OF_VEIL * f.veilStops();
        }
        if (Math.abs(f.tiltDegrees()) > TILTED_DEGREES) {
            cost += PER_DEGREE * Math.min(5, Math.abs(f.tiltDegrees()));
        }
        return cost + PER_TEN_HOT * Powers.log2(1 + f.hotPixels()) / Powers.log2(10);
    }

    /** Why a frame stands where it does, in words, what weighs most first. */
    public static List<String> notes(Measured f, List<Measured> all) {
        List<String> notes = new ArrayList<>();
        if (all.size() > 1) {
            sharpness(f, notes);
            smoothness(f, all, notes);
        } else {
            notes.add("the only frame of this view: nothing to hold it against");
        }
        if (f.clippedFraction() > CLIPPED) {
            notes.add(percent(f.clippedFraction()) + " of it is clipped");
        }
        if (Math.abs(f.levelStops()) > OFF_STOPS) {
            notes.add(Numbers.stops(Math.abs(f.levelStops())) + " " + (f.levelStops() > 0 ? "brighter" : "darker")
                    + " than the middle of this view");
        }
        if (f.veilStops() > VEILED_STOPS) {
            notes.add("stray light lifts the shadows by " + Numbers.stops(f.veilStops())
                    + ": sun on the glass, or light in by the eyepiece");
        }
        if (Math.abs(f.tiltDegrees()) > TILTED_DEGREES) {
            notes.add("horizon " + Numbers.shortest(Math.abs(f.tiltDegrees()), 1) + "° lower on the "
                    + (f.tiltDegrees() > 0 ? "right" : "left"));
        }
        if (f.hotPixels() > 0) {
            notes.add(f.hotPixels()
                    + (f.hotPixels() == 1 ? " hot pixel" : " hot pixels")
                    + (f.hotSure() ? "" : ", or stars or spray: no other frame tells"));
        }
        return notes;
    }

    private static void sharpness(Measured f, List<String> notes) {
        String share = Numbers.shortest(100 * f.fixedSharpness(), 0) + " % of the best's detail";
        if (Double.isNaN(f.fixedSharpness())) {
            notes.add("nothing that stands still to judge its sharpness by");
        } else if (f.veilStops() > VEILED_STOPS && -Powers.log2(Math.min(1, f.fixedSharpness())) <= f.veilStops()) {
            // light that is added takes contrast from all of the picture, in the shadows as many stops as it lifts them
            notes.add("still parts hold " + share + ", which the stray light explains");
        } else if (f.softness() == Measured.Softness.PARTS) {
            notes.add(percent(f.softShare()) + " of the picture is soft, the rest sharp: something moved there (wind),"
                    + " not the tripod");
        } else if (f.fixedSharpness() >= SHARP) {
            notes.add("still parts as sharp as the best of this view");
        } else if (f.softness() == Measured.Softness.SHAKEN) {
            notes.add("shaken: still parts hold " + share + ", lost all over the picture and one way");
        } else {
            notes.add("soft: still parts hold " + share + ", lost all over the picture: shaken, or out of focus");
        }
    }

    private static void smoothness(Measured f, List<Measured> all, List<String> notes) {
        if (Double.isNaN(f.smoothness())) {
            return;
        }
        double smoothest = 0;
        for (Measured each : all) {
            smoothest = each.smoothness() > smoothest ? each.smoothness() : smoothest;
        }
        String left = percent(1 - f.smoothness()) + " of the flow's texture is left";
        notes.add(f.smoothness() >= smoothest - 0.03 ? left + ", the smoothest of this view" : left);
    }

    private static String percent(double share) {
        return Numbers.shortest(100 * share, share < 0.0995 ? 1 : 0) + " %";
    }
}
