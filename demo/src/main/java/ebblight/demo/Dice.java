package ebblight.demo;

/**
 * Random numbers from a seed: the same on every machine (splitmix64, Steele, Lea and Flood 2014, constants from
 * memory). One instance belongs to one thread.
 */
final class Dice {

    private static final long GOLDEN = 0x9E3779B97F4A7C15L;

    private long state;

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
}
