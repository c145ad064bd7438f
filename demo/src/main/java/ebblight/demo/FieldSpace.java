package ebblight.demo;

import java.util.Arrays;

/** Work arrays for one transform; belongs to one thread. */
final class FieldSpace {

    final float[] waveRe;
    final float[] waveIm;
    final float[] spectrumRe;
    final float[] spectrumIm;
    final float[] halfRe;
    final float[] halfIm;
    final float[] re;
    final float[] im;
    final float[] lineA;
    final float[] lineB;

    FieldSpace(int size, int lines) {
        waveRe = new float[size];
        waveIm = new float[size];
        spectrumRe = new float[size];
        spectrumIm = new float[size];
        halfRe = new float[size];
        halfIm = new float[size];
        re = new float[size];
        im = new float[size];
        lineA = new float[lines];
        lineB = new float[lines];
    }

    void clearSpectrum() {
        Arrays.fill(spectrumRe, 0);
        Arrays.fill(spectrumIm, 0);
    }
}
