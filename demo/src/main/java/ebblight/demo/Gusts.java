package ebblight.demo;

import java.util.Arrays;

/**
 * Patches of rougher and smoother water that travel with the wind and slowly change: a sum of plane waves with their
 * own frequencies, on a tile that repeats far apart.
 */
final class Gusts {

    static final int SIDE = 64;
    static final double TILE_METRES = 240;
    private static final int WAVES = 24;
    /** Time over which a patch changes by itself. */
    private static final double RENEWAL_SECONDS = 20;

    private final double strength;
    private final int[] kx = new int[WAVES];
    private final int[] ky = new int[WAVES];
    private final double[] cyclesPerSecond = new double[WAVES];
    private final double[] phaseTurns = new double[WAVES];

    Gusts(Weather weather, double lengthMetres, double relativeSpeed, Dice dice) {
        strength = weather.gusts();
        double direction = weather.windDegrees() * Math.PI / 180;
        double speed = weather.windMetresPerSecond() * relativeSpeed;
        for (int i = 0; i < WAVES; i++) {
            double size = TILE_METRES / lengthMetres * StrictMath.exp(0.5 * dice.gaussian());
            double heading = 2 * Math.PI * dice.uniform();
            kx[i] = (int) Math.rint(size * StrictMath.cos(heading));
            ky[i] = (int) Math.rint(size * StrictMath.sin(heading));
            cyclesPerSecond[i] =
                    -(kx[i] * StrictMath.cos(direction) + ky[i] * StrictMath.sin(direction)) * speed / TILE_METRES
                            + dice.gaussian() / (2 * Math.PI * RENEWAL_SECONDS);
            phaseTurns[i] = dice.uniform();
        }
    }

    void at(double timeSeconds, float[] gust) {
        Arrays.fill(gust, 1);
        if (strength == 0) {
            return;
        }
        double[] xRe = new double[SIDE];
        double[] xIm = new double[SIDE];
        double amplitude = strength * Math.sqrt(2.0 / WAVES);
        for (int i = 0; i < WAVES; i++) {
            for (int x = 0; x < SIDE; x++) {
                double turns = (double) kx[i] * x / SIDE + cyclesPerSecond[i] * timeSeconds + phaseTurns[i];
                xRe[x] = amplitude * Turns.cosine(turns);
                xIm[x] = amplitude * Turns.sine(turns);
            }
            for (int y = 0; y < SIDE; y++) {
                double c = Turns.cosine((double) ky[i] * y / SIDE);
                double s = Turns.sine((double) ky[i] * y / SIDE);
                for (int x = 0; x < SIDE; x++) {
                    gust[y * SIDE + x] += (float) (xRe[x] * c - xIm[x] * s);
                }
            }
        }
        for (int p = 0; p < gust.length; p++) {
            gust[p] = Math.max(gust[p], 0.15f);
        }
    }
}
