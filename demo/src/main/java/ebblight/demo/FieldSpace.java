package ebblight.demo;

import java.util.Arrays;

/** Work arrays for one transform of {@code size} samples; belongs to one thread. */
final class FieldSpace {

    final double[] waveRe;
    final double[] waveIm;
    final double[] spectrumRe;
    final double[] spectrumIm;
    final double[] re;
    final double[] im;

    FieldSpace(int size) {
        waveRe = new double[size];
        waveIm = new double[size];
        spectrumRe = new double[size];
        spectrumIm = new double[size];
        re = new double[size];
        im = new double[size];
    }

    void clearSpectrum() {
        Arrays.fill(spectrumRe, 0);
        Arrays.fill(spectrumIm, 0);
    }
}
