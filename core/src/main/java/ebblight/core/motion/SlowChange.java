package ebblight.core.motion;

import ebblight.core.numeric.Blur;
import ebblight.core.numeric.Work;

/**
 * What frames taken seconds apart say about kinds that a clip's features cannot: in such a gap water and leaves forget
 * what they looked like, clouds do not. Common practice: ripples change within a second, waves within ten; a cloud
 * keeps its form for minutes.
 */
final class SlowChange {

    /** The gap at which the memory of water is surely over. */
    private static final double FORGETTING_SECONDS = 8;

    private static final double FORGOTTEN = 0.4;
    private static final double REMEMBERED = 0.7;
    private static final double PUSH = 4;
    private static final double SMOOTH_WIDTHS = 1.0 / 160;

    private SlowChange() {}

    /** Turns flowing and swaying parts that remember across the gaps into drifting ones. */
    static void apply(LuminanceFrames frames, float[] mean, float[][] logits, Work work) {
        if (frames.spacingSeconds() < FORGETTING_SECONDS || frames.count() < 4) {
            return;
        }
        float[] memory = memory(frames, mean, work);
        float[] fixed = logits[Kind.FIXED.column()];
        float[] drifting = logits[Kind.DRIFTING.column()];
        float[] flowing = logits[Kind.FLOWING.column()];
        float[] swaying = logits[Kind.SWAYING.column()];
        for (int p = 0; p < memory.length; p++) {
            if (Math.max(flowing[p], swaying[p]) > fixed[p]) {
                double sure = Math.max(0, Math.min(1, (memory[p] - FORGOTTEN) / (REMEMBERED - FORGOTTEN)));
                drifting[p] += (float) (PUSH * sure);
                flowing[p] -= (float) (PUSH * sure);
                swaying[p] -= (float) (PUSH * sure);
            }
        }
    }

    /** Correlation of neighbouring frames round every pixel, −1 to 1. */
    private static float[] memory(LuminanceFrames frames, float[] mean, Work work) {
        int n = frames.pixels();
        int w = frames.width();
        float[] together = new float[n];
        float[] alone = new float[n];
        work.forEach(frames.height(), y -> {
            for (int p = y * w; p < (y + 1) * w; p++) {
                double product = 0;
                double square = 0;
                double last = frames.frame(0)[p] - (double) mean[p];
                for (int i = 1; i < frames.count(); i++) {
                    double now = frames.frame(i)[p] - (double) mean[p];
                    product += now * last;
                    square += 0.5 * (now * now + last * last);
                    last = now;
                }
                together[p] = (float) product;
                alone[p] = (float) square;
            }
        });
        float[] scratch = new float[n];
        Blur.gaussian(together, together, scratch, w, frames.height(), SMOOTH_WIDTHS * w);
        Blur.gaussian(alone, alone, scratch, w, frames.height(), SMOOTH_WIDTHS * w);
        for (int p = 0; p < n; p++) {
            together[p] = (float) (together[p] / Math.max(alone[p], 1e-12));
        }
        return together;
    }
}
