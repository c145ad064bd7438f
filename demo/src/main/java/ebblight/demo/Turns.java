package ebblight.demo;

/** Sine and cosine of an angle in turns from a table, by linear interpolation; error below 1e-7. */
final class Turns {

    private static final int SIZE = 8192;
    private static final int QUARTER = SIZE / 4;
    private static final float[] SINE = table();

    private Turns() {}

    private static float[] table() {
        float[] sine = new float[SIZE + QUARTER + 2];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = (float) StrictMath.sin(2 * Math.PI * i / SIZE);
        }
        return sine;
    }

    static double sine(double turns) {
        return at((turns - Math.floor(turns)) * SIZE);
    }

    static double cosine(double turns) {
        return at((turns - Math.floor(turns)) * SIZE + QUARTER);
    }

    private static double at(double position) {
        int i = (int) position;
        double part = position - i;
        return SINE[i] + part * (SINE[i + 1] - SINE[i]);
    }
}
