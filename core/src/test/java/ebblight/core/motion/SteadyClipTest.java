package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Work;
import org.junit.jupiter.api.Test;

/** Frames of a camera that moved by known amounts. */
class SteadyClipTest {

    private static final int WIDTH = 64;
    private static final int HEIGHT = 48;

    /** The larger shift, 4 px, and 0.01 rad over half of 100 px, 0.5 px: 4.5, up to 5, and one for the filter. */
    @Test
    void theCropHoldsTheFarthestCorner() {
        Placement[] placements = {Placement.HERE, new Placement(3, -4, -0.01), new Placement(-2, 1, 0)};
        assertThat(SteadyClip.crop(placements, 100)).isEqualTo(6);
        assertThat(SteadyClip.crop(new Placement[] {Placement.HERE}, 100)).isEqualTo(1);
        assertThat(placements[1].atEdge(100)).isCloseTo(5.5, within(1e-12)); // √(9 + 16) + 0.5
    }

    /** A quarter turn about the middle (1, 1) of 3 × 3 takes the right neighbour below, then comes the shift. */
    @Test
    void aTurnIsAboutTheMiddle() {
        Placing turned = Placing.of(new Placement(10, 20, Math.PI / 2), 3, 3);
        assertThat(turned.x(2, 1)).isCloseTo(11, within(1e-12));
        assertThat(turned.y(2, 1)).isCloseTo(22, within(1e-12));
        assertThat(turned.xAt(5, 3)).isCloseTo(11, within(1e-12)); // pixel 5 is (2, 1)
        assertThat(turned.yAt(5, 3)).isCloseTo(22, within(1e-12));
        assertThat(turned.x(1, 1)).isCloseTo(11, within(1e-12));
        assertThat(turned.y(1, 1)).isCloseTo(21, within(1e-12));
    }

    /** Cubic convolution carries a slope exactly (Keys 1981), so a slope that was moved comes back as it was. */
    @Test
    void aSlopeComesBack() {
        Placement[] placements = {new Placement(2.3, -1.6, 0.02), Placement.HERE, new Placement(-1.5, 0.4, -0.03)};
        Clip shaken = Plain.clip(WIDTH, HEIGHT, 3, 2, (x, y, t) -> slope(back(placements[(int) (t / 2)], x, y)));
        int crop = SteadyClip.crop(placements, WIDTH);
        Clip steady = SteadyClip.of(shaken, placements, crop, Work.alone());
        assertThat(steady.width()).isEqualTo(WIDTH - 2 * crop);
        assertThat(steady.height()).isEqualTo(HEIGHT - 2 * crop);
        float[] green = new float[steady.width() * steady.height()];
        for (int i = 0; i < 3; i++) {
            assertThat(steady.timeSeconds(i)).isEqualTo(2.0 * i);
            steady.channel(i, 1, green);
            for (int p = 0; p < green.length; p++) {
                int row = p / steady.width();
                double[] at = {p % steady.width() + crop, row + crop};
                assertThat((double) green[p]).isCloseTo(slope(at), within(3.0 / 65535));
            }
        }
    }

    /** A textured wall filmed by hand; where the camera was is found again. */
    @Test
    void theTrackFindsTheShake() {
        float[][] frames = new float[9][];
        Placement[] shake = new Placement[frames.length];
        for (int i = 0; i < frames.length; i++) {
            double k = i - 4;
            shake[i] = new Placement(0.6 * k, -0.4 * k, 0.002 * k);
            frames[i] = wall(shake[i]);
        }
        CameraTrack track = CameraTrack.of(frames, WIDTH, HEIGHT, 2, new float[0], Work.alone());
        assertThat(track.indices()).containsExactly(0, 2, 4, 6, 8);
        for (int k = 0; k < 5; k++) {
            Placement found = track.placements()[k];
            Placement true1 = shake[2 * k];
            assertThat(found.dx()).isCloseTo(true1.dx(), within(0.1));
            assertThat(found.dy()).isCloseTo(true1.dy(), within(0.1));
            assertThat(found.angle()).isCloseTo(true1.angle(), within(0.002));
        }
        assertThat(track.agreement()).isGreaterThan(0.9);
        assertThat(track.stillArea()).isGreaterThan(0.9);
        assertThat(track.hold()).isGreaterThan(10);
        assertThat(Camera.judge(track, WIDTH).verdict()).isEqualTo(Camera.Verdict.CORRECTED);
    }

    /** The right half renews itself in every frame: it does not stand still, the left does. */
    @Test
    void whatChangesDoesNotCountAsStill() {
        float[][] frames = new float[9][];
        for (int i = 0; i < frames.length; i++) {
            frames[i] = wall(Placement.HERE);
            double[] fresh = Plain.noise(WIDTH, HEIGHT, 1.5, 100 + i);
            for (int p = 0; p < frames[i].length; p++) {
                if (p % WIDTH >= WIDTH / 2) {
                    frames[i][p] = (float) (fresh[p] - 0.2);
                }
            }
        }
        CameraTrack track = CameraTrack.of(frames, WIDTH, HEIGHT, 1, new float[0], Work.alone());
        assertThat(track.stillArea()).isBetween(0.35, 0.65);
        assertThat(Camera.judge(track, WIDTH).verdict()).isEqualTo(Camera.Verdict.STILL);
        float[] known = new float[WIDTH * HEIGHT];
        for (int p = 0; p < known.length; p++) {
            known[p] = p % WIDTH < WIDTH / 4 ? 1 : 0;
        }
        assertThat(CameraTrack.of(frames, WIDTH, HEIGHT, 1, known, Work.alone()).stillArea())
                .isEqualTo(0.25);
    }

    /** √((0² + 5² + 10²)/3) = 6.455; a tripod moves by none of this, no correction reaches across half the picture. */
    @Test
    void theCameraIsJudgedByHowFarItMoved() {
        Camera moved = Camera.judge(
                track(1, 1, 100, new Placement(0, 0, 0), new Placement(3, 4, 0), new Placement(-10, 0, 0)), 1000);
        assertThat(moved.rmsPixels()).isCloseTo(Math.sqrt(125 / 3.0), within(1e-12));
        assertThat(moved.largestPixels()).isEqualTo(10);
        assertThat(moved.verdict()).isEqualTo(Camera.Verdict.CORRECTED);
        Placement far = new Placement(500, 0, 0);
        assertThat(verdict(track(1, 1, 100, far))).isEqualTo(Camera.Verdict.REFUSED);
        assertThat(verdict(track(1, 1, 100, Placement.HERE))).isEqualTo(Camera.Verdict.STILL);
        assertThat(verdict(track(0.1, 1, 100, far))).isEqualTo(Camera.Verdict.UNSURE);
        assertThat(verdict(track(1, 0.001, 100, far))).isEqualTo(Camera.Verdict.UNSURE);
        assertThat(verdict(track(1, 1, 1, far))).isEqualTo(Camera.Verdict.UNSURE);
    }

    private static Camera.Verdict verdict(CameraTrack track) {
        return Camera.judge(track, 1000).verdict();
    }

    private static CameraTrack track(double agreement, double stillArea, double hold, Placement... placements) {
        return new CameraTrack(new int[placements.length], placements, agreement, stillArea, hold);
    }

    private static double slope(double[] at) {
        return 0.3 + 0.004 * at[0] - 0.003 * at[1];
    }

    /** Where in the middle frame what a moved frame shows at a place lies: shift off, then turned back. */
    private static double[] back(Placement q, double x, double y) {
        double dx = x - q.dx() - (WIDTH - 1) / 2.0;
        double dy = y - q.dy() - (HEIGHT - 1) / 2.0;
        double c = Math.cos(q.angle());
        double s = Math.sin(q.angle());
        return new double[] {c * dx + s * dy + (WIDTH - 1) / 2.0, -s * dx + c * dy + (HEIGHT - 1) / 2.0};
    }

    private static float[] wall(Placement q) {
        float[] wall = new float[WIDTH * HEIGHT];
        for (int p = 0; p < wall.length; p++) {
            int row = p / WIDTH;
            double[] at = back(q, p % WIDTH, row);
            wall[p] = (float) (0.3
                    + 0.1 * Math.sin(0.5 * at[0] + 0.2 * at[1])
                    + 0.08 * Math.sin(0.37 * at[1] - 0.11 * at[0] + 1)
                    + 0.05 * Math.sin(0.8 * at[0] - 0.6 * at[1]));
        }
        return wall;
    }
}
