package ebblight.core.motion;

/** Random numbers of the tests: splitmix64 (Steele, Lea, Flood 2014), normal values by Box and Muller (1958). */
final class Dice {

    private long state;

    Dice(long start) {
        state = start;
    }

    /** Even between 0 (inclusive) and 1 (exclusive). */
    double even() {
        state += 0x9E3779B97F4A7C15L;
        long z = state;
        z = (z ^ (z >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return ((z ^ (z >>> 31)) >>> 11) * 0x1p-53;
    }

    /** Normal with mean 0 and standard deviation 1. */
    double normal() {
        return Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
    }
}
