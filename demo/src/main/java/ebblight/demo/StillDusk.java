package ebblight.demo;

import ebblight.core.motion.Kind;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.util.Arrays;

/** A clear sky over water without a breath of wind, down to night: nothing moves in it. */
public final class StillDusk implements Scene {

    private static final int WIDTH = 480;
    private static final int HEIGHT = 320;

    private final double light;

    /**
     * A dusk.
     *
     * @param light against that of the evening, above 0; 0.02 is night
     */
    public StillDusk(double light) {
        this.light = light;
    }

    @Override
    public int width() {
        return WIDTH;
    }

    @Override
    public int height() {
        return HEIGHT;
    }

    @Override
    public RgbPicture frame(double timeSeconds) {
        Lens lens = Lens.cove(WIDTH);
        RgbPicture picture = RgbPicture.black(WIDTH, HEIGHT);
        double[] rgb = new double[3];
        for (int y = 0; y < HEIGHT; y++) {
            double up = lens.up(y + 0.5);
            double mirrored = up < 0 ? 0.35 : 1;
            for (int x = 0; x < WIDTH; x++) {
                double right = lens.right(x + 0.5);
                EveningSky.clear(right / Math.sqrt(1 + right * right), Math.abs(up), rgb);
                for (int c = 0; c < 3; c++) {
                    picture.plane(c)[y * WIDTH + x] = (float) (light * mirrored * rgb[c]);
                }
            }
        }
        return picture;
    }

    @Override
    public Kind[] kinds(Work work) {
        Kind[] kinds = new Kind[WIDTH * HEIGHT];
        Arrays.fill(kinds, Kind.FIXED);
        return kinds;
    }
}
