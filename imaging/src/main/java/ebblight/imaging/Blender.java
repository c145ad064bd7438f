package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * Puts several exposures of one view together, each where it is wanted, in linear light of the first frame's primaries.
 * Its memory holds the mean of all frames, one layer at a time, their masks and the result, however many frames there
 * are, and the result is the same bits for any number of threads.
 */
public final class Blender {

    /** More light than any sample holds: what a darkest value is where no frame saw anything. */
    private static final double MOST_LIGHT = 16;

    private final FrameSource source;
    private final List<BlendLayer> layers;
    private final ShareGrid grid;
    private final Placed placed;
    private final Work work;

    private Blender(FrameSource source, List<BlendLayer> layers, ShareGrid grid, Placed placed, Work work) {
        this.source = source;
        this.layers = layers;
        this.grid = grid;
        this.placed = placed;
        this.work = work;
    }

    /**
     * Blends.
     *
     * @param layers what shows where; their shares sum to 1
     * @param still share of every survey pixel that stands still: by it the light of the layers is matched
     */
    public static BlendResult blend(
            FrameSource source, List<BlendLayer> layers, float[] still, ShareGrid grid, Placed placed, Work work)
            throws IOException {
        return new Blender(source, List.copyOf(layers), grid, placed, work).blend(still);
    }

    private BlendResult blend(float[] still) throws IOException {
        try (FramePass all = FramePass.read(source, FramePass.Take.until(Double.POSITIVE_INFINITY), placed, work)) {
            int w = all.width();
            int h = all.height();
            IntToDoubleFunction mean = all.light();
            float[] guide = all.lightness();
            List<SoftMasks.Part> parts = layers.stream()
                    .map(layer -> new SoftMasks.Part(layer.share(), layer.edge()))
                    .toList();
            SoftMasks masks = SoftMasks.of(parts, grid, guide, w, h, work);
            int across = Math.min(w, grid.width() + 2 * grid.crop());
            int down = Math.min(h, grid.height() + 2 * grid.crop());
            Reduced reduced = new Reduced(w, h, across, down);
            LightMatch match = new LightMatch(reduced, mean, grid.enlarged(still, across, down), work);
            float[] light = new float[3 * w * h];
            boolean clip = !source.pictures();
            List<BlendResult.Layer> done = new ArrayList<>();
            for (int k = 0; k < layers.size(); k++) {
                work.check();
                work.progress(0.3 + 0.5 * k / layers.size(), "laying layer " + (k + 1) + " of " + layers.size());
                BlendLayer layer = layers.get(k);
                byte[] mask = new byte[w * h];
                if (layer.isWhole()) {
                    double[] ones = {1, 1, 1};
                    add(masks, k, mean, mean, ones, light, mask, w, h);
                    done.add(described(all.shots(), clip, ones, mask));
                    continue;
                }
                try (FramePass pass = FramePass.read(source, layer.take(), placed, work)) {
                    IntToDoubleFunction own = pass.light(all.profile());
                    double[] gains = match.gains(own, grid.enlarged(layer.share(), across, down));
                    add(masks, k, own, mean, gains, light, mask, w, h);
                    done.add(described(pass.shots(), clip, gains, mask));
                }
            }
            return new BlendResult(
                    coded(light, all.profile(), w, h),
                    List.copyOf(done),
                    all.shots().count(),
                    source.skipped(),
                    all.shots().totalSeconds(clip),
                    source.facts(),
                    source.warnings());
        }
    }

    /** Adds a layer to the light of the whole; where it saw nothing the mean of all frames stands in. */
    private void add(
            SoftMasks masks,
            int layer,
            IntToDoubleFunction own,
            IntToDoubleFunction mean,
            double[] gains,
            float[] light,
            byte[] mask,
            int w,
            int h) {
        work.forEach(h, y -> {
            float[][] rows = new float[layers.size()][w];
            masks.row(y, rows);
            for (int x = 0; x < w; x++) {
                double share = rows[layer][x];
                int p = y * w + x;
                mask[p] = (byte) Math.round(255 * share);
                if (share > 0) {
                    for (int c = 0; c < 3; c++) {
                        double v = own.applyAsDouble(3 * p + c);
                        boolean seen = v >= 0 && v <= MOST_LIGHT;
                        light[3 * p + c] += (float) (share * (seen ? gains[c] * v : mean.applyAsDouble(3 * p + c)));
                    }
                }
            }
        });
    }

    private static BlendResult.Layer described(Shots shots, boolean clip, double[] gains, byte[] mask) {
        return new BlendResult.Layer(shots.count(), shots.totalSeconds(clip), shots.gaps(), gains, mask);
    }

    private CodedPicture coded(float[] light, IccProfile profile, int w, int h) {
        IccProfile target = profile.forWriting();
        CodeTable encode = CodeTable.of(target.curve());
        short[] codes = new short[light.length];
        work.forEach(h, y -> {
            for (int i = 3 * y * w; i < 3 * (y + 1) * w; i++) {
                codes[i] = (short) WholeCode.nearest(encode.code16(light[i]));
            }
        });
        return new CodedPicture(w, h, codes, target);
    }
}
