package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.numeric.Work;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** The upper half keeps its form from frame to frame, the lower renews itself in every one. */
class SlowChangeTest {

    private static final int SIZE = 40;
    private static final int UP = 8 * SIZE + 20;
    private static final int DOWN = 32 * SIZE + 20;

    @Test
    void whatRemembersAcrossAGapIsCloud() {
        float[][] logits = apply(30, 12, Kind.FLOWING);
        assertThat(logits[Kind.DRIFTING.column()][UP]).isGreaterThan(logits[Kind.FLOWING.column()][UP]);
        assertThat(logits[Kind.DRIFTING.column()][DOWN]).isZero();
        assertThat(logits[Kind.FLOWING.column()][DOWN]).isEqualTo(2);
        float[][] leaves = apply(30, 12, Kind.SWAYING);
        assertThat(leaves[Kind.DRIFTING.column()][UP]).isGreaterThan(leaves[Kind.SWAYING.column()][UP]);
        assertThat(leaves[Kind.SWAYING.column()][DOWN]).isEqualTo(2);
    }

    @Test
    void rockStaysRock() {
        float[][] logits = apply(30, 12, Kind.FIXED);
        assertThat(logits[Kind.FIXED.column()][UP]).isEqualTo(2);
        assertThat(logits[Kind.DRIFTING.column()]).containsOnly(0);
    }

    @Test
    void shortGapsAndFewFramesTellNothing() {
        assertThat(apply(0.5, 12, Kind.FLOWING)[Kind.DRIFTING.column()]).containsOnly(0);
        assertThat(apply(30, 3, Kind.FLOWING)[Kind.DRIFTING.column()]).containsOnly(0);
    }

    private static float[][] apply(double gap, int count, Kind kind) {
        double[][] fresh = new double[count][];
        for (int i = 0; i < count; i++) {
            fresh[i] = Plain.noise(SIZE, SIZE, 0, 40 + i);
        }
        LuminanceFrames frames = Plain.frames(SIZE, SIZE, count, gap, (x, y, t) -> {
            int i = (int) Math.rint(t / gap);
            return y < SIZE / 2
                    ? 0.4 + 0.1 * Math.sin(0.3 * i + 0.5 * x + 0.4 * y)
                    : 0.3 + 0.2 * fresh[i][y * SIZE + x];
        });
        float[][] logits = new float[RegionModel.KINDS][SIZE * SIZE];
        Arrays.fill(logits[kind.column()], 2);
        SlowChange.apply(frames, frames.mean(0, count), logits, Work.alone());
        return logits;
    }
}
