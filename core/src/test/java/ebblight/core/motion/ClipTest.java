package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Samples by IEC 61966-2-1; times and bad input. */
class ClipTest {

    /** Codes 0, 10 and 128: 0; 10/255/12.92 = 0.0030353; ((128/255 + 0.055)/1.055)^2.4 = 0.2158605. */
    @Test
    void bytesAreReadBySrgb() {
        Clip clip = Clip.of(1, 2, new double[] {0}, List.of(new byte[] {0, 10, (byte) 128, (byte) 255, 0, 0}), srgb());
        float[] plane = new float[2];
        clip.channel(0, 1, plane);
        assertThat(plane[0]).isCloseTo(0.0030353f, within(1e-6f));
        clip.channel(0, 2, plane);
        assertThat(plane[0]).isCloseTo(0.2158605f, within(1e-6f));
        clip.channel(0, 0, plane);
        assertThat(plane).containsExactly(0, 1);
        clip.luminance(0, plane);
        assertThat(plane[0]).isCloseTo((float) (0.7152 * 0.0030353 + 0.0722 * 0.2158605), within(1e-6f));
        assertThat(plane[1]).isCloseTo(0.2126f, within(1e-6f));
        assertThat(clip.spacingSeconds()).isZero();
    }

    /** 0x8001 = 32769 little end first, red; 0xFFFF green; 0x0102 = 258 blue. */
    @Test
    void wordsAreLinear() {
        byte[] frame = {0x01, (byte) 0x80, -1, -1, 0x02, 0x01};
        Clip clip = Clip.of(1, 1, new double[] {0}, List.of(frame), Clip.Coding.LINEAR16);
        float[] plane = new float[1];
        float[] sum = new float[1];
        double[] weights = {0.2126, 0.7152, 0.0722};
        double[] light = {32769 / 65535.0, 1, 258 / 65535.0};
        for (int c = 0; c < 3; c++) {
            clip.channel(0, c, plane);
            assertThat((double) plane[0]).isCloseTo(light[c], within(1e-6));
            sum[0] += (float) (weights[c] * light[c]);
        }
        clip.luminance(0, plane);
        assertThat(plane[0]).isCloseTo(sum[0], within(1e-6f));
        assertThat(clip.bytes(0)).isSameAs(frame);
        assertThat(clip.coding().bytes()).isEqualTo(2);
    }

    @Test
    void framesStandForTheirSpacing() {
        Clip clip = grey(1, 2, 6, 7);
        assertThat(clip.spacingSeconds()).isEqualTo(2);
        assertThat(clip.lengthSeconds()).isEqualTo(8);
        Clip kept = clip.only(new boolean[] {true, false, true, true});
        assertThat(kept.frames()).isEqualTo(3);
        assertThat(kept.timeSeconds(1)).isEqualTo(6);
        assertThat(kept.bytes(1)).isSameAs(clip.bytes(2));
        assertThat(clip.only(new boolean[] {true, true, true, true})).isSameAs(clip);
        assertThat(Clip.spaced(1 / 25.0)).isFalse();
        assertThat(Clip.spaced(30)).isTrue();
    }

    @Test
    void badInputIsNamed() {
        byte[] three = new byte[3];
        assertThatThrownBy(() -> Clip.of(0, 1, new double[] {0}, List.of(three), srgb()))
                .hasMessageContaining("0 × 1");
        assertThatThrownBy(() -> Clip.of(1, 0, new double[] {0}, List.of(three), srgb()))
                .hasMessageContaining("1 × 0");
        assertThatThrownBy(() -> Clip.of(1, 1, new double[0], List.of(), srgb()))
                .hasMessageContaining("0 frames");
        assertThatThrownBy(() -> Clip.of(1, 1, new double[] {0, 1}, List.of(three), srgb()))
                .hasMessageContaining("2 times");
        assertThatThrownBy(() -> Clip.of(1, 1, new double[] {0, 1}, List.of(three, new byte[4]), srgb()))
                .hasMessageContaining("frame 1 must hold 3 bytes, held 4");
        assertThatThrownBy(() -> grey(0, 1, 1)).hasMessageContaining("frame 2 is at 1.0");
        assertThatThrownBy(() -> grey(0, Double.NaN)).hasMessageContaining("times must increase");
    }

    /** Light of 0.2 and 0.4 by turns has mean 0.3 and deviation 0.1; as a lamp that doubles, it has none. */
    @Test
    void momentsAreThoseOfTheLevelledFrames() {
        Clip clip = Plain.clip(2, 1, 4, 1, (x, y, t) -> x == 0 ? 0.3 : t % 2 == 0 ? 0.2 : 0.4);
        Moments plain = Moments.of(clip, new float[] {1, 1, 1, 1}, Work.alone());
        Moments lamp = Moments.of(clip, new float[] {1, 2, 1, 2}, Work.alone());
        for (int c = 0; c < 3; c++) {
            assertThat(plain.mean()[c]).containsExactly(new float[] {0.3f, 0.3f}, within(1e-4f));
            assertThat(plain.deviation()[c]).containsExactly(new float[] {0, 0.1f}, within(1e-4f));
            assertThat(lamp.mean()[c][1]).isCloseTo(0.2f, within(1e-4f));
            assertThat(lamp.deviation()[c][1]).isCloseTo(0, within(1e-4f));
        }
    }

    /** 1, 2, 6 hundredths: mean 3, variance (4 + 1 + 9)/2 = 7, median 2. */
    @Test
    void statisticsInTime() {
        LuminanceFrames frames =
                Plain.frames(48, 48, 3, 2, (x, y, t) -> x < 40 ? 0.5 : t == 0 ? 0.01 : t == 2 ? 0.02 : 0.06);
        float[] mean = frames.mean(0, 3);
        assertThat(mean[45]).isCloseTo(0.03f, within(2e-5f));
        assertThat(frames.mean(1, 3)[45]).isCloseTo(0.04f, within(2e-5f));
        assertThat(frames.variance(mean)[45]).isCloseTo(7e-4f, within(2e-6f));
        assertThat(frames.median(Work.alone())[45]).isCloseTo(0.02f, within(2e-5f));
        assertThat(frames.spacingSeconds()).isEqualTo(2);
        assertThat(frames.lengthSeconds()).isEqualTo(6);
        assertThat(frames.pixels()).isEqualTo(48 * 48);
        assertThat(Plain.frames(8, 8, 1, 2, (x, y, t) -> 0.5).spacingSeconds()).isZero();
    }

    private static Clip grey(double... times) {
        return Clip.of(
                1,
                1,
                times,
                Stream.generate(() -> new byte[3]).limit(times.length).toList(),
                srgb());
    }

    private static Clip.Coding srgb() {
        return Clip.Coding.SRGB8;
    }
}
