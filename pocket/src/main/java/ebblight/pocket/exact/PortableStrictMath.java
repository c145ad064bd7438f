package ebblight.pocket.exact;

/**
 * Stands in the page for {@code java.lang.StrictMath}, as {@link Instead} tells the compiler of the page: the methods of
 * fdlibm 5.3 (Sun Microsystems, 1993), whose results Java's are defined to be. Only what core asks for is here; the build
 * of the page fails when it asks for more.
 */
public final class PortableStrictMath {

    private static final int QUARTER_PI = 0x3FE921FB;

    private PortableStrictMath() {}

    public static double sin(double radians) {
        if (Words.size(radians) <= QUARTER_PI) {
            return Trigonometry.sine(radians);
        }
        return beyond(radians) ? Math.sin(radians) : turned(Quadrant.of(radians), 0);
    }

    public static double cos(double radians) {
        if (Words.size(radians) <= QUARTER_PI) {
            return Trigonometry.cosine(radians, 0);
        }
        return beyond(radians) ? Math.cos(radians) : turned(Quadrant.of(radians), 1);
    }

    public static double tan(double radians) {
        if (Words.size(radians) <= QUARTER_PI) {
            return Trigonometry.tangent(radians, 0, false);
        }
        if (beyond(radians)) {
            return Math.tan(radians);
        }
        Quadrant rest = Quadrant.of(radians);
        return Trigonometry.tangent(rest.head(), rest.tail(), (rest.number() & 1) == 1);
    }

    /** Angles of more than a hundred thousand turns are left to the browser: nothing here measures any. */
    private static boolean beyond(double radians) {
        return Words.size(radians) > Quadrant.LARGEST;
    }

    private static double turned(Quadrant rest, int quarters) {
        int quadrant = rest.number() + quarters;
        double value = (quadrant & 1) == 0
                ? Trigonometry.sine(rest.head(), rest.tail())
                : Trigonometry.cosine(rest.head(), rest.tail());
        return (quadrant & 2) == 0 ? value : -value;
    }

    public static double asin(double sine) {
        return Arcs.asin(sine);
    }

    public static double atan2(double y, double x) {
        return Arcs.atan2(y, x);
    }

    public static double exp(double power) {
        return Logarithms.exp(power);
    }

    public static double log(double number) {
        return Logarithms.log(number);
    }

    public static double log10(double number) {
        return Logarithms.log10(number);
    }
}
