package ebblight.demo;

import ebblight.core.numeric.Powers;

/** The evening's clouds: their pattern, wind and lifetime on the plane of {@link SkyPatch}. */
final class Clouds {

    static final int COLUMNS = 1024;
    static final int ROWS = 256;
    static final double COLUMNS_PER_SECOND = 2.0;
    static final double ROWS_PER_SECOND = 0.10;
    /** Lifetime of a part of 100 grid steps; smaller ones change sooner, τ ∝ length^⅔ (turbulent eddies). */
    private static final double LIFETIME_SECONDS = 170;

    private static final double LARGEST_STEPS = 150;
    /** Clouds lie along the horizon: how much longer than high, in grid steps. */
    private static final double STRETCH = 2.4;

    private static final DriftingField.Part PART = new DriftingField.Part() {
        @Override
        public double amplitude(double kx, double ky) {
            double k = size(kx, ky);
            double low = 2 * Math.PI / LARGEST_STEPS;
            return k > 3 ? 0 : Powers.pow(k * k + low * low, -0.62) * StrictMath.exp(-(k / 1.7) * (k / 1.7));
        }

        @Override
        public double lifetimeSeconds(double kx, double ky) {
            return Math.max(3, LIFETIME_SECONDS * Powers.pow(2 * Math.PI / 100 / size(kx, ky), 2.0 / 3));
        }

        private double size(double kx, double ky) {
            return Math.sqrt(STRETCH * STRETCH * kx * kx + ky * ky);
        }
    };

    private Clouds() {}

    static DriftingField field(long seed) {
        return field(COLUMNS_PER_SECOND, ROWS_PER_SECOND, seed);
    }

    static DriftingField field(double columnsPerSecond, double rowsPerSecond, long seed) {
        return new DriftingField(COLUMNS, ROWS, PART, columnsPerSecond, rowsPerSecond, seed);
    }
}
