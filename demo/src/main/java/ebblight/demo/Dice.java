package ebblight.demo;

/**
 * Random numbers from a seed: the same on every machine (splitmix64, Steele, Lea and Flood 2014, constants from
 * memory). One instance belongs to one thread.
 */
final class Dice {

    private static final long GOLDEN = 0x9E3779B97F4A7C15L;

    private static final int QUANTILES = 4096;
    /** Middles of 4096 equal parts of the normal distribution. */
    private static final double[] NORMAL = quantiles();

    private long state;
    /** Draws of 12 bits that are left. */
    private long drawn;

    private int left;

    Dice(long seed) {
        this.state = seed;
    }

    /** A well-mixed number from any number: the output function of splitmix64. */
    static long mix(long x) {
        long z = (x ^ (x >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }

    private long next() {
        state += GOLDEN;
        return mix(state);
    }

    /** Uniform in [0, 1). */
    double uniform() {
        return (next() >>> 11) * 0x1.0p-53;
    }

    /** Uniform in [from, to). */
    double uniform(double from, double to) {
        return from + (to - from) * uniform();
    }

    /** Normal with mean 0 and standard deviation 1 (Box and Muller). */
    double gaussian() {
        double radius = Math.sqrt(-2 * StrictMath.log(1 - uniform()));
        return radius * StrictMath.cos(2 * Math.PI * uniform());
    }

    /** As {@link #gaussian} from 4096 equally likely values, none beyond 3.7 standard deviations; for noise in bulk. */
    double quickGaussian() {
        if (left == 0) {
            drawn = next();
            left = 5;
        }
        left--;
        double value = NORMAL[(int) (drawn & QUANTILES - 1)];
        drawn >>>= 12;
        return value;
    }

    /** From dz/dp = √(2π) exp(z²/2), half a part at a time by the middle of each step. */
    private static double[] quantiles() {
        double[] z = new double[QUANTILES];
        double root = Math.sqrt(2 * Math.PI);
        double at = 0;
        double squares = 0;
        int parts = 64;
        double step = 0.5 / QUANTILES / parts;
        for (int i = 0; i < QUANTILES / 2; i++) {
            for (int j = 0; j < 2 * parts; j++) {
                if (j == parts) {
                    z[QUANTILES / 2 + i] = at;
                    z[QUANTILES / 2 - 1 - i] = -at;
                    squares += 2 * at * at;
                }
                double middle = at + step / 2 * root * StrictMath.exp(at * at / 2);
                at += step * root * StrictMath.exp(middle * middle / 2);
            }
        }
        double scale = Math.sqrt(QUANTILES / squares);
        for (int i = 0; i < QUANTILES; i++) {
            z[i] *= scale;
        }
        return z;
    }
}
