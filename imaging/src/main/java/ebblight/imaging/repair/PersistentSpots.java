package ebblight.imaging.repair;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.LightPicture;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Hot pixels without a dark frame: lone bright pixels that stay at one place of the sensor while it looks at different
 * views. A lamp or a star stays where it is in one view, so frames of one view alone prove nothing.
 */
final class PersistentSpots {

    /** Views are told apart on a grid of so many cells. */
    private static final int ACROSS = 32;

    private static final int DOWN = 24;
    private static final double SAME_VIEW = 0.8;
    private static final int MOST_VIEWS = 8;

    private static final double STANDS_OUT = 8;
    /** Most that the ring two pixels off may rise, as a share of the spot: light through a lens spreads further. */
    private static final double MOST_SPREAD = 0.3;
    /** Share of the frames in which a spot must be seen. */
    private static final double LEAST_SHARE = 0.6;

    private final int width;
    private final int height;
    private final byte[] views;
    private final short[] seen;
    private final List<double[]> looks = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();
    private int frames;

    private PersistentSpots(int width, int height) {
        this.width = width;
        this.height = height;
        views = new byte[width * height];
        seen = new short[width * height];
    }

    /**
     * Spots that the picture and the frames of a folder share.
     *
     * @throws UnreadableInputException when they all show one view
     */
    static PersistentSpots find(RgbPicture picture, Path folder, Work work) throws IOException {
        PersistentSpots spots = new PersistentSpots(picture.width(), picture.height());
        spots.add(picture, work);
        for (Path file : DarkFrames.files(folder)) {
            work.check();
            try {
                RgbPicture frame = LightPicture.read(file, work).light();
                if (frame.width() == spots.width && frame.height() == spots.height) {
                    spots.add(frame, work);
                } else {
                    spots.warnings.add("left out " + file + ": is of another size than the picture");
                }
            } catch (UnreadableInputException e) {
                spots.warnings.add("left out " + e.getMessage());
            }
        }
        if (spots.looks.size() < 2) {
            throw new UnreadableInputException(
                    folder,
                    "shows one view only, in which a lamp stays in place as a hot pixel does; add frames of another"
                            + " view, or give a dark frame with --darks");
        }
        return spots;
    }

    private void add(RgbPicture frame, Work work) {
        int view = view(look(frame));
        if (view >= MOST_VIEWS) {
            return;
        }
        frames++;
        Lone[] lone = new Lone[3];
        for (int c = 0; c < 3; c++) {
            lone[c] = Lone.of(frame.plane(c), width, height, work);
        }
        work.forEach(height, y -> {
            for (int x = 0; x < width; x++) {
                int i = y * width + x;
                for (int c = 0; c < 3; c++) {
                    if (lone[c].above(i) > STANDS_OUT * lone[c].noise()
                            && sharp(frame.plane(c), x, y, lone[c].above(i))) {
                        views[i] |= (byte) (1 << view);
                        seen[i]++;
                        break;
                    }
                }
            }
        });
    }

    /** Whether nothing two pixels off rises with the spot. */
    private boolean sharp(float[] plane, int x, int y, double above) {
        double most = plane[y * width + x] - (1 - MOST_SPREAD) * above;
        for (int v = y - 2; v <= y + 2; v++) {
            for (int u = x - 2; u <= x + 2; u++) {
                boolean ring = Math.abs(u - x) == 2 || Math.abs(v - y) == 2;
                if (ring && u >= 0 && v >= 0 && u < width && v < height && plane[v * width + u] > most) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Logarithms of the light of cells, less their mean. */
    private static double[] look(RgbPicture frame) {
        double[] sums = new double[ACROSS * DOWN];
        int w = frame.width();
        int h = frame.height();
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                sums[y * DOWN / h * ACROSS + x * ACROSS / w] += frame.green()[y * w + x];
            }
        }
        double mean = 0;
        for (int k = 0; k < sums.length; k++) {
            sums[k] = Math.log(1e-3 + sums[k] * sums.length / ((double) w * h));
            mean += sums[k] / sums.length;
        }
        for (int k = 0; k < sums.length; k++) {
            sums[k] -= mean;
        }
        return sums;
    }

    private int view(double[] look) {
        for (int k = 0; k < looks.size(); k++) {
            if (correlation(looks.get(k), look) > SAME_VIEW) {
                return k;
            }
        }
        looks.add(look);
        return looks.size() - 1;
    }

    private static double correlation(double[] a, double[] b) {
        double ab = 0;
        double aa = 1e-12;
        double bb = 1e-12;
        for (int k = 0; k < a.length; k++) {
            ab += a[k] * b[k];
            aa += a[k] * a[k];
            bb += b[k] * b[k];
        }
        return ab / Math.sqrt(aa * bb);
    }

    boolean[] hot() {
        boolean[] hot = new boolean[seen.length];
        for (int i = 0; i < hot.length; i++) {
            hot[i] = Integer.bitCount(views[i] & 0xFF) >= 2 && seen[i] >= LEAST_SHARE * frames;
        }
        return hot;
    }

    String words() {
        return "spots that stay put in " + frames + " frames of " + looks.size() + " views";
    }

    List<String> warnings() {
        return warnings;
    }
}
