package ebblight.imaging.finish;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.List;
import java.util.Optional;

/**
 * Black and white by the picture's own colours.
 *
 * @param colours each with its stops; empty: those that are found, with a start that keeps apart what differs
 * @param filter on the lens
 */
public record Monochrome(List<OwnColour> colours, Optional<LensFilter> filter) {

    /** Small pixels in the picture's width on which places are given to colours. */
    private static final int SMALL_WIDTH = 1500;

    private static final int SMALL_RADIUS = 5;
    /** A fifth of a stop counts as an edge. */
    private static final double EDGE = 0.04;
    /** Units of L*a*b* over which one colour fades into the next. */
    private static final double SOFT = 8;

    private static final double DARKEST = 1.0 / 16384;

    public Monochrome {
        colours = List.copyOf(colours);
    }

    /** The colours to work with: the given ones with the share that each has here, or the picture's own. */
    List<OwnColour> resolved(RgbPicture picture, Colours space) {
        return colours.isEmpty() ? OwnColours.separated(OwnColours.of(picture, space)) : colours;
    }

    /** Luminance of the black-and-white picture, in linear light. */
    static float[] luminance(
            RgbPicture picture, Colours space, List<OwnColour> colours, Optional<LensFilter> filter, Work work) {
        int w = picture.width();
        int h = picture.height();
        double[] seen = {space.luminance(1, 0, 0), space.luminance(0, 1, 0), space.luminance(0, 0, 1)};
        double[] weights = filter.isPresent() ? filter.get().weights(seen) : seen;
        float[] y = new float[w * h];
        float[] log = new float[w * h];
        float[] r = picture.red();
        float[] g = picture.green();
        float[] b = picture.blue();
        work.forEach(h, row -> {
            for (int p = row * w; p < (row + 1) * w; p++) {
                y[p] = (float) (weights[0] * r[p] + weights[1] * g[p] + weights[2] * b[p]);
                log[p] = (float) Stops.of(Math.max(DARKEST, space.luminance(r[p], g[p], b[p])));
            }
        });
        if (colours.stream().anyMatch(c -> c.stops() != 0)) {
            EdgeAware along = new EdgeAware(w, h, SMALL_RADIUS * Math.max(1, w / SMALL_WIDTH));
            float[] stops = stops(picture, space, colours, along, work);
            float[] full = along.filter(stops, along.small(log), log, EDGE, work);
            work.forEach(h, row -> {
                for (int p = row * w; p < (row + 1) * w; p++) {
                    y[p] *= (float) Stops.factor(full[p]);
                }
            });
        }
        return y;
    }

    /** Stops of every small pixel: those of the colours, each counted by how near it lies. */
    private static float[] stops(
            RgbPicture picture, Colours space, List<OwnColour> colours, EdgeAware along, Work work) {
        int w = along.smallWidth();
        float[] r = along.small(picture.red());
        float[] g = along.small(picture.green());
        float[] b = along.small(picture.blue());
        float[] stops = new float[r.length];
        work.forEach(along.smallHeight(), row -> {
            double[] lab = new double[3];
            for (int p = row * w; p < (row + 1) * w; p++) {
                space.toLab(r[p], g[p], b[p], lab);
                double sum = 0;
                double all = 0;
                double nearest = Double.MAX_VALUE;
                for (OwnColour each : colours) {
                    nearest = Math.min(nearest, squared(lab, each));
                }
                for (OwnColour each : colours) {
                    double share = StrictMath.exp((nearest - squared(lab, each)) / (2 * SOFT * SOFT));
                    sum += share * each.stops();
                    all += share;
                }
                stops[p] = (float) (sum / all);
            }
        });
        return stops;
    }

    private static double squared(double[] lab, OwnColour colour) {
        double dl = OwnColours.LIGHTNESS_COUNTS * (lab[0] - colour.lightness());
        double da = lab[1] - colour.a();
        double db = lab[2] - colour.b();
        return dl * dl + da * da + db * db;
    }
}
