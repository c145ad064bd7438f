package ebblight.pocket.exact;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;

/** To the last bit what the JDK's StrictMath says, which the Java specification defines to be fdlibm's results. */
class PortableStrictMathTest {

    private static final int MANY = 400_000;

    /** Angles beyond are left to the browser. */
    private static final double LARGEST = 823_549;

    private static final double[] PLACES = {
        0,
        -0.0,
        1,
        -1,
        Double.NaN,
        Double.POSITIVE_INFINITY,
        Double.NEGATIVE_INFINITY,
        Double.MIN_VALUE,
        -Double.MIN_VALUE,
        Double.MIN_NORMAL,
        Double.MAX_VALUE,
        1e-310,
        0.5,
        -0.5,
        709.7827128933841,
        709.782712893384,
        -745.1332191019411,
        -745.2,
        -708,
        -740,
        Math.PI,
        Math.PI / 2,
        -Math.PI / 2,
        Math.PI / 4,
        0.75 * Math.PI,
        2 * Math.PI,
        10 * Math.PI,
        50 * Math.PI,
        1e5 * Math.PI,
        2,
        3,
        10,
        100,
        1000
    };

    private static void same(DoubleBinaryOperator ours, DoubleBinaryOperator java, double a, double b) {
        double one = ours.applyAsDouble(a, b);
        double other = java.applyAsDouble(a, b);
        if (Double.doubleToLongBits(one) != Double.doubleToLongBits(other)) {
            assertThat(one).as("of %s and %s", a, b).isEqualTo(other);
        }
    }

    private static void everywhere(DoubleBinaryOperator ours, DoubleBinaryOperator java, double most) {
        for (double a : PLACES) {
            for (double b : PLACES) {
                if (Math.abs(a) > most && !Double.isInfinite(a)) {
                    continue;
                }
                same(ours, java, a, b);
            }
        }
        SplittableRandom dice = new SplittableRandom(7);
        for (int i = 0; i < MANY; i++) {
            double a =
                    switch (i % 6) {
                        case 0 -> dice.nextDouble(-1, 1);
                        case 1 -> dice.nextDouble(-800, 800);
                        case 2 -> dice.nextDouble(-10, 10);
                        case 3 -> Double.longBitsToDouble(dice.nextLong());
                        // within some last bits of multiples of a right angle
                        case 4 -> dice.nextInt(-500_000, 500_000) * (Math.PI / 2) * (1 + dice.nextInt(-3, 4) * 1e-16);
                        default -> 1 + dice.nextDouble(-1e-5, 1e-5);
                    };
            double b = i % 6 == 3 ? Double.longBitsToDouble(dice.nextLong()) : dice.nextDouble(-10, 10);
            if (!(Math.abs(a) > most)) {
                same(ours, java, a, b);
            }
        }
    }

    @Test
    void sinesCosinesAndTangentsAreJavas() {
        everywhere((a, b) -> PortableStrictMath.sin(a), (a, b) -> StrictMath.sin(a), LARGEST);
        everywhere((a, b) -> PortableStrictMath.cos(a), (a, b) -> StrictMath.cos(a), LARGEST);
        everywhere((a, b) -> PortableStrictMath.tan(a), (a, b) -> StrictMath.tan(a), LARGEST);
    }

    @Test
    void exponentialsAndLogarithmsAreJavas() {
        everywhere((a, b) -> PortableStrictMath.exp(a), (a, b) -> StrictMath.exp(a), Double.MAX_VALUE);
        everywhere((a, b) -> PortableStrictMath.log(a), (a, b) -> StrictMath.log(a), Double.MAX_VALUE);
        everywhere((a, b) -> PortableStrictMath.log10(a), (a, b) -> StrictMath.log10(a), Double.MAX_VALUE);
    }

    @Test
    void arcsAreJavas() {
        everywhere((a, b) -> PortableStrictMath.asin(a), (a, b) -> StrictMath.asin(a), Double.MAX_VALUE);
        everywhere(PortableStrictMath::atan2, StrictMath::atan2, Double.MAX_VALUE);
    }
}
