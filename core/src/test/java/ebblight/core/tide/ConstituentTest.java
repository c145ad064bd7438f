package ebblight.core.tide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Arguments put together from the mean longitudes, against published speeds and sums worked by hand. */
class ConstituentTest {

    private static Constituent m2() {
        return Constituent.of("M2", new double[] {2, -2, 2, 0, 0}, 0, Node.M2, 1);
    }

    private static Constituent k1() {
        return Constituent.of("K1", new double[] {1, 0, 1, 0, 0}, -90, Node.K1, 1);
    }

    private static Constituent l2() {
        return Constituent.of("L2", new double[] {2, -1, 2, -1, 0}, 180, Node.L2, 1);
    }

    /** Speeds in degrees an hour after Schureman, SP 98: M2 28.9841042, K1 15.0410686, L2 29.5284789. */
    @Test
    void speedsAreThoseOfTheManual() {
        assertThat(m2().degreesPerHour()).isCloseTo(28.9841042, within(1e-7));
        assertThat(k1().degreesPerHour()).isCloseTo(15.0410686, within(1e-7));
        assertThat(l2().degreesPerHour()).isCloseTo(29.5284789, within(1e-7));
    }

    /** M4 57.9682084, 2MK3 42.9271398, MK3 44.0251729 degrees an hour (the same manual). */
    @Test
    void compoundsAddWhatStandsInThem() {
        Constituent m4 = Constituent.compound("M4").plus(2, m2());
        Constituent backwards = Constituent.compound("2MK3").plus(2, m2()).plus(-1, k1());
        Constituent mk3 = Constituent.compound("MK3").plus(1, m2()).plus(1, k1());
        assertThat(m4.name()).isEqualTo("M4");
        assertThat(m4.degreesPerHour()).isCloseTo(57.9682084, within(1e-7));
        assertThat(backwards.degreesPerHour()).isCloseTo(42.9271398, within(1e-7));
        assertThat(mk3.degreesPerHour()).isCloseTo(44.0251729, within(1e-7));
        // at mean longitudes of nought only the constants are left: −90 once, and taken off once
        MeanLongitudes nought = new MeanLongitudes(0, 0, 0, 0, 0, 0);
        assertThat(mk3.argumentDegrees(nought)).isEqualTo(-90);
        assertThat(backwards.argumentDegrees(nought)).isEqualTo(90);
        // T 10, s 20, h 30, p 40, p₁ 50: L2 is 20 − 20 + 60 − 40 + 180
        assertThat(l2().argumentDegrees(new MeanLongitudes(10, 20, 30, 40, 0, 50)))
                .isEqualTo(200);
        assertThat(Constituent.of("PI1", new double[] {1, 0, -2, 0, 1}, 90, Node.NONE, 1)
                        .argumentDegrees(new MeanLongitudes(10, 20, 30, 40, 0, 50)))
                .isEqualTo(10 - 60 + 50 + 90);
    }

    /** SP 98, paragraph on compounds (from memory): f is the product of the parts' f, each as often as it stands; u adds with sign. */
    @Test
    void nodesOfCompoundsMultiplyAndAdd() {
        NodeFactors nodes = NodeFactors.at(Epoch.seconds(Instant.parse("2026-07-02T12:00:00Z")));
        double f = nodes.factor(Node.M2);
        double fk = nodes.factor(Node.K1);
        Constituent twice = Constituent.compound("2MK3").plus(2, m2()).plus(-1, k1());
        assertThat(nodes.factor(twice)).isCloseTo(f * f * fk, within(1e-12));
        assertThat(nodes.phaseDegrees(twice))
                .isCloseTo(2 * nodes.phaseDegrees(Node.M2) - nodes.phaseDegrees(Node.K1), within(1e-12));
        // M2 twice over by two steps is M2 twice
        Constituent steps = Constituent.compound("M4").plus(1, m2()).plus(1, m2());
        assertThat(nodes.factor(steps)).isCloseTo(f * f, within(1e-12));
        assertThat(nodes.phaseDegrees(steps)).isCloseTo(2 * nodes.phaseDegrees(Node.M2), within(1e-12));
        assertThat(nodes.factor(Node.NONE)).isEqualTo(1);
        assertThat(nodes.phaseDegrees(Node.NONE)).isZero();
    }

    /**
     * The series of SP 98, page 162, summed by hand two centuries on, at 2100-01-01 12:00 (T = 2): s 270.43659 +
     * 962535.78114 + 0.00792 + 0.000016 is 2674 turns and 166.225666 degrees, and so on.
     */
    @Test
    void longitudesTwoCenturiesOn() {
        MeanLongitudes mean = MeanLongitudes.at(Epoch.seconds(Instant.parse("2100-01-01T12:00:00Z")));
        assertThat(mean.hourAngle()).isEqualTo(360);
        assertThat(mean.moon()).isCloseTo(166.225666, within(1e-7));
        assertThat(mean.sun()).isCloseTo(281.23572, within(1e-7));
        assertThat(mean.perigee()).isCloseTo(192.35626, within(1e-7));
        assertThat(mean.node()).isCloseTo(350.907596, within(1e-7));
        assertThat(mean.perihelion()).isCloseTo(284.660694, within(1e-7));
    }

    /** Meeus, Astronomical Algorithms, chapters 25, 47 and 22 for J2000 (from memory), a newer theory: within 0.02 degrees. */
    @Test
    void longitudesAgreeWithANewerTheory() {
        MeanLongitudes mean = MeanLongitudes.at(Epoch.seconds(Instant.parse("2000-01-01T12:00:00Z")));
        assertThat(mean.moon()).isCloseTo(218.3164, within(0.02));
        assertThat(mean.sun()).isCloseTo(280.4665, within(0.02));
        assertThat(mean.perigee()).isCloseTo(83.3532, within(0.02));
        assertThat(mean.node()).isCloseTo(125.0445, within(0.02));
        assertThat(mean.perihelion()).isCloseTo(282.9373, within(0.02));
    }

    /** Fifteen degrees an hour from midnight, and half a turn. */
    @ParameterizedTest
    @CsvSource({"2026-03-01T00:00:00Z, 180", "2026-03-01T06:00:00Z, 270", "1969-12-31T18:00:00Z, 450"})
    void theSunTurnsWithTheHour(Instant instant, double degrees) {
        assertThat(MeanLongitudes.at(Epoch.seconds(instant)).hourAngle()).isCloseTo(degrees, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"0, 0", "370, 10", "-90, 270", "725, 5", "360, 0"})
    void degreesAreWrapped(double degrees, double wrapped) {
        assertThat(MeanLongitudes.wrap(degrees)).isEqualTo(wrapped);
    }

    /**
     * The node swings phases by a few degrees (from memory: M2 2.1, K1 8.9, O1 10.8, K2 17.7) and heights by a few percent to
     * a fifth, once in 18.6 years.
     */
    @Test
    void theNodeTurnsPhasesByAFewDegreesOnly() {
        double most = 0;
        double least = 0;
        double start = Epoch.seconds(Instant.parse("2010-01-01T00:00:00Z"));
        for (double years = 0; years < 19; years += 0.25) {
            NodeFactors nodes = NodeFactors.at(start + years * 31_557_600);
            assertThat(Math.abs(nodes.phaseDegrees(Node.M2))).isLessThan(2.2);
            assertThat(Math.abs(nodes.phaseDegrees(Node.O1))).isLessThan(11);
            assertThat(Math.abs(nodes.phaseDegrees(Node.K2))).isLessThan(18);
            assertThat(nodes.factor(Node.M2)).isBetween(0.963, 1.038);
            most = Math.max(most, nodes.phaseDegrees(Node.K1));
            least = Math.min(least, nodes.phaseDegrees(Node.K1));
        }
        assertThat(most).isCloseTo(8.9, within(0.2));
        assertThat(least).isCloseTo(-8.9, within(0.2));
    }

    @Test
    void allNamesAreKnownByThemselves() {
        Set<String> names = Constituents.names();
        assertThat(names).hasSizeGreaterThan(150).contains("M2", "LAMBDA2", "4M2S12");
        assertThat(names)
                .allSatisfy(name -> assertThat(Constituents.named(name)).isPresent());
    }
}
