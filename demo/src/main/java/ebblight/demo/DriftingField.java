package ebblight.demo;

import java.util.Arrays;

/**
 * Two independent random patterns on a plane that repeats: every part of them travels with the same wind while it
 * turns into another in its own lifetime. Never the same twice.
 */
final class DriftingField {

    final int columns;
    final int rows;
    private final Fft fft;
    private final int[] place;
    private final double[] amplitudeRe;
    private final double[] amplitudeIm;
    private final double[] cyclesPerSecond;

    /** What a part of the pattern with a wave vector in radians a grid step is like. */
    interface Part {
        /** Amplitude relative to the others, 0 to leave it out. */
        double amplitude(double kx, double ky);

        /** Time over which it turns into another, seconds. */
        double lifetimeSeconds(double kx, double ky);
    }

    /** One instant of the field; belongs to one thread. */
    static final class State {
        /** The two patterns in turn, row by row, each with mean 0 and standard deviation 1 over long times. */
        final float[] layers;

        private final FieldSpace space;

        private State(FieldSpace space) {
            layers = new float[2 * space.re.length];
            this.space = space;
        }
    }

    DriftingField(int columns, int rows, Part part, double columnsPerSecond, double rowsPerSecond, long seed) {
        this.columns = columns;
        this.rows = rows;
        this.fft = new Fft(columns, rows);
        Dice dice = new Dice(seed);
        int capacity = columns * rows;
        int[] places = new int[capacity];
        double[] re = new double[capacity];
        double[] im = new double[capacity];
        double[] cycles = new double[capacity];
        int count = 0;
        double power = 0;
        for (int ix = -columns / 2 + 1; ix < columns / 2; ix++) {
            for (int iy = -rows / 2 + 1; iy < rows / 2; iy++) {
                double kx = 2 * Math.PI * ix / columns;
                double ky = 2 * Math.PI * iy / rows;
                double amplitude = ix == 0 && iy == 0 ? 0 : part.amplitude(kx, ky);
                if (amplitude > 0) {
                    places[count] = Math.floorMod(iy, rows) * columns + Math.floorMod(ix, columns);
                    re[count] = amplitude * dice.gaussian();
                    im[count] = amplitude * dice.gaussian();
                    double change = dice.gaussian() / part.lifetimeSeconds(kx, ky);
                    cycles[count] = (kx * columnsPerSecond + ky * rowsPerSecond + change) / (2 * Math.PI);
                    power += re[count] * re[count] + im[count] * im[count];
                    count++;
                }
            }
        }
        // real and imaginary part share the power: two independent patterns from one transform
        double scale = 1 / Math.sqrt(power / 2);
        for (int i = 0; i < count; i++) {
            re[i] *= scale;
            im[i] *= scale;
        }
        place = Arrays.copyOf(places, count);
        amplitudeRe = Arrays.copyOf(re, count);
        amplitudeIm = Arrays.copyOf(im, count);
        cyclesPerSecond = Arrays.copyOf(cycles, count);
    }

    State state() {
        return new State(fft.space());
    }

    void at(double timeSeconds, State state) {
        FieldSpace space = state.space;
        space.clearSpectrum();
        for (int i = 0; i < place.length; i++) {
            double turns = cyclesPerSecond[i] * timeSeconds;
            double c = Turns.cosine(turns);
            double s = Turns.sine(turns);
            space.spectrumRe[place[i]] = (float) (amplitudeRe[i] * c + amplitudeIm[i] * s);
            space.spectrumIm[place[i]] = (float) (amplitudeIm[i] * c - amplitudeRe[i] * s);
        }
        fft.inverse(space);
        for (int p = 0; p < space.re.length; p++) {
            state.layers[2 * p] = space.re[p];
            state.layers[2 * p + 1] = space.im[p];
        }
    }
}
