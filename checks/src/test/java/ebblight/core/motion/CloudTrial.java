package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.demo.DriftingClouds;
import ebblight.demo.Sensor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Drift of clouds measured from clips of skies that travel at one known speed in many directions, half of them behind
 * two posts.
 *
 * @param errors of the velocity, length of the difference as a share of the true speed, one a clip
 * @param stated relative error that the measurement stated, one a clip
 * @param told share of clips in which a drift is told at all
 */
record CloudTrial(double[] errors, double[] stated, double told) {

    static final int WIDTH = 480;
    private static final int HEIGHT = 160;
    private static final int FRAMES_PER_SECOND = 10;
    private static final float POST = 0.05f;

    /** As many clips as asked for, each with clouds of its own, from the sky numbered {@code first} on. */
    static CloudTrial of(double pixelsPerSecond, double clipSeconds, double iso, int first, int clips, Work work) {
        double[] errors = new double[clips];
        double[] stated = new double[clips];
        boolean[] told = new boolean[clips];
        work.forEach(clips, i -> {
            int k = first + i;
            double angle = 2.4 * k;
            double right = pixelsPerSecond * StrictMath.cos(angle);
            double down = 0.3 * pixelsPerSecond * StrictMath.sin(angle);
            double scale = pixelsPerSecond / Math.sqrt(right * right + down * down);
            right *= scale;
            down *= scale;
            boolean posts = k % 2 == 1;
            LuminanceFrames frames = LuminanceFrames.of(clip(right, down, clipSeconds, iso, posts, k), Work.alone());
            float[] sky = new float[WIDTH * HEIGHT];
            for (int p = 0; p < sky.length; p++) {
                sky[p] = posts && post(p % WIDTH) ? 0 : 1;
            }
            Drift drift = Drift.of(frames, sky, Work.alone());
            double du = drift.flow().u(WIDTH / 2.0, HEIGHT / 2.0) - right;
            double dv = drift.flow().v(WIDTH / 2.0, HEIGHT / 2.0) - down;
            errors[i] = Math.sqrt(du * du + dv * dv) / pixelsPerSecond;
            stated[i] = drift.relativeError();
            told[i] = drift.told();
        });
        double share = 0;
        for (boolean t : told) {
            share += t ? 1.0 / clips : 0;
        }
        return new CloudTrial(errors, stated, share);
    }

    private static Clip clip(double right, double down, double seconds, double iso, boolean posts, int seed) {
        DriftingClouds sky = new DriftingClouds(WIDTH, HEIGHT, right, down, 500 + seed);
        Sensor sensor = new Sensor(iso);
        int frames = (int) Math.rint(seconds * FRAMES_PER_SECOND);
        double[] times = new double[frames];
        List<byte[]> codes = new ArrayList<>();
        for (int i = 0; i < frames; i++) {
            times[i] = (double) i / FRAMES_PER_SECOND;
            RgbPicture frame = sky.frame(times[i]);
            for (int p = 0; posts && p < WIDTH * HEIGHT; p++) {
                if (post(p % WIDTH)) {
                    for (int c = 0; c < 3; c++) {
                        frame.plane(c)[p] = POST;
                    }
                }
            }
            codes.add(sensor.srgb8(frame, 104_729L * seed + i));
        }
        return Clip.of(WIDTH, HEIGHT, times, codes, Clip.Coding.SRGB8);
    }

    private static boolean post(int x) {
        return (x > 110 && x < 130) || (x > 330 && x < 352);
    }

    int clips() {
        return errors.length;
    }

    double median() {
        return Quantiles.median(errors.clone(), errors.length);
    }

    double p90() {
        return Quantiles.quantile(errors.clone(), errors.length, 0.9);
    }

    double medianStated() {
        return Quantiles.median(stated.clone(), stated.length);
    }

    /** Share of clips whose error is no larger than stated. */
    double covered() {
        double held = 0;
        for (int k = 0; k < errors.length; k++) {
            held += errors[k] <= stated[k] ? 1.0 / errors.length : 0;
        }
        return held;
    }

    @Override
    public String toString() {
        return "errors " + Arrays.toString(errors) + ", stated " + Arrays.toString(stated);
    }
}
