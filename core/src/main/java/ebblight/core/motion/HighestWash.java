package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;

/**
 * How far up water came while a shore was watched: every place that it reached at least once. Water is what moves in
 * a fifth of the frames and is no sky, nor branches where the parts know water from branches. A place was reached when
 * one frame differs from the place's median by more than noise and the play of light, and when such places hang together
 * with the water; people, birds and boats apart from it do not count.
 *
 * <p>What no frame shows is not in it: a wave between two frames, and the sets that come after the watch.
 */
public final class HighestWash {

    /** Not reached. */
    public static final byte NEVER = 0;

    /** Moves in every fifth frame or more. */
    public static final byte WATER = 1;

    /** Reached at least once. */
    public static final byte WASHED = 2;

    /** Reached when the water stands higher by the rise asked for. */
    public static final byte WITH_RISE = 3;

    /** Standard deviations of noise that no still place leaves in five minutes of frames. */
    private static final double NOISE = 5;

    /** Share of the median that changing light leaves of a place after the whole picture's gain is taken out. */
    private static final double LIGHT = 0.18;

    /** Water is where one frame in five is away from the median by more than {@code MOVES} of it. */
    private static final double OFTEN = 0.8;

    private static final double MOVES = 0.03;

    /** Four fifths of a normal distribution lie within so many standard deviations. */
    private static final double NOISE_OFTEN = 1.2816;

    /** A body of water fills this share of the picture, or it is none. */
    private static final double SMALLEST = 0.02;

    private static final int MEDIAN_FRAMES = 30;

    /** Pixels of the survey between water and what still hangs together with it. */
    private static final double BRIDGED = 4;

    /** The side of the square over which a difference is averaged, in pixels from its middle. */
    private static final int REACH = 1;

    private final byte[] places;
    private final double bandPixels;
    private final int highestFrame;

    private HighestWash(byte[] places, double bandPixels, int highestFrame) {
        this.places = places;
        this.bandPixels = bandPixels;
        this.highestFrame = highestFrame;
    }

    /** The wash of a survey that has parts. */
    public static HighestWash of(ViewSurvey survey) {
        ViewSurvey.Parts parts = survey.parts();
        LuminanceFrames frames = parts.frames();
        float[] median = frames.median(Work.alone());
        float[] most = new float[median.length];
        boolean[] open = open(parts.map(), median.length);
        for (int p = 0; p < median.length; p++) {
            most[p] = (float) Math.max(NOISE * Math.sqrt(parts.noise().at(median[p]) / square()), LIGHT * median[p]);
        }
        int w = frames.width();
        boolean[] water = water(parts, median, open, w);
        boolean[] near = near(water, w);
        boolean[] touched = new boolean[median.length];
        boolean[] once = new boolean[median.length];
        int[] reached = new int[frames.count()];
        for (int i = 0; i < reached.length; i++) {
            differs(frames.frame(i), median, most, w, once);
            Flood.from(near, both(once, open), w, once);
            for (int p = 0; p < once.length; p++) {
                touched[p] |= once[p];
                reached[i] += once[p] && !water[p] ? 1 : 0;
            }
        }
        byte[] places = new byte[median.length];
        double[] away = away(water, w);
        close(water, touched, w);
        double band = 0;
        int washed = 0;
        for (int p = 0; p < places.length; p++) {
            places[p] = water[p] ? WATER : touched[p] ? WASHED : NEVER;
            if (places[p] == WASHED) {
                band += away[p];
                washed++;
            }
        }
        // places of a band lie half its width from its edge, on average
        return new HighestWash(places, 2 * band / Math.max(1, washed), greatest(reached));
    }

    /** Where water may be: no sky, and no branches where there is a part that flows. */
    private static boolean[] open(RegionMap map, int pixels) {
        boolean flows = map.parts().stream().anyMatch(p -> p.kind() == Kind.FLOWING && p.areaFraction() >= SMALLEST);
        boolean[] open = new boolean[pixels];
        for (int p = 0; p < pixels; p++) {
            Kind kind = map.parts().get(map.partAt(p)).kind();
            open[p] = kind != Kind.DRIFTING && !(flows && kind == Kind.SWAYING);
        }
        return open;
    }

    private static boolean[] water(ViewSurvey.Parts parts, float[] median, boolean[] open, int w) {
        LuminanceFrames frames = parts.frames();
        int step = Math.max(1, frames.count() / MEDIAN_FRAMES);
        float[] away = new float[(frames.count() + step - 1) / step];
        boolean[] moves = new boolean[median.length];
        for (int p = 0; p < moves.length; p++) {
            for (int k = 0; k < away.length; k++) {
                away[k] = Math.abs(frames.frame(k * step)[p] - median[p]);
            }
            double noise = NOISE_OFTEN * Math.sqrt(parts.noise().at(median[p]));
            moves[p] = open[p] && Quantiles.quantile(away, away.length, OFTEN) > Math.max(2 * noise, MOVES * median[p]);
        }
        // foam that never goes and water that hardly moves part a body of water in the picture, not in truth
        boolean[] large = Flood.large(near(moves, w), w, (int) (SMALLEST * moves.length));
        return both(moves, large);
    }

    /** The water and a little round it: foam that never goes parts the two. */
    private static boolean[] near(boolean[] water, int w) {
        double[] away = away(water, w);
        boolean[] near = new boolean[water.length];
        for (int p = 0; p < near.length; p++) {
            near[p] = away[p] <= BRIDGED;
        }
        return near;
    }

    /** Small places that the water encloses were reached too. */
    private static void close(boolean[] water, boolean[] touched, int w) {
        boolean[] reached = new boolean[touched.length];
        for (int p = 0; p < reached.length; p++) {
            reached[p] = touched[p] || water[p];
        }
        boolean[] wider = near(reached, w);
        boolean[] outside = new boolean[wider.length];
        for (int p = 0; p < outside.length; p++) {
            outside[p] = !wider[p];
        }
        double[] inside = away(outside, w);
        for (int p = 0; p < touched.length; p++) {
            touched[p] |= inside[p] > BRIDGED;
        }
    }

    private static double[] away(boolean[] water, int w) {
        byte[] places = new byte[water.length];
        for (int p = 0; p < places.length; p++) {
            places[p] = water[p] ? WATER : NEVER;
        }
        return Flood.distances(places, w);
    }

    private static int square() {
        return (2 * REACH + 1) * (2 * REACH + 1);
    }

    private static boolean[] both(boolean[] one, boolean[] other) {
        boolean[] both = new boolean[one.length];
        for (int p = 0; p < both.length; p++) {
            both[p] = one[p] && other[p];
        }
        return both;
    }

    /** Where a frame, averaged over a small square, differs from the median by more than allowed. */
    private static void differs(float[] frame, float[] median, float[] most, int w, boolean[] out) {
        int h = frame.length / w;
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                double sum = 0;
                int n = 0;
                for (int v = Math.max(0, y - REACH); v <= Math.min(h - 1, y + REACH); v++) {
                    for (int u = Math.max(0, x - REACH); u <= Math.min(w - 1, x + REACH); u++) {
                        sum += frame[v * w + u] - median[v * w + u];
                        n++;
                    }
                }
                out[y * w + x] = Math.abs(sum / n) > most[y * w + x];
            }
        }
    }

    private static int greatest(int[] reached) {
        int best = 0;
        for (int i = 1; i < reached.length; i++) {
            best = reached[i] > reached[best] ? i : best;
        }
        return best;
    }

    /** What each pixel of the survey's map is: {@link #NEVER}, {@link #WATER}, {@link #WASHED}. */
    public byte[] places() {
        return places.clone();
    }

    /**
     * The same with the ground that the wash reaches when the water stands higher, if the ground goes on as steep as it
     * is between the usual water and the highest wash. An estimate: ground is not even, and a picture is no map.
     *
     * @param share the rise as a share of the height of the highest wash above the usual water, 0 or more
     * @param width of the map in pixels
     */
    public byte[] places(double share, int width) {
        double[] away = Flood.distances(places, width);
        byte[] risen = places.clone();
        for (int p = 0; p < risen.length; p++) {
            if (risen[p] == NEVER && away[p] <= share * bandPixels) {
                risen[p] = WITH_RISE;
            }
        }
        return risen;
    }

    /** From the usual water's edge to the highest wash, in survey pixels, on average; 0 when nothing was washed. */
    public double bandPixels() {
        return bandPixels;
    }

    /** The frame in which the water covered most ground. */
    public int highestFrame() {
        return highestFrame;
    }
}
