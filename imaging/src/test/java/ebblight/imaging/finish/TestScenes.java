package ebblight.imaging.finish;

import ebblight.core.numeric.RgbPicture;
import java.util.SplittableRandom;

/** Pictures in memory for the tests. */
final class TestScenes {

    private TestScenes() {}

    /** A slow sky over a grained shore in three colours. */
    static RgbPicture scene(int width, int height, long seed) {
        RgbPicture picture = RgbPicture.black(width, height);
        SplittableRandom dice = new SplittableRandom(seed);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int p = y * width + x;
                double v = (double) y / height;
                boolean sky = v < 0.5 + 0.1 * Math.sin(x / 23.0);
                double grain = 0.01 * (dice.nextDouble() - 0.5);
                double light = sky ? 0.3 + 0.5 * v : 0.05 + 0.03 * Math.sin(x / 3.0) * Math.sin(y / 2.0);
                picture.red()[p] = (float) Math.max(0, light * (sky ? 0.7 : 1.2) + grain);
                picture.green()[p] = (float) Math.max(0, light * 0.9 + grain);
                picture.blue()[p] = (float) Math.max(0, light * (sky ? 1.2 : 0.5) + grain);
            }
        }
        return picture;
    }

    static RgbPicture grey(int width, int height, float[] light) {
        return RgbPicture.of(width, height, light.clone(), light.clone(), light.clone());
    }

    static RgbPicture copy(RgbPicture of) {
        return RgbPicture.of(
                of.width(),
                of.height(),
                of.red().clone(),
                of.green().clone(),
                of.blue().clone());
    }
}
