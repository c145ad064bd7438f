package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What is black throughout is fixed; codes of IEC 61966-2-1 near black are 1/255/12.92 of white apart. */
class UnlitTest {

    private static final double CODE = 1 / 255.0 / 12.92;

    private static float[] logitsOf(double mean, double change) {
        float[][] logits = {{1}, {3}, {2}, {0}};
        Unlit.apply(new float[] {(float) mean}, new float[] {(float) change}, logits);
        return new float[] {logits[0][0], logits[1][0], logits[2][0], logits[3][0]};
    }

    @Test
    void blackIsFixedWhateverItLooksLike() {
        float[] black = logitsOf(CODE, -0.5);
        float fixed = black[Kind.FIXED.column()];
        for (Kind kind : Kind.values()) {
            if (kind != Kind.FIXED) {
                assertThat(fixed).isGreaterThanOrEqualTo(black[kind.column()] + 4);
            }
        }
    }

    @Test
    void whatIsLitOrChangesIsLeftAlone() {
        assertThat(logitsOf(2.1 * CODE, -0.5)).containsExactly(1, 3, 2, 0);
        assertThat(logitsOf(CODE, 0.1)).containsExactly(1, 3, 2, 0);
    }

    /** Right of a rock the upper half is a black wall, below it water flickers: no cloud anywhere. */
    @Test
    void aBlackWallIsNoSky() {
        int w = 96;
        int h = 64;
        SplittableRandom dice = new SplittableRandom(5);
        double[] rock = Plain.noise(w, h, 1, 6);
        List<byte[]> frames = new ArrayList<>();
        double[] times = new double[60];
        for (int i = 0; i < times.length; i++) {
            times[i] = i * 0.1;
            byte[] codes = new byte[3 * w * h];
            for (int p = 0; p < w * h; p++) {
                boolean black = p % w >= w / 4 && p < w * h / 2;
                double light = p % w < w / 4 ? rock[p] : dice.nextDouble();
                int code = black ? 0 : 90 + (int) (70 * light);
                for (int c = 0; c < 3; c++) {
                    codes[3 * p + c] = (byte) code;
                }
            }
            frames.add(codes);
        }
        ViewSurvey survey = ViewSurvey.of(
                Clip.of(w, h, times, frames, Clip.Coding.SRGB8), Strokes.none(), RegionModel.standard(), Work.alone());
        assertThat(survey.map().parts()).extracting(RegionMap.Part::kind).doesNotContain(Kind.DRIFTING);
        assertThat(survey.regions().share(Kind.FIXED)[h / 5 * w + 2 * w / 3]).isGreaterThan(0.9f);
    }
}
