package ebblight.core.tide;

import java.util.EnumMap;
import java.util.Map;

/** One harmonic of the tide: how its argument runs with the mean longitudes, and how the moon's node changes it. */
final class Constituent {

    private final String name;
    private final double[] multiples;
    private final double constantDegrees;
    private final Map<Node, Double> factorPowers;
    private final Map<Node, Double> phaseTimes;

    /**
     * A constituent.
     *
     * @param multiples of T, s, h, p, p₁
     * @param constantDegrees added to the argument
     * @param factorPowers power of f of each node
     * @param phaseTimes multiple of u of each node
     */
    private Constituent(
            String name,
            double[] multiples,
            double constantDegrees,
            Map<Node, Double> factorPowers,
            Map<Node, Double> phaseTimes) {
        this.name = name;
        this.multiples = multiples;
        this.constantDegrees = constantDegrees;
        this.factorPowers = factorPowers;
        this.phaseTimes = phaseTimes;
    }

    /** A constituent of the tidal potential with the node factor of its kind to a power. */
    static Constituent of(String name, double[] multiples, double constantDegrees, Node node, double power) {
        Map<Node, Double> powers = new EnumMap<>(Node.class);
        powers.put(node, power);
        return new Constituent(name, multiples.clone(), constantDegrees, powers, powers);
    }

    /** The constituent that shallow water makes where others meet: nothing of each yet. */
    static Constituent compound(String name) {
        return new Constituent(
                name,
                new double[MeanLongitudes.DEGREES_PER_HOUR.length],
                0,
                new EnumMap<>(Node.class),
                new EnumMap<>(Node.class));
    }

    /** This compound with so many times another more. */
    Constituent plus(int times, Constituent other) {
        double[] sums = multiples.clone();
        for (int i = 0; i < sums.length; i++) {
            sums[i] += times * other.multiples[i];
        }
        Map<Node, Double> powers = new EnumMap<>(factorPowers);
        other.factorPowers.forEach((node, power) -> powers.merge(node, Math.abs(times) * power, Double::sum));
        Map<Node, Double> phases = new EnumMap<>(phaseTimes);
        other.phaseTimes.forEach((node, multiple) -> phases.merge(node, times * multiple, Double::sum));
        return new Constituent(name, sums, constantDegrees + times * other.constantDegrees, powers, phases);
    }

    /** The name in this program's table. */
    String name() {
        return name;
    }

    /** Speed in degrees an hour, without the slow turn of the node. */
    double degreesPerHour() {
        double speed = 0;
        for (int i = 0; i < multiples.length; i++) {
            speed += multiples[i] * MeanLongitudes.DEGREES_PER_HOUR[i];
        }
        return speed;
    }

    /** V: the argument at the mean longitudes of an instant, in degrees, not wrapped. */
    double argumentDegrees(MeanLongitudes mean) {
        return multiples[0] * mean.hourAngle()
                + multiples[1] * mean.moon()
                + multiples[2] * mean.sun()
                + multiples[3] * mean.perigee()
                + multiples[4] * mean.perihelion()
                + constantDegrees;
    }

    /** Power of f of each node that has one. */
    Map<Node, Double> factorPowers() {
        return factorPowers;
    }

    /** Multiple of u of each node that has one. */
    Map<Node, Double> phaseTimes() {
        return phaseTimes;
    }
}
