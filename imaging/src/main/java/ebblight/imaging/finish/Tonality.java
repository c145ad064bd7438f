package ebblight.imaging.finish;

import ebblight.core.numeric.Work;

/**
 * All that changes tones, on luminance alone: shadows and lights, local contrast, lights that would be brighter than
 * white, grade. Shadows, lights and local contrast work in stops on a base that follows edges, so that no halo is drawn
 * along them; grade works on L*.
 */
final class Tonality {

    /** Part of the width over which local contrast is judged. */
    private static final double REACH = 1.0 / 60;
    /** About a third of a stop: what varies less is detail, what varies more an edge. */
    private static final double EDGE = 0.1;

    private static final double DARKEST = 1.0 / 16384;
    /** Where the roll-off of lights begins, as a part of white. */
    private static final double KNEE = 0.7;
    /** The lightest ten-thousandth may clip. */
    private static final double KEPT = 0.9999;

    private Tonality() {}

    /** Changes {@code y}, luminance in linear light, in place. */
    static void apply(float[] y, int width, int height, Finish finish, Work work) {
        if (!finish.tone().untouched() || finish.localContrastStops() != 0) {
            local(y, width, height, finish, work);
        }
        rollOff(y, width, height, work);
        if (finish.grade() != Finish.UNCHANGED_GRADE) {
            Grade grade = Grade.of(finish.grade());
            work.forEach(height, row -> {
                for (int p = row * width; p < (row + 1) * width; p++) {
                    y[p] = (float) Colours.luminanceOf(grade.lightness(Colours.lightness(y[p])));
                }
            });
        }
    }

    private static void local(float[] y, int width, int height, Finish finish, Work work) {
        float[] stops = new float[y.length];
        work.forEach(height, row -> {
            for (int p = row * width; p < (row + 1) * width; p++) {
                stops[p] = (float) Stops.of(Math.max(DARKEST, y[p]));
            }
        });
        int radius = Math.max(2, (int) Math.round(REACH * width));
        float[] base = new EdgeAware(width, height, radius).smooth(stops, EDGE, work);
        float[] table = finish.tone().table();
        double more = Stops.factor(finish.localContrastStops()) - 1;
        work.forEach(height, row -> {
            for (int p = row * width; p < (row + 1) * width; p++) {
                double change = Tone.at(table, base[p]) - base[p] + more * (stops[p] - base[p]);
                y[p] *= (float) Stops.factor(change);
            }
        });
    }

    /** Brings lights beyond white back under it, the brightest to white itself (Reinhard and others 2002, eq. 4). */
    private static void rollOff(float[] y, int width, int height, Work work) {
        double most = Brightest.of(y, KEPT);
        if (most <= 1) {
            return;
        }
        double white = (most - KNEE) / (1 - KNEE);
        work.forEach(height, row -> {
            for (int p = row * width; p < (row + 1) * width; p++) {
                double x = (y[p] - KNEE) / (1 - KNEE);
                if (x > 0) {
                    y[p] = (float) (KNEE + (1 - KNEE) * Math.min(1, x * (1 + x / (white * white)) / (1 + x)));
                }
            }
        });
    }
}
