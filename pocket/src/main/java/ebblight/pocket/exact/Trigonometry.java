package ebblight.pocket.exact;

/** Sine, cosine and tangent between −π/4 and π/4 (fdlibm 5.3: k_sin.c, k_cos.c, k_tan.c); y is the tail of x. */
final class Trigonometry {

    private static final int TINY = 0x3E400000;
    private static final int TINY_TANGENT = 0x3E300000;
    private static final int LARGE_TANGENT = 0x3FE59428;

    private static final double S1 = -0.16666666666666632;
    private static final double S2 = 0.00833333333332249;
    private static final double S3 = -1.984126982985795E-4;
    private static final double S4 = 2.7557313707070068E-6;
    private static final double S5 = -2.5050760253406863E-8;
    private static final double S6 = 1.58969099521155E-10;

    private static final double C1 = 0.0416666666666666;
    private static final double C2 = -0.001388888888887411;
    private static final double C3 = 2.480158728947673E-5;
    private static final double C4 = -2.7557314351390663E-7;
    private static final double C5 = 2.087572321298175E-9;
    private static final double C6 = -1.1359647557788195E-11;

    private static final double T0 = 0.3333333333333341;
    private static final double T1 = 0.13333333333320124;
    private static final double T2 = 0.05396825397622605;
    private static final double T3 = 0.021869488294859542;
    private static final double T4 = 0.0088632398235993;
    private static final double T5 = 0.0035920791075913124;
    private static final double T6 = 0.0014562094543252903;
    private static final double T7 = 5.880412408202641E-4;
    private static final double T8 = 2.464631348184699E-4;
    private static final double T9 = 7.817944429395571E-5;
    private static final double T10 = 7.140724913826082E-5;
    private static final double T11 = -1.8558637485527546E-5;
    private static final double T12 = 2.590730518636337E-5;

    private static final double QUARTER_PI = 0.7853981633974483;
    private static final double QUARTER_PI_REST = 3.061616997868383E-17;

    private Trigonometry() {}

    static double sine(double x) {
        if (Words.size(x) < TINY) {
            return x;
        }
        double z = x * x;
        return x + z * x * (S1 + z * sineTerms(z));
    }

    static double sine(double x, double y) {
        if (Words.size(x) < TINY) {
            return x;
        }
        double z = x * x;
        double v = z * x;
        return x - ((z * (0.5 * y - v * sineTerms(z)) - y) - v * S1);
    }

    private static double sineTerms(double z) {
        return S2 + z * (S3 + z * (S4 + z * (S5 + z * S6)));
    }

    static double cosine(double x, double y) {
        int size = Words.size(x);
        if (size < TINY) {
            return 1;
        }
        double z = x * x;
        double r = z * (C1 + z * (C2 + z * (C3 + z * (C4 + z * (C5 + z * C6)))));
        if (size < 0x3FD33333) {
            return 1 - (0.5 * z - (z * r - x * y));
        }
        // about a quarter of x, so that 1 less it is exact
        double q = size > 0x3FE90000 ? 0.28125 : Words.withHigh(0, size - 0x00200000);
        return (1 - q) - ((0.5 * z - q) - (z * r - x * y));
    }

    /** @param odd whether −1/tan is wanted */
    static double tangent(double angle, double tail, boolean odd) {
        double x = angle;
        double y = tail;
        int size = Words.size(x);
        if (size < TINY_TANGENT) {
            return odd ? inverse(x, y, x + y) : x;
        }
        boolean large = size >= LARGE_TANGENT;
        if (large) {
            x = (QUARTER_PI - Math.abs(angle)) + (QUARTER_PI_REST - (angle < 0 ? -tail : tail));
            y = 0;
        }
        double z = x * x;
        double w = z * z;
        double r = T1 + w * (T3 + w * (T5 + w * (T7 + w * (T9 + w * T11))));
        double v = z * (T2 + w * (T4 + w * (T6 + w * (T8 + w * (T10 + w * T12)))));
        double s = z * x;
        r = y + z * (s * (r + v) + y);
        r += T0 * s;
        w = x + r;
        if (large) {
            v = odd ? -1 : 1;
            return (angle < 0 ? -1 : 1) * (v - 2 * (x - (w * w / (w + v) - r)));
        }
        return odd ? inverse(x, r, w) : w;
    }

    /** −1/(x + r), of which w is the rounded sum, with the bits that rounding lost. */
    private static double inverse(double x, double r, double w) {
        double z = Words.head(w);
        double v = r - (z - x);
        double a = -1 / w;
        double t = Words.head(a);
        double s = 1 + t * z;
        return t + a * (s + t * v);
    }
}
