package ebblight.demo;

import java.util.Arrays;

/**
 * Waves of one band of lengths on a square tile that repeats. Frequencies are jittered inside each cell of the
 * wavenumber grid, so that the tile repeats in space but never in time.
 */
final class Cascade {

    private final int side;
    private final double tileMetres;
    private final Fft fft;
    /** Places of the waves in the spectrum and of the waves that run the other way. */
    private final int[] place;

    private final int[] opposite;
    private final double[] amplitudeRe;
    private final double[] amplitudeIm;
    private final double[] cyclesPerSecond;
    private final double[] kx;
    private final double[] ky;

    /** Variance density over wavenumber, m⁴, of waves running along (kx, ky). */
    interface Density {
        double at(double kx, double ky);
    }

    Cascade(int side, double tileMetres, double fromK, double toK, Density density, Dice dice) {
        this.side = side;
        this.tileMetres = tileMetres;
        this.fft = new Fft(side, side);
        double step = 2 * Math.PI / tileMetres;
        int count = 0;
        int[] places = new int[side * side];
        for (int ix = -side / 2 + 1; ix < side / 2; ix++) {
            for (int iy = -side / 2 + 1; iy < side / 2; iy++) {
                double k = step * Math.sqrt((double) ix * ix + (double) iy * iy);
                if (k >= fromK && k < toK && k > 0) {
                    places[count++] = Math.floorMod(iy, side) * side + Math.floorMod(ix, side);
                }
            }
        }
        place = Arrays.copyOf(places, count);
        opposite = new int[count];
        amplitudeRe = new double[count];
        amplitudeIm = new double[count];
        cyclesPerSecond = new double[count];
        kx = new double[count];
        ky = new double[count];
        for (int i = 0; i < count; i++) {
            int ix = signed(place[i] % side);
            int iy = signed(place[i] / side);
            opposite[i] = Math.floorMod(-iy, side) * side + Math.floorMod(-ix, side);
            kx[i] = ix * step;
            ky[i] = iy * step;
            double k = Math.sqrt(kx[i] * kx[i] + ky[i] * ky[i]);
            double amplitude = step * Math.sqrt(density.at(kx[i], ky[i]));
            amplitudeRe[i] = amplitude * dice.gaussian();
            amplitudeIm[i] = amplitude * dice.gaussian();
            double jittered = Math.max(k + step * (dice.uniform() - 0.5), 0.3 * step);
            cyclesPerSecond[i] = WaveSpectrum.dispersion(jittered) / (2 * Math.PI);
        }
    }

    private int signed(int i) {
        return i < side / 2 ? i : i - side;
    }

    int side() {
        return side;
    }

    FieldSpace space() {
        return fft.space();
    }

    double tileMetres() {
        return tileMetres;
    }

    /** Variance of the height, m²: half the sum of the squared amplitudes. */
    double heightVariance() {
        double sum = 0;
        for (int i = 0; i < place.length; i++) {
            sum += (amplitudeRe[i] * amplitudeRe[i] + amplitudeIm[i] * amplitudeIm[i]) / 2;
        }
        return sum;
    }

    /**
     * Variance of the slope along x or y that is left after the mean over {@code box} grid steps along x and y.
     */
    double slopeVariance(boolean alongX, double boxX, double boxY) {
        double sum = 0;
        double grid = tileMetres / side;
        for (int i = 0; i < place.length; i++) {
            double power = (amplitudeRe[i] * amplitudeRe[i] + amplitudeIm[i] * amplitudeIm[i]) / 2;
            double k = alongX ? kx[i] : ky[i];
            double kept = boxGain(kx[i] * grid * boxX) * boxGain(ky[i] * grid * boxY);
            sum += power * k * k * kept * kept;
        }
        return sum;
    }

    private static double boxGain(double radians) {
        double half = radians / 2;
        return Math.abs(half) < 1e-6 ? 1 : Turns.sine(half / (2 * Math.PI)) / half;
    }

    /** The slopes along x and y (dimensionless) at an instant, row by row, into {@code workspace.re} and {@code im}. */
    void slopes(double timeSeconds, FieldSpace space) {
        evolve(timeSeconds, space);
        for (int i = 0; i < place.length; i++) {
            int p = place[i];
            double re = (space.waveRe[p] + space.waveRe[opposite[i]]) * 0.5;
            double im = (space.waveIm[p] - space.waveIm[opposite[i]]) * 0.5;
            // two real fields in one transform: i·kx·Z for x, and i·(i·ky·Z) puts the slope along y in the imaginary
            // part
            space.spectrumRe[p] = (float) (-kx[i] * im - ky[i] * re);
            space.spectrumIm[p] = (float) (kx[i] * re - ky[i] * im);
        }
        fft.inverse(space);
    }

    /** The height in metres at an instant into {@code space.re}; to be called right after {@link #slopes}. */
    void heights(FieldSpace space) {
        space.clearSpectrum();
        for (int i = 0; i < place.length; i++) {
            int p = place[i];
            space.spectrumRe[p] = (space.waveRe[p] + space.waveRe[opposite[i]]) * 0.5f;
            space.spectrumIm[p] = (space.waveIm[p] - space.waveIm[opposite[i]]) * 0.5f;
        }
        fft.inverse(space);
    }

    private void evolve(double timeSeconds, FieldSpace space) {
        space.clearSpectrum();
        for (int i = 0; i < place.length; i++) {
            double turns = cyclesPerSecond[i] * timeSeconds;
            double c = Turns.cosine(turns);
            double s = Turns.sine(turns);
            space.waveRe[place[i]] = (float) (amplitudeRe[i] * c + amplitudeIm[i] * s);
            space.waveIm[place[i]] = (float) (amplitudeIm[i] * c - amplitudeRe[i] * s);
        }
    }
}
