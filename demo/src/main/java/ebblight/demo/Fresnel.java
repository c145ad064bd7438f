package ebblight.demo;

/** Share of unpolarised light that a smooth surface of water reflects (Fresnel's equations), refractive index 1.333. */
final class Fresnel {

    static final double WATER = 1.333;
    private static final int SIZE = 512;
    private static final float[] TABLE = table();

    private Fresnel() {}

    /** Reflected share, 0 to 1, at an angle of incidence whose cosine is given, 0 to 1. */
    static double reflectance(double cosine) {
        double sine = Math.sqrt(1 - cosine * cosine) / WATER;
        double inside = Math.sqrt(1 - sine * sine);
        double s = (cosine - WATER * inside) / (cosine + WATER * inside);
        double p = (inside - WATER * cosine) / (inside + WATER * cosine);
        return (s * s + p * p) / 2;
    }

    private static float[] table() {
        float[] table = new float[SIZE + 2];
        for (int i = 0; i < table.length; i++) {
            table[i] = (float) reflectance(Math.min(1, (double) i / SIZE));
        }
        return table;
    }

    /** The same from a table, within 3e-4. */
    static float fast(float cosine) {
        float x = Math.max(0, Math.min(1, cosine)) * SIZE;
        int i = (int) x;
        return TABLE[i] + (x - i) * (TABLE[i + 1] - TABLE[i]);
    }
}
