package ebblight.imaging.repair;

import java.util.Locale;

/** Numbers in sentences. */
final class Places {

    private Places() {}

    static String of(double value, int places) {
        return String.format(Locale.ROOT, "%." + places + "f", value);
    }
}
