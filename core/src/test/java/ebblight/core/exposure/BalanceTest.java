package ebblight.core.exposure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Balance against pictures made to known stops, place, tilt and softness (by definition of each figure). */
class BalanceTest {

    private static final int WIDTH = 240;
    private static final int HEIGHT = 160;

    @Property(tries = 200)
    void findsWhatWasPainted(
            @ForAll @DoubleRange(min = 1, max = 5) double stops,
            @ForAll @DoubleRange(min = 0.3, max = 0.7) double y,
            @ForAll @DoubleRange(min = -12, max = 12) double degrees,
            @ForAll @DoubleRange(min = 0.05, max = 0.3) double softness) {
        Balance balance = Balance.of(painted(stops, y, degrees, softness), WIDTH, HEIGHT);
        assertThat(balance.stops()).isCloseTo(stops, within(0.2));
        assertThat(balance.y()).isCloseTo(y, within(0.02 + 0.1 * softness));
        assertThat(balance.angleDegrees()).isCloseTo(degrees, within(1.5));
        assertThat(balance.softness()).isCloseTo(softness, within(0.03 + 0.15 * softness));
        assertThat(balance.clear()).isGreaterThan(0.6);
    }

    @Test
    void aForegroundBrighterThanTheSkyIsNegative() {
        assertThat(Balance.of(painted(-2, 0.5, 0, 0.05), WIDTH, HEIGHT).stops()).isCloseTo(-2, within(0.1));
    }

    /** Common practice: 2 stops even a sky 2½ stops brighter; up to a stop looks natural. */
    @Test
    void theFilterThatLeavesHalfAStopComesFirst() {
        Balance balance = Balance.of(painted(2.5, 0.4, 0, 0.04), WIDTH, HEIGHT);
        BalanceWay first = BalanceWay.waysOut(balance, List.of(1.0, 2.0, 3.0)).get(0);
        assertThat(first.kind()).isEqualTo(BalanceWay.Kind.GRADUATED);
        assertThat(first.stops()).isEqualTo(2);
        assertThat(first.leftStops()).isCloseTo(0.5, within(0.1));
        assertThat(first.words()).contains("hard edge");
    }

    @Test
    void anEvenPictureNeedsNothing() {
        Balance balance = Balance.of(painted(0.5, 0.5, 0, 0.1), WIDTH, HEIGHT);
        assertThat(BalanceWay.waysOut(balance, List.of()).get(0).kind()).isEqualTo(BalanceWay.Kind.ONE_EXPOSURE);
    }

    /** A straight ramp of log₂ luminance whose 10 to 90 % spans {@code softness} of the height. */
    private static float[] painted(double stops, double y, double degrees, double softness) {
        float[] picture = new float[WIDTH * HEIGHT];
        double slope = Math.tan(Math.toRadians(degrees));
        double ramp = softness * HEIGHT / 0.8;
        for (int row = 0; row < HEIGHT; row++) {
            for (int x = 0; x < WIDTH; x++) {
                // Counter-clockwise: to the right the line rises, which is a smaller row.
                double line = y * HEIGHT - slope * (x + 0.5 - WIDTH / 2.0);
                double done = Math.max(0, Math.min(1, 0.5 + (row + 0.5 - line) / ramp));
                picture[row * WIDTH + x] = (float) (0.1 * Math.pow(2, stops * (1 - done)));
            }
        }
        return picture;
    }
}
