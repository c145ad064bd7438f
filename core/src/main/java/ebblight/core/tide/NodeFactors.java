package ebblight.core.tide;

import ebblight.core.numeric.Powers;
import java.util.EnumMap;
import java.util.Map;

/**
 * Node factors f and phases u at one instant. Source: Schureman, SP 98 (1940), equations 65 to 79, 149, 195 to 235.
 */
final class NodeFactors {

    private static final double RADIAN = Math.PI / 180;

    /** Obliquity of the ecliptic and inclination of the moon's path, in degrees, as SP 98 uses them. */
    private static final double ECLIPTIC = 23.452;

    private static final double MOON_PATH = 5.145;

    private final Map<Node, Double> factor = new EnumMap<>(Node.class);
    private final Map<Node, Double> phaseDegrees = new EnumMap<>(Node.class);

    private NodeFactors() {}

    static NodeFactors at(double epochSeconds) {
        MeanLongitudes mean = MeanLongitudes.at(epochSeconds);
        double node = mean.node() > 180 ? mean.node() - 360 : mean.node();
        double cosInclination = cos(MOON_PATH) * cos(ECLIPTIC) - sin(MOON_PATH) * sin(ECLIPTIC) * cos(node);
        double inclination = atan2(Math.sqrt(1 - cosInclination * cosInclination), cosInclination);
        double tan = StrictMath.tan(RADIAN * node / 2);
        double sum = atan2(cos((ECLIPTIC - MOON_PATH) / 2) * tan, cos((ECLIPTIC + MOON_PATH) / 2));
        double difference = atan2(sin((ECLIPTIC - MOON_PATH) / 2) * tan, sin((ECLIPTIC + MOON_PATH) / 2));
        double nu = sum - difference;
        double xi = node - sum - difference;
        NodeFactors all = new NodeFactors();
        all.fill(inclination, nu, xi, mean.perigee() - xi);
        return all;
    }

    private void fill(double inclination, double nu, double xi, double perigee) {
        double sin = sin(inclination);
        double cos = cos(inclination);
        double sinSquare = sin * sin;
        double sinTwice = sin(2 * inclination);
        double cosHalf = cos(inclination / 2);
        double sinHalf = sin(inclination / 2);
        double cosHalfSquare = cosHalf * cosHalf;
        put(Node.MM, (2 / 3.0 - sinSquare) / 0.5021, 0);
        put(Node.MF, sinSquare / 0.1578, -2 * xi);
        put(Node.O1, sin * cosHalfSquare / 0.3800, 2 * xi - nu);
        put(Node.J1, sinTwice / 0.7214, -nu);
        put(Node.OO1, sin * sinHalf * sinHalf / 0.0164, -2 * xi - nu);
        double semidiurnal = cosHalfSquare * cosHalfSquare / 0.9154;
        double semidiurnalPhase = 2 * xi - 2 * nu;
        put(Node.M2, semidiurnal, semidiurnalPhase);
        put(
                Node.K1,
                Math.sqrt(0.8965 * sinTwice * sinTwice + 0.6001 * sinTwice * cos(nu) + 0.1006),
                -atan2(sinTwice * sin(nu), sinTwice * cos(nu) + 0.3347));
        put(
                Node.K2,
                Math.sqrt(19.0444 * sinSquare * sinSquare + 2.7702 * sinSquare * cos(2 * nu) + 0.0981),
                -atan2(sinSquare * sin(2 * nu), sinSquare * cos(2 * nu) + 0.0727));
        put(Node.ETA2, sinSquare / 0.1565, -2 * nu);
        double tanHalfSquare = sinHalf * sinHalf / cosHalfSquare;
        double l2 = Math.sqrt(1 - 12 * tanHalfSquare * cos(2 * perigee) + 36 * tanHalfSquare * tanHalfSquare);
        double l2Phase = atan2(sin(2 * perigee), 1 / (6 * tanHalfSquare) - cos(2 * perigee));
        put(Node.L2, semidiurnal * l2, semidiurnalPhase - l2Phase);
        double ratio = cos / cosHalfSquare;
        double m1 = Math.sqrt(0.25 + 1.5 * ratio * cos(2 * perigee) + 2.25 * ratio * ratio);
        double m1Phase = atan2((5 * cos - 1) * sin(perigee), (7 * cos + 1) * cos(perigee));
        put(Node.M1, factor(Node.O1) * m1, xi - nu + m1Phase);
    }

    private void put(Node node, double f, double u) {
        factor.put(node, f);
        phaseDegrees.put(node, u);
    }

    double factor(Node node) {
        return factor.getOrDefault(node, 1.0);
    }

    double phaseDegrees(Node node) {
        return phaseDegrees.getOrDefault(node, 0.0);
    }

    /** f of a constituent: the product of its parts' factors to the power of how often they stand in it. */
    double factor(Constituent constituent) {
        double product = 1;
        for (Map.Entry<Node, Double> part : constituent.factorPowers().entrySet()) {
            product *= Powers.pow(factor(part.getKey()), part.getValue());
        }
        return product;
    }

    /** u of a constituent in degrees. */
    double phaseDegrees(Constituent constituent) {
        double sum = 0;
        for (Map.Entry<Node, Double> part : constituent.phaseTimes().entrySet()) {
            sum += part.getValue() * phaseDegrees(part.getKey());
        }
        return sum;
    }

    private static double sin(double degrees) {
        return StrictMath.sin(RADIAN * degrees);
    }

    private static double cos(double degrees) {
        return StrictMath.cos(RADIAN * degrees);
    }

    private static double atan2(double y, double x) {
        return StrictMath.atan2(y, x) / RADIAN;
    }
}
