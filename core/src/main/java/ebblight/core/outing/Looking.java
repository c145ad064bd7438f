package ebblight.core.outing;

/** When to look again at a quantity whose speed has a bound. */
final class Looking {

    private static final double LONGEST_MINUTES = 100_000;

    private Looking() {}

    /**
     * Minutes after which the sign of a margin may differ for the first time.
     *
     * @param margin now
     * @param fastestPerMinute bound on its change
     * @param jump what it may differ at once besides
     */
    static int again(double margin, double fastestPerMinute, double jump) {
        double room = Math.abs(margin) - jump;
        if (!(room > 0)) {
            return 1;
        }
        double minutes = Math.min(LONGEST_MINUTES, room / fastestPerMinute);
        return (int) Math.max(1, margin < 0 ? Math.ceil(minutes) : Math.floor(minutes) + 1);
    }
}
