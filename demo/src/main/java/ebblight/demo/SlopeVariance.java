package ebblight.demo;

import ebblight.core.numeric.Powers;

/** How much of a cascade's slope variance survives when a pixel takes the mean over a stretch of water. */
final class SlopeVariance {

    private static final int ACROSS = 8;
    /** The first stretch across the view, in grid steps; each next one is twice as long. */
    private static final double FIRST_ACROSS = 0.25;

    private final double totalX;
    private final double totalY;
    private final double[][] keptX;
    private final double[][] keptY;

    SlopeVariance(Cascade cascade) {
        totalX = cascade.slopeVariance(true, 0, 0);
        totalY = cascade.slopeVariance(false, 0, 0);
        int levels = SlopeField.levels(cascade.side());
        keptX = new double[levels][ACROSS];
        keptY = new double[levels][ACROSS];
        for (int level = 0; level < levels; level++) {
            for (int a = 0; a < ACROSS; a++) {
                double box = a == 0 ? 0 : FIRST_ACROSS * (1 << a);
                keptX[level][a] = cascade.slopeVariance(true, box, 1 << level);
                keptY[level][a] = cascade.slopeVariance(false, box, 1 << level);
            }
        }
    }

    /** What the mean over a pixel keeps: {@code kept} = gain for the field at that level, lost variances along x and y. */
    record Kept(double gain, double lostX, double lostY) {}

    /**
     * @param level of the field, between whole levels
     * @param across the pixel's width in grid steps
     */
    Kept at(double level, double across) {
        double a = Math.max(0, Math.min(ACROSS - 1.001, Powers.log2(Math.max(across, 1e-3) / FIRST_ACROSS)));
        double x = blend(keptX, level, a);
        double y = blend(keptY, level, a);
        double open = blend(keptY, level, 0);
        // beyond the widest stretch of the table nothing is left to see
        double fade = Math.max(0, Math.min(1, 2 - across / (FIRST_ACROSS * (1 << (ACROSS - 1)))));
        double gain = open > 0 ? Math.sqrt(y / open) * fade : 0;
        return new Kept(gain, Math.max(0, totalX - x * fade * fade), Math.max(0, totalY - y * fade * fade));
    }

    private static double blend(double[][] table, double level, double across) {
        int l = Math.min((int) level, table.length - 2);
        int a = Math.min((int) across, ACROSS - 2);
        double lp = level - l;
        double ap = across - a;
        double near = table[l][a] + ap * (table[l][a + 1] - table[l][a]);
        double far = table[l + 1][a] + ap * (table[l + 1][a + 1] - table[l + 1][a]);
        return near + lp * (far - near);
    }
}
