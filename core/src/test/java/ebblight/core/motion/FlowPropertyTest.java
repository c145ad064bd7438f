package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Fields whose paths are known in closed form. */
class FlowPropertyTest {

    private static final int WIDTH = 100;
    private static final int HEIGHT = 60;

    /** At the right edge X = 1, at the bottom Y = 30/50 = 0.6. */
    @Test
    void velocityChangesEvenly() {
        Flow flow = new Flow(3, 1, 2, -1, 0.5, 5, WIDTH, HEIGHT);
        assertThat(flow.u(50, 30)).isEqualTo(3);
        assertThat(flow.v(50, 30)).isEqualTo(-1);
        assertThat(flow.u(100, 60)).isCloseTo(3 + 1 + 1.2, within(1e-12));
        assertThat(flow.v(100, 60)).isCloseTo(-1 + 0.5 + 3, within(1e-12));
        assertThat(flow.v(0, 0)).isCloseTo(-1 - 0.5 - 3, within(1e-12));
        assertThat(new Flow(3, 0, 0, -4, 0, 0, WIDTH, HEIGHT).speed(7, 9)).isEqualTo(5);
        assertThat(flow.minus(flow)).isEqualTo(Flow.none(WIDTH, HEIGHT));
        assertThat(flow.minus(new Flow(1, 2, 3, 4, 5, 6, WIDTH, HEIGHT)))
                .isEqualTo(new Flow(2, -1, -1, -5, -4.5, -1, WIDTH, HEIGHT));
    }

    /** One corner is fastest each time: u grows to the right or left, down or up. */
    @Test
    void theFastestCornerCounts() {
        for (double across : new double[] {-1, 1}) {
            for (double down : new double[] {-1, 1}) {
                Flow flow = new Flow(9, across, down, 0, 0, 0, WIDTH, HEIGHT);
                double x = across > 0 ? WIDTH - 1 : 0;
                double y = down > 0 ? HEIGHT - 1 : 0;
                assertThat(flow.fastest()).isEqualTo(flow.u(x, y));
            }
        }
    }

    @Property(tries = 20)
    void anEvenFlowGoesStraightBack(
            @ForAll @DoubleRange(min = -30, max = 30) double u, @ForAll @DoubleRange(min = 0, max = 40) double t) {
        double[] m = new Flow(u, 0, 0, -2, 0, 0, WIDTH, HEIGHT).back(t);
        assertThat(x(m, 12, 7)).isCloseTo(12 - u * t, within(1e-9));
        assertThat(y(m, 12, 7)).isCloseTo(7 + 2 * t, within(1e-9));
    }

    /** u = k X spreads from the centre as exp(k t/50): back it shrinks by as much. */
    @Property(tries = 20)
    void whatSpreadsShrinksBack(
            @ForAll @DoubleRange(min = -4, max = 4) double k, @ForAll @DoubleRange(min = 0, max = 30) double t) {
        double[] m = new Flow(0, k, 0, 0, 0, k, WIDTH, HEIGHT).back(t);
        double scale = Math.exp(-k * t / 50);
        assertThat(x(m, 90, 10)).isCloseTo(50 + 40 * scale, within(1e-3 * (1 + 40 * scale)));
        assertThat(y(m, 90, 10)).isCloseTo(30 - 20 * scale, within(1e-3 * (1 + 20 * scale)));
    }

    /** u = −ω Y, v = ω X turns by ω t/50 about the centre; back the other way. */
    @Property(tries = 20)
    void whatTurnsTurnsBack(
            @ForAll @DoubleRange(min = -5, max = 5) double turn, @ForAll @DoubleRange(min = 0, max = 20) double t) {
        double[] m = new Flow(0, 0, -turn, 0, turn, 0, WIDTH, HEIGHT).back(t);
        double angle = turn * t / 50;
        assertThat(x(m, 80, 20)).isCloseTo(50 + 30 * Math.cos(angle) - 10 * Math.sin(angle), within(1e-2));
        assertThat(y(m, 80, 20)).isCloseTo(30 - 30 * Math.sin(angle) - 10 * Math.cos(angle), within(1e-2));
    }

    /** Back by the half, twice, is back by the whole: what an exponential is. */
    @Test
    void twoHalvesAreTheWhole() {
        Flow flow = new Flow(4, 1, -2, 3, 0.5, 1.5, WIDTH, HEIGHT);
        double[] half = flow.back(8);
        double[] whole = flow.back(16);
        double x = x(half, 20, 40);
        double y = y(half, 20, 40);
        assertThat(x(half, x, y)).isCloseTo(x(whole, 20, 40), within(1e-3));
        assertThat(y(half, x, y)).isCloseTo(y(whole, 20, 40), within(1e-3));
    }

    /** Half of the picture moves by 2 + X, X from −1 to 0 there, about 1.5 in the mean. */
    @Test
    void theMeanVelocityOfAPart() {
        Drift drift = new Drift(new Flow(2, 1, 0, -3, 0, 0, WIDTH, HEIGHT), 1, 0.01);
        float[] mask = new float[WIDTH * HEIGHT];
        assertThat(drift.meanVelocity(mask)).containsExactly(0, 0);
        for (int p = 0; p < mask.length; p++) {
            mask[p] = p % WIDTH <= 50 ? 1 : 0.4f;
        }
        assertThat(drift.meanVelocity(mask)).containsExactly(new double[] {1.5, -3}, within(1e-9));
        assertThat(drift.told()).isTrue();
        assertThat(Drift.none(WIDTH, HEIGHT).told()).isFalse();
    }

    /** Bands and the rest sum to the plane; an even plane has none; each smoothing is a Gaussian on top of the last. */
    @Test
    void bandsSumToThePlane() {
        double[] noise = Plain.noise(30, 20, 0, 3);
        Bands bands = Bands.of(Plain.narrow(noise), 30, 20, 3);
        double[] smooth = noise;
        for (int k = 0; k < 3; k++) {
            double[] next = Plain.gaussian(smooth, 30, 20, 1 << k);
            for (int p = 0; p < noise.length; p++) {
                assertThat(bands.bands()[k][p]).isCloseTo((float) (smooth[p] - next[p]), within(1e-5f));
            }
            smooth = next;
        }
        for (int p = 0; p < noise.length; p++) {
            assertThat(bands.rest()[p]).isCloseTo((float) smooth[p], within(1e-5f));
        }
    }

    private static double x(double[] m, double x, double y) {
        return m[0] * x + m[1] * y + m[2];
    }

    private static double y(double[] m, double x, double y) {
        return m[3] * x + m[4] * y + m[5];
    }
}
