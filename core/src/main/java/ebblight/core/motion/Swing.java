package ebblight.core.motion;

/**
 * How far swaying parts move within a time, from the change of luminance against its gradient: a texture that shifts by
 * d changes by gradient · d, so the mean square shift is twice the variance within T over the mean square gradient.
 * Movements larger than the grain of the texture are underestimated: then it is a lower bound.
 */
final class Swing {

    private static final int FRAMES = 6;

    private final TextureCurve curve;
    private final double gradientEnergy;

    private Swing(TextureCurve curve, double gradientEnergy) {
        this.curve = curve;
        this.gradientEnergy = gradientEnergy;
    }

    static Swing of(LuminanceFrames frames, float[] mask, TextureCurve curve, NoiseModel noise) {
        int w = frames.width();
        double energy = 0;
        long count = 0;
        int used = Math.min(FRAMES, frames.count());
        for (int k = 0; k < used; k++) {
            float[] frame = frames.frame(k * (frames.count() - 1) / Math.max(1, used - 1));
            for (int p = w + 1; p < mask.length - w - 1; p++) {
                if (mask[p] > 0.5f) {
                    double gx = (frame[p + 1] - (double) frame[p - 1]) / 2;
                    double gy = (frame[p + w] - (double) frame[p - w]) / 2;
                    energy += gx * gx + gy * gy - noise.at(frame[p]);
                    count++;
                }
            }
        }
        return new Swing(curve, count == 0 ? 0 : Math.max(0, energy / count));
    }

    /** RMS movement within {@code seconds}, in survey pixels. */
    double pixels(double seconds) {
        if (gradientEnergy <= 0) {
            return 0;
        }
        double within = Math.max(0, curve.varianceAtOnce() - curve.variance(seconds));
        return Math.sqrt(2 * within / gradientEnergy);
    }
}
