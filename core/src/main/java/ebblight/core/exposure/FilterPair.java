package ebblight.core.exposure;

/**
 * One view without and with a filter: what the still parts of both say. All arrays have one entry for each of these
 * parts.
 *
 * @param gainStops by which the settings with the filter take more light than those without
 * @param lightStops by which the scene itself had become brighter, meanwhile
 * @param lightRangeStops how far off that may be, one standard deviation
 * @param settingsRangeStops how far off the settings may be, one standard deviation
 * @param ratioStops log2 of the light with the filter over that without, of red, green and blue
 * @param block which block of the picture each part lies in, from 0 on: parts of one block may err together
 * @param radius distance of each part from the middle of the picture, corner = 1
 */
public record FilterPair(
        double gainStops,
        double lightStops,
        double lightRangeStops,
        double settingsRangeStops,
        float[][] ratioStops,
        int[] block,
        float[] radius) {

    /** Fewest parts from which something is told. */
    public static final int LEAST_PARTS = 24;

    public FilterPair {
        int n = block.length;
        boolean even = ratioStops.length == 3 && radius.length == n;
        for (float[] channel : ratioStops) {
            even &= channel.length == n;
        }
        if (!even || n < LEAST_PARTS) {
            throw new IllegalArgumentException(
                    "a pair needs red, green and blue of " + LEAST_PARTS + " parts or more, had " + n);
        }
        if (!(lightRangeStops >= 0 && settingsRangeStops >= 0)
                || !Double.isFinite(gainStops)
                || !Double.isFinite(lightStops)) {
            throw new IllegalArgumentException("stops of a pair must be finite and ranges 0 or more");
        }
    }

    int parts() {
        return block.length;
    }
}
