package ebblight.pocket.exact;

/** Inverse tangent and sine (fdlibm 5.3: s_atan.c, e_atan2.c, e_asin.c), in radians. */
final class Arcs {

    private static final double[] HEADS = {0.4636476090008061, 0.7853981633974483, 0.982793723247329, 1.5707963267948966
    };
    private static final double[] RESTS = {
        2.2698777452961687E-17, 3.061616997868383E-17, 1.3903311031230998E-17, 6.123233995736766E-17
    };
    private static final double A0 = 0.3333333333333293;
    private static final double A1 = -0.19999999999876483;
    private static final double A2 = 0.14285714272503466;
    private static final double A3 = -0.11111110405462356;
    private static final double A4 = 0.09090887133436507;
    private static final double A5 = -0.0769187620504483;
    private static final double A6 = 0.06661073137387531;
    private static final double A7 = -0.058335701337905735;
    private static final double A8 = 0.049768779946159324;
    private static final double A9 = -0.036531572744216916;
    private static final double A10 = 0.016285820115365782;

    private static final double PI_REST = 1.2246467991473532E-16;
    private static final double HALF_PI = 1.5707963267948966;
    private static final double HALF_PI_REST = 6.123233995736766E-17;
    private static final double QUARTER_PI = 0.7853981633974483;

    private static final double P0 = 0.16666666666666666;
    private static final double P1 = -0.3255658186224009;
    private static final double P2 = 0.20121253213486293;
    private static final double P3 = -0.04005553450067941;
    private static final double P4 = 7.915349942898145E-4;
    private static final double P5 = 3.479331075960212E-5;
    private static final double Q1 = -2.403394911734414;
    private static final double Q2 = 2.0209457602335057;
    private static final double Q3 = -0.6882839716054533;
    private static final double Q4 = 0.07703815055590194;

    private Arcs() {}

    static double atan(double number) {
        int size = Words.size(number);
        if (Double.isNaN(number)) {
            return number;
        }
        if (size >= 0x44100000) {
            return Math.copySign(HEADS[3] + RESTS[3], number);
        }
        double x = Math.abs(number);
        int near = -1;
        if (size < 0x3FDC0000) {
            if (size < 0x3E200000) {
                return number;
            }
            x = number;
        } else if (size < 0x3FE60000) {
            near = 0;
            x = (2 * x - 1) / (2 + x);
        } else if (size < 0x3FF30000) {
            near = 1;
            x = (x - 1) / (x + 1);
        } else if (size < 0x40038000) {
            near = 2;
            x = (x - 1.5) / (1 + 1.5 * x);
        } else {
            near = 3;
            x = -1 / x;
        }
        double z = x * x;
        double w = z * z;
        double s1 = z * (A0 + w * (A2 + w * (A4 + w * (A6 + w * (A8 + w * A10)))));
        double s2 = w * (A1 + w * (A3 + w * (A5 + w * (A7 + w * A9))));
        if (near < 0) {
            return x - x * (s1 + s2);
        }
        double arc = HEADS[near] - ((x * (s1 + s2) - RESTS[near]) - x);
        return number < 0 ? -arc : arc;
    }

    static double atan2(double y, double x) {
        if (Double.isNaN(x) || Double.isNaN(y)) {
            return Double.NaN;
        }
        boolean left = Words.high(x) < 0;
        double arc;
        if (Double.isInfinite(x)) {
            arc = Double.isInfinite(y) ? QUARTER_PI : 0;
        } else if (y == 0) {
            arc = 0;
        } else if (x == 0 || Double.isInfinite(y)) {
            return Math.copySign(HALF_PI, y);
        } else {
            int k = (Words.size(y) - Words.size(x)) >> 20;
            arc = k > 60 ? HALF_PI + 0.5 * PI_REST : left && k < -60 ? 0 : atan(Math.abs(y / x));
        }
        if (left) {
            arc = Double.isInfinite(x) && arc > 0 ? 3 * QUARTER_PI : Math.PI - (arc - PI_REST);
        }
        return Math.copySign(arc, y);
    }

    static double asin(double x) {
        double size = Math.abs(x);
        if (!(size < 1)) {
            return size == 1 ? x * HALF_PI + x * HALF_PI_REST : Double.NaN;
        }
        if (size < 0.5) {
            if (Words.size(x) < 0x3E400000) {
                return x;
            }
            double t = x * x;
            return x + x * ratio(t);
        }
        double t = (1 - size) * 0.5;
        double s = Math.sqrt(t);
        double arc;
        if (Words.size(x) >= 0x3FEF3333) {
            arc = HALF_PI - (2 * (s + s * ratio(t)) - HALF_PI_REST);
        } else {
            double w = Words.head(s);
            double c = (t - w * w) / (s + w);
            double p = 2 * s * ratio(t) - (HALF_PI_REST - 2 * c);
            arc = QUARTER_PI - (p - (QUARTER_PI - 2 * w));
        }
        return x > 0 ? arc : -arc;
    }

    private static double ratio(double t) {
        double p = t * (P0 + t * (P1 + t * (P2 + t * (P3 + t * (P4 + t * P5)))));
        return p / (1 + t * (Q1 + t * (Q2 + t * (Q3 + t * Q4))));
    }
}
