package ebblight.imaging.finish;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.ShareGrid;
import ebblight.imaging.SoftMasks;
import java.util.Arrays;
import java.util.List;

/**
 * Where the parts of a picture lie and by how much each is printed lighter or darker: softly across, along the edges of
 * the picture.
 *
 * @param grid size of the shares
 * @param shares of the parts, 0 to 1, which sum to 1 everywhere
 * @param stops by which each part is lighter
 */
public record PartTones(ShareGrid grid, List<float[]> shares, List<Double> stops) {

    /** No parts are known. */
    public static final PartTones NONE = new PartTones(new ShareGrid(1, 1, 0), List.of(), List.of());

    public PartTones {
        shares = List.copyOf(shares);
        stops = List.copyOf(stops);
        if (shares.size() != stops.size()) {
            throw new IllegalArgumentException(
                    "every part needs its stops, were " + shares.size() + " parts and " + stops.size() + " stops");
        }
    }

    boolean untouched() {
        return stops.stream().allMatch(s -> s == 0);
    }

    /**
     * What the light of every pixel is to be multiplied by.
     *
     * @param luminance of the picture, linear
     */
    float[] factors(float[] luminance, int width, int height, Work work) {
        float[] guide = new float[luminance.length];
        for (int p = 0; p < guide.length; p++) {
            guide[p] = (float) Math.sqrt(Math.max(0, luminance[p]));
        }
        List<SoftMasks.Part> parts =
                shares.stream().map(share -> new SoftMasks.Part(share, 0)).toList();
        SoftMasks masks = SoftMasks.of(parts, grid, guide, width, height, work);
        float[] factors = new float[luminance.length];
        work.forEach(height, y -> {
            float[][] rows = new float[parts.size()][width];
            masks.row(y, rows);
            for (int x = 0; x < width; x++) {
                double sum = 0;
                for (int k = 0; k < rows.length; k++) {
                    sum += rows[k][x] * stops.get(k);
                }
                factors[y * width + x] = (float) Stops.factor(sum);
            }
        });
        return factors;
    }

    /** The factors as the easel lays the picture: levelled and cropped with it. */
    float[] laid(float[] luminance, int width, int height, Easel easel, Easel.Cut cut, Work work) {
        RgbPicture plane = RgbPicture.black(width, height);
        float[] factors = factors(luminance, width, height, work);
        System.arraycopy(factors, 0, plane.red(), 0, factors.length);
        float[] laid = easel.lay(plane, cut, work).red();
        return Arrays.copyOf(laid, laid.length);
    }
}
