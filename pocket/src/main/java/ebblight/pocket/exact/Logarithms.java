package ebblight.pocket.exact;

/** Exponential and logarithms (fdlibm 5.3: e_exp.c, e_log.c, e_log10.c). */
final class Logarithms {

    private static final double LN2_HEAD = 0.6931471803691238;
    private static final double LN2_REST = 1.9082149292705877E-10;

    private static final double OVERFLOW = 709.782712893384;
    private static final double UNDERFLOW = -745.1332191019411;
    private static final double BY_LN2 = 1.4426950408889634;
    private static final double TWO_TO_MINUS_1000 = 9.332636185032189E-302;
    private static final double P1 = 0.16666666666666602;
    private static final double P2 = -0.0027777777777015593;
    private static final double P3 = 6.613756321437934E-5;
    private static final double P4 = -1.6533902205465252E-6;
    private static final double P5 = 4.1381367970572385E-8;

    private static final double TWO_TO_54 = 1.8014398509481984E16;
    private static final double L1 = 0.6666666666666735;
    private static final double L2 = 0.3999999999940942;
    private static final double L3 = 0.2857142874366239;
    private static final double L4 = 0.22222198432149784;
    private static final double L5 = 0.1818357216161805;
    private static final double L6 = 0.15313837699209373;
    private static final double L7 = 0.14798198605116586;

    private static final double BY_LN10 = 0.4342944819032518;
    private static final double LOG10_2_HEAD = 0.30102999566361177;
    private static final double LOG10_2_REST = 3.694239077158931E-13;

    private static final int MANTISSA = 0x000FFFFF;
    private static final int SMALLEST_NORMAL = 0x00100000;
    private static final int INFINITE = 0x7FF00000;

    private Logarithms() {}

    static double exp(double power) {
        if (Double.isNaN(power) || power > OVERFLOW) {
            return Double.isNaN(power) ? power : Double.POSITIVE_INFINITY;
        }
        if (power < UNDERFLOW) {
            return 0;
        }
        double x = power;
        int size = Words.size(x);
        double head = 0;
        double rest = 0;
        int k = 0;
        if (size > 0x3FD62E42) {
            // beyond half of ln 2
            double sign = x < 0 ? -1 : 1;
            k = size < 0x3FF0A2B2 ? (int) sign : (int) (BY_LN2 * x + 0.5 * sign);
            head = x - k * LN2_HEAD;
            rest = k * LN2_REST;
            x = head - rest;
        } else if (size < 0x3E300000) {
            return 1 + x;
        }
        double t = x * x;
        double c = x - t * (P1 + t * (P2 + t * (P3 + t * (P4 + t * P5))));
        if (k == 0) {
            return 1 - ((x * c) / (c - 2) - x);
        }
        double y = 1 - ((rest - (x * c) / (2 - c)) - head);
        return k >= -1021 ? Words.scaled(y, k) : Words.scaled(y, k + 1000) * TWO_TO_MINUS_1000;
    }

    static double log(double number) {
        if (!(number > 0) || Words.high(number) >= INFINITE) {
            return outside(number);
        }
        boolean small = Words.high(number) < SMALLEST_NORMAL;
        double scaled = small ? number * TWO_TO_54 : number;
        int high = Words.high(scaled);
        int k = (high >> 20) - 1023 - (small ? 54 : 0);
        high &= MANTISSA;
        int i = (high + 0x95F64) & SMALLEST_NORMAL;
        k += i >> 20;
        double f = Words.withHigh(scaled, high | (i ^ 0x3FF00000)) - 1;
        if ((MANTISSA & (2 + high)) < 3) {
            return nearOne(f, k);
        }
        double s = f / (2 + f);
        double z = s * s;
        double w = z * z;
        double t1 = w * (L2 + w * (L4 + w * L6));
        double t2 = z * (L1 + w * (L3 + w * (L5 + w * L7)));
        double r = t2 + t1;
        if (((high - 0x6147A) | (0x6B851 - high)) > 0) {
            double half = 0.5 * f * f;
            return k == 0 ? f - (half - s * (half + r)) : k * LN2_HEAD - ((half - (s * (half + r) + k * LN2_REST)) - f);
        }
        return k == 0 ? f - s * (f - r) : k * LN2_HEAD - ((s * (f - r) - k * LN2_REST) - f);
    }

    private static double nearOne(double f, int k) {
        if (f == 0) {
            return k == 0 ? 0 : k * LN2_HEAD + k * LN2_REST;
        }
        double r = f * f * (0.5 - 0.3333333333333333 * f);
        return k == 0 ? f - r : k * LN2_HEAD - ((r - k * LN2_REST) - f);
    }

    static double log10(double number) {
        if (!(number > 0) || Words.high(number) >= INFINITE) {
            return outside(number);
        }
        boolean small = Words.high(number) < SMALLEST_NORMAL;
        double scaled = small ? number * TWO_TO_54 : number;
        int high = Words.high(scaled);
        int k = (high >> 20) - 1023 - (small ? 54 : 0);
        int below = k < 0 ? 1 : 0;
        double x = Words.withHigh(scaled, (high & MANTISSA) | ((1023 - below) << 20));
        double y = k + below;
        return (y * LOG10_2_REST + BY_LN10 * log(x)) + y * LOG10_2_HEAD;
    }

    /** Of zero, of what is below it, of infinity, of no number. */
    private static double outside(double number) {
        if (number == 0) {
            return Double.NEGATIVE_INFINITY;
        }
        return number > 0 ? number : Double.NaN;
    }
}
