package ebblight.demo;

import ebblight.core.motion.Kind;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;

/**
 * Tarrow Ledge, an invented shore on an evening with a light wind: a sea of known waves, clouds that drift at a known
 * speed, a post that stands, a branch that sways, and light that fades evenly. All places are fractions of the width,
 * so every size of picture shows the same scene. Frames are scene-linear and free of noise.
 */
public final class Coast {

    /** The story that the demo tells. */
    public static final String STORY =
            "Tarrow Ledge, an hour before dark. The ebb has bared the old mooring post; a breath of wind keeps the\n"
                    + "water in short ripples while the cloud walks seaward. The ash branch from the bank will not hold"
                    + " still.\n"
                    + "How long must the shutter stay open for the water to lie down before the cloud smears?";

    /** Height of a picture over its width. */
    public static final double ASPECT = 2.0 / 3;

    private static final double HORIZON = 0.27;
    private static final double FOCAL = 0.95;
    private static final double EYE_METRES = 2;
    private static final double DRIFT_WIDTHS_PER_SECOND = 0.004;
    private static final double POST_LEFT = 0.30;
    private static final double POST_RIGHT = 0.335;
    private static final double POST_TOP = 0.20;
    private static final double POST_FOOT = 0.47;
    private static final double SWING_WIDTHS = 0.006;
    private static final double SWING_HERTZ = 0.45;

    private final Sea sea;
    private final Clouds clouds = new Clouds(5);
    private final double fadingStopsPerMinute;

    private Coast(Weather weather, double fadingStopsPerMinute) {
        this.sea = new Sea(weather);
        this.fadingStopsPerMinute = fadingStopsPerMinute;
    }

    /** The evening of the demo outing: the light fades by 0.15 stops a minute. */
    public static Coast evening() {
        return new Coast(Weather.EVENING, 0.15);
    }

    /** The same shore in other weather and steady light. */
    public static Coast in(Weather weather) {
        return new Coast(weather, 0);
    }

    /** Height in pixels of a picture of {@code width}. */
    public static int height(int width) {
        return (int) Math.round(width * ASPECT);
    }

    /** True drift of the clouds to the right, in pixels a second of a picture of {@code width}. */
    public static double driftPixelsPerSecond(int width) {
        return DRIFT_WIDTHS_PER_SECOND * width;
    }

    /** True fading in stops a minute. */
    public double fadingStopsPerMinute() {
        return fadingStopsPerMinute;
    }

    /** One instant. */
    public RgbPicture frame(double timeSeconds, int width) {
        return frame(timeSeconds, width, new Sea.State());
    }

    private RgbPicture frame(double timeSeconds, int width, Sea.State state) {
        int height = height(width);
        RgbPicture picture = RgbPicture.black(width, height);
        sea.at(timeSeconds, state);
        double light = StrictMath.exp(-fadingStopsPerMinute / 60 * timeSeconds * StrictMath.log(2));
        double[] colour = new double[3];
        for (int y = 0; y < height; y++) {
            double v = (y + 0.5) / width;
            for (int x = 0; x < width; x++) {
                double u = (x + 0.5) / width;
                if (v < HORIZON) {
                    sky(u, v, timeSeconds, colour);
                } else {
                    water(u, v, width, timeSeconds, state, colour);
                }
                standing(u, v, colour);
                branch(u, v, timeSeconds, width, colour);
                int p = y * width + x;
                for (int c = 0; c < 3; c++) {
                    picture.plane(c)[p] = (float) (colour[c] * light);
                }
            }
        }
        return picture;
    }

    /**
     * A true exposure: the mean of frames spread evenly over the time, {@code perSecond} a second and 8 at least.
     * With 12 a second the mean of the sea is within 1 % of one with 48.
     */
    public RgbPicture exposure(double startSeconds, double seconds, int width, double perSecond, Work work) {
        int frames = (int) Math.max(8, Math.ceil(seconds * perSecond));
        int pieces = Math.min(16, frames);
        int n = width * height(width);
        double[][][] sums = new double[pieces][3][];
        work.forEach(pieces, piece -> {
            Sea.State state = new Sea.State();
            double[][] sum = new double[3][n];
            for (int i = piece * frames / pieces; i < (piece + 1) * frames / pieces; i++) {
                work.check();
                RgbPicture frame = frame(startSeconds + (i + 0.5) * seconds / frames, width, state);
                for (int c = 0; c < 3; c++) {
                    float[] plane = frame.plane(c);
                    for (int p = 0; p < n; p++) {
                        sum[c][p] += plane[p];
                    }
                }
            }
            sums[piece] = sum;
        });
        RgbPicture mean = RgbPicture.black(width, height(width));
        for (int c = 0; c < 3; c++) {
            for (int p = 0; p < n; p++) {
                double sum = 0;
                for (int piece = 0; piece < pieces; piece++) {
                    sum += sums[piece][c][p];
                }
                mean.plane(c)[p] = (float) (sum / frames);
            }
        }
        return mean;
    }

    /** How each pixel truly moves; pixels that the branch reaches only now and then count as swaying. */
    public static Kind kind(double u, double v) {
        if (inPost(u, v) > 0.5 || v > shore(u)) {
            return Kind.FIXED;
        }
        if (branchCover(u, v, 1000) > 0 || branchCover(u, v + SWING_WIDTHS, 1000) > 0) {
            return Kind.SWAYING;
        }
        return v < HORIZON ? Kind.DRIFTING : Kind.FLOWING;
    }

    private void sky(double u, double v, double time, double[] colour) {
        double up = Math.max(0, (HORIZON - v) / HORIZON);
        double glow = StrictMath.exp(-((u - 0.72) * (u - 0.72)) / 0.06 - up * up / 0.25);
        double cover = clouds.cover((u - DRIFT_WIDTHS_PER_SECOND * time) * 0.9, v * 1.6);
        double r = 0.20 + 0.10 * (1 - up) + 0.42 * glow;
        double g = 0.24 + 0.06 * (1 - up) + 0.22 * glow;
        double b = 0.36 - 0.06 * (1 - up) + 0.06 * glow;
        colour[0] = r * (1 - cover) + cover * (0.42 + 0.30 * glow);
        colour[1] = g * (1 - cover) + cover * (0.36 + 0.16 * glow);
        colour[2] = b * (1 - cover) + cover * (0.36 + 0.04 * glow);
    }

    private void water(double u, double v, int width, double time, Sea.State state, double[] colour) {
        double down = (v - HORIZON + 0.5 / width) / FOCAL;
        double across = (u - 0.5) / FOCAL;
        double distance = EYE_METRES / down;
        double x = distance * across;
        double footprint = distance * distance / (EYE_METRES * FOCAL * width);
        double slopeX = 0;
        double slopeY = 0;
        for (int i = 0; i < 3; i++) {
            SlopeField field = state.fields[i];
            double grid = sea.cascade(i).tileMetres() / field.side;
            double level =
                    Math.max(0, Math.min(field.levels - 1, StrictMath.log(footprint / grid) / StrictMath.log(2)));
            int l = (int) Math.round(level);
            double fade = Math.min(1, grid * field.side / (4 * footprint));
            slopeX += fade * slope(field, l, x / grid, distance / grid, 0);
            slopeY += fade * slope(field, l, x / grid, distance / grid, 1);
        }
        double length = Math.sqrt(x * x + distance * distance + EYE_METRES * EYE_METRES);
        double vx = -x / length;
        double vy = -distance / length;
        double vz = EYE_METRES / length;
        double inverse = 1 / Math.sqrt(1 + slopeX * slopeX + slopeY * slopeY);
        double facing = Math.max(0.01, (-slopeX * vx - slopeY * vy + vz) * inverse);
        double rx = 2 * facing * (-slopeX * inverse) - vx;
        double ry = 2 * facing * (-slopeY * inverse) - vy;
        double rz = Math.abs(2 * facing * inverse - vz);
        double reflectance = fresnel(facing);
        // Where the mirrored ray meets the sky of the picture.
        double su = 0.5 + FOCAL * rx / Math.max(ry, 0.2);
        double sv = HORIZON - Math.min(HORIZON, FOCAL * rz / Math.max(ry, 0.2));
        sky(su, sv, time, colour);
        colour[0] = reflectance * colour[0] + (1 - reflectance) * 0.012;
        colour[1] = reflectance * colour[1] + (1 - reflectance) * 0.030;
        colour[2] = reflectance * colour[2] + (1 - reflectance) * 0.038;
    }

    /** Schlick's approximation with the 2.04 % of water (n = 1.333) at normal incidence. */
    static double fresnel(double cosine) {
        double m = 1 - cosine;
        return 0.0204 + 0.9796 * m * m * m * m * m;
    }

    private static double slope(SlopeField field, int level, double x, double y, int axis) {
        int side = field.side;
        int rows = side >> level;
        double row = y / (1 << level);
        int x0 = (int) Math.floor(x);
        int y0 = (int) Math.floor(row);
        double ax = x - x0;
        double ay = row - y0;
        float[] s = field.slopes[level];
        int left = Math.floorMod(x0, side);
        int right = Math.floorMod(x0 + 1, side);
        int top = Math.floorMod(y0, rows) * side;
        int bottom = Math.floorMod(y0 + 1, rows) * side;
        double a = s[2 * (top + left) + axis] * (1 - ax) + s[2 * (top + right) + axis] * ax;
        double b = s[2 * (bottom + left) + axis] * (1 - ax) + s[2 * (bottom + right) + axis] * ax;
        return a * (1 - ay) + b * ay;
    }

    private static double inPost(double u, double v) {
        return u > POST_LEFT && u < POST_RIGHT && v > POST_TOP && v < POST_FOOT ? 1 : 0;
    }

    private static double shore(double u) {
        return 0.60 - 0.10 * (u - 0.2) * (u - 0.2) + 0.012 * StrictMath.sin(23 * u);
    }

    private static void standing(double u, double v, double[] colour) {
        double post = inPost(u, v);
        boolean rock = v > shore(u);
        if (post > 0 || rock) {
            long column = (long) Math.floor(u * 240);
            long row = (long) Math.floor(v * 240);
            long cell = Dice.mix(column * 7919 + row) >>> 11;
            double grain = 0.6 + 0.8 * (cell * 0x1.0p-53);
            double round = rock ? 1 : 0.5 + (u - POST_LEFT) / (POST_RIGHT - POST_LEFT);
            colour[0] = 0.045 * grain * round;
            colour[1] = 0.040 * grain * round;
            colour[2] = 0.036 * grain * round;
        }
    }

    private static void branch(double u, double v, double time, int width, double[] colour) {
        double swing = SWING_WIDTHS
                * (Turns.sine(SWING_HERTZ * time)
                        + 0.5 * Turns.sine(0.83 * SWING_HERTZ * time + 0.3)
                        + 0.25 * Turns.sine(2.3 * SWING_HERTZ * time + 0.7));
        double cover = branchCover(u, v - swing * Math.max(0, (1 - u) * 3), width);
        for (int c = 0; c < 3; c++) {
            colour[c] = colour[c] * (1 - cover) + cover * (c == 1 ? 0.035 : 0.022);
        }
    }

    /** A bough from the right edge with leaves along it; 0 or 1 with an edge one pixel soft. */
    private static double branchCover(double u, double v, int width) {
        if (u < 0.66 || v > 0.20) {
            return 0;
        }
        double along = 1 - u;
        double bough = 0.05 + 0.30 * along * along + 0.05 * along;
        double nearest = Math.abs(v - bough) - 0.004 * (1 - along);
        int k0 = (int) Math.floor(along / 0.012);
        for (int k = k0 - 2; k <= k0 + 2; k++) {
            double seed = (Dice.mix(k * 31L) >>> 11) * 0x1.0p-53;
            double lu = k * 0.012 + 0.006;
            double lv = 0.05 + 0.30 * lu * lu + 0.05 * lu + (seed - 0.5) * 0.05;
            double du = (along - lu) / 0.010;
            double dv = (v - lv) / 0.006;
            nearest = Math.min(nearest, (Math.sqrt(du * du + dv * dv) - 1) * 0.006);
        }
        return Math.max(0, Math.min(1, 0.5 - nearest * width));
    }
}
