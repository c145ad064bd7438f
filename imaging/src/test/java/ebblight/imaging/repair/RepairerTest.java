package ebblight.imaging.repair;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Faults put into pictures (gains, falloff with the square of the radius, light added) and taken out again. */
class RepairerTest {

    private static final int W = 240;
    private static final int H = 160;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    /** A scene with still detail everywhere: rocks of random size under a sky that grows lighter. */
    private static RgbPicture scene(long seed) {
        Random random = new Random(seed);
        RgbPicture picture = RgbPicture.black(W, H);
        for (int k = 0; k < 500; k++) {
            int left = random.nextInt(W);
            int top = random.nextInt(H);
            int size = 3 + random.nextInt(14);
            float light = 0.05f + 0.3f * random.nextFloat();
            for (int y = top; y < Math.min(H, top + size); y++) {
                for (int x = left; x < Math.min(W, left + size); x++) {
                    picture.red()[y * W + x] = light;
                    picture.green()[y * W + x] = light * 1.05f;
                    picture.blue()[y * W + x] = light * 0.95f;
                }
            }
        }
        return picture;
    }

    private static RgbPicture even(DoubleBinaryOperator light) {
        RgbPicture picture = RgbPicture.black(W, H);
        for (int i = 0; i < W * H; i++) {
            for (int c = 0; c < 3; c++) {
                picture.plane(c)[i] = (float) light.applyAsDouble(i % W, row(i));
            }
        }
        return picture;
    }

    private static double row(int i) {
        int row = i / W;
        return row;
    }

    private static Repairer.Repaired repaired(RgbPicture picture, Repair repair) throws IOException {
        return Repairer.repair(RepairPictures.of(picture), repair, Work.alone());
    }

    private static double furthest(RgbPicture a, RgbPicture b) {
        double most = 0;
        for (int c = 0; c < 3; c++) {
            for (int i = 0; i < W * H; i++) {
                most = Math.max(most, Math.abs(a.plane(c)[i] - b.plane(c)[i]));
            }
        }
        return most;
    }

    @Test
    void nothingAskedForChangesNothing() throws IOException {
        Repairer.Repaired repaired = repaired(scene(1), RepairPictures.NOTHING);
        assertThat(furthest(repaired.light(), scene(1))).isZero();
        assertThat(repaired.changes()).isEmpty();
    }

    @Test
    void aCastIsTakenOffAndClippedLightStaysWhite() throws IOException {
        RgbPicture picture = scene(2);
        for (int i = 0; i < W * H; i++) {
            picture.red()[i] *= 0.8f;
            picture.blue()[i] *= 1.3f;
        }
        for (int c = 0; c < 3; c++) {
            picture.plane(c)[0] = 1;
        }
        Repair repair = RepairPictures.cast(new Cast(0.8, 1.3));
        Repairer.Repaired repaired = repaired(picture, repair);
        RgbPicture expected = scene(2);
        for (int c = 0; c < 3; c++) {
            expected.plane(c)[0] = 1;
        }
        assertThat(furthest(repaired.light(), expected)).isLessThan(1e-6);
        assertThat(repaired.changes().get(0).left()).isEqualTo(1);
    }

    @Test
    void aGreyPartTellsTheCast() throws IOException {
        RgbPicture picture = even((x, y) -> 0.2);
        for (int i = 0; i < W * H; i++) {
            picture.red()[i] *= 1.1f;
        }
        Repair repair = RepairPictures.neutral(new Cast.Area(0.1, 0.1, 0.3, 0.3));
        assertThat(furthest(repaired(picture, repair).light(), even((x, y) -> 0.2)))
                .isLessThan(1e-6);
        RgbPicture black = even((x, y) -> 0);
        assertThatThrownBy(() -> repaired(black, repair))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("too dark");
    }

    @Test
    void darkCornersAreLightened() throws IOException {
        double corner = W * W / 4.0 + H * H / 4.0;
        RgbPicture picture = even((x, y) ->
                0.4 * Math.pow(2, -0.7 * (Math.pow(x + 0.5 - W / 2.0, 2) + Math.pow(y + 0.5 - H / 2.0, 2)) / corner));
        Repair repair = RepairPictures.corners(0.7);
        assertThat(furthest(repaired(picture, repair).light(), even((x, y) -> 0.4)))
                .isLessThan(1e-5);
    }

    /** A band of light from above, an exposure twice as long, noise, and a third of the picture that moved. */
    @Test
    void leakedLightComesOffAgainstAReference() throws IOException {
        Random random = new Random(3);
        RgbPicture reference = scene(4);
        RgbPicture truth = scene(4);
        RgbPicture picture = RgbPicture.black(W, H);
        RgbPicture moved = scene(5);
        double worst = 0;
        for (int i = 0; i < W * H; i++) {
            double leak = 0.1 * Math.pow(1 - row(i) / H, 2) * (1 - 0.4 * (i % W) / W);
            worst = Math.max(worst, leak);
            for (int c = 0; c < 3; c++) {
                double light = 2 * (i % W < W / 3 && i / W > H / 2 ? moved : truth).plane(c)[i];
                truth.plane(c)[i] = (float) light;
                picture.plane(c)[i] = (float) (light + leak + 0.001 * random.nextGaussian());
                reference.plane(c)[i] += (float) (0.001 * random.nextGaussian());
            }
        }
        Path file = folder.resolve("reference.tif");
        RepairPictures.write(file, reference);
        Repair repair = RepairPictures.reference(file);
        RgbPicture light = repaired(picture, repair).light();
        double left = 0;
        for (int i = 0; i < W * H; i++) {
            left += (light.green()[i] - truth.green()[i]) / (W * H);
        }
        assertThat(left).isCloseTo(0, within(0.03 * worst));
        double square = 0;
        for (int i = 0; i < W * H; i++) {
            square += Math.pow(light.green()[i] - truth.green()[i], 2) / (W * H);
        }
        assertThat(Math.sqrt(square)).isLessThan(0.1 * worst);

        Path other = folder.resolve("other.tif");
        RepairPictures.write(other, scene(9));
        Repair wrong = RepairPictures.reference(other);
        assertThatThrownBy(() -> repaired(scene(4), wrong)).hasMessageContaining("must be the same view");
    }

    @Test
    void dustIsSpottedOutOfASkyAndLeftAloneOverDetail() throws IOException {
        Random random = new Random(6);
        float[] grain = new float[W * H];
        for (int i = 0; i < grain.length; i++) {
            grain[i] = (float) (0.002 * random.nextGaussian());
        }
        DoubleBinaryOperator sky = (x, y) -> 0.3 + 0.1 * y / H + grain[(int) (y * W + x)];
        RgbPicture picture = even((x, y) -> {
            double far = Math.hypot(x + 0.5 - W / 2.0, y + 0.5 - H / 2.0) / 5;
            return sky.applyAsDouble(x, y) * (far < 1 ? 0.9 : far < 1.4 ? 0.9 + 0.1 * (far - 1) / 0.4 : 1);
        });
        Repair repair = RepairPictures.dust(new Dust(0.5, 0.5, 5.0 / W));
        Repairer.Repaired repaired = repaired(picture, repair);
        RgbPicture clean = even(sky);
        double left = 0;
        int n = 0;
        for (int y = H / 2 - 3; y < H / 2 + 3; y++) {
            for (int x = W / 2 - 3; x < W / 2 + 3; x++) {
                left += repaired.light().green()[y * W + x] / clean.green()[y * W + x] - 1;
                n++;
            }
        }
        assertThat(left / n).isCloseTo(0, within(0.01)); // was −0.1
        assertThat(repaired.changes().get(0).pixels()).isPositive();

        Repairer.Repaired rocks = repaired(scene(7), repair);
        assertThat(furthest(rocks.light(), scene(7))).isZero();
        assertThat(rocks.changes().get(0).left()).isEqualTo(1);
    }

    /** Linear growth between 10 s and 20 s is measured, so 20 s frames serve a picture of 40 s; other growth does not. */
    @Test
    void darkFramesOfAnotherTimeAreScaledOnlyWhenMeasuredSo() throws IOException {
        assertThat(darkOfBoth(1).scale()).isCloseTo(2, within(1e-9));
        assertThat(darkOfBoth(1.8).scale()).isNaN();
        Path one = Files.createDirectory(folder.resolve("one"));
        dark(one.resolve("a.tif"), 20, 1);
        DarkLight dark = DarkLight.of(
                DarkFrames.read(one, FrameFacts.none(), W, H, Work.alone()), OptionalDouble.of(40), Work.alone());
        assertThat(dark.scale()).isNaN();
        assertThat(dark.words()).contains("only places are used");
    }

    private DarkLight darkOfBoth(double power) throws IOException {
        Path darks = Files.createDirectory(folder.resolve("darks" + power));
        dark(darks.resolve("a.tif"), 10, power);
        dark(darks.resolve("b.tif"), 20, power);
        return DarkLight.of(
                DarkFrames.read(darks, FrameFacts.none(), W, H, Work.alone()), OptionalDouble.of(40), Work.alone());
    }

    private static void dark(Path file, double seconds, double power) throws IOException {
        Random random = new Random(21);
        int[] codes = new int[3 * W * H];
        for (int k = 0; k < 40; k++) {
            int i = random.nextInt(W * H);
            int hot = (int) ((500 + random.nextInt(3000)) * Math.pow(seconds / 10, power));
            codes[3 * i] = hot;
            codes[3 * i + 1] = hot;
            codes[3 * i + 2] = hot;
        }
        RepairPictures.writeLinear(file, codes, W, H, OptionalDouble.of(seconds));
    }

    @Test
    void aFrameWithLightIsNoDarkFrame() throws IOException {
        Path file = folder.resolve("light.tif");
        RepairPictures.write(file, scene(8));
        assertThatThrownBy(() -> RepairPictures.byDarks(scene(8), file))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining(file.toString())
                .hasMessageContaining("is no dark frame");
    }

    /** Glow of a corner in the dark frame and in the picture comes off; the level both have stays. */
    @Test
    void glowComesOff() throws IOException {
        DoubleBinaryOperator glow = (x, y) -> 0.01 * Math.exp(-Math.hypot(x, y) / 60);
        Path file = folder.resolve("dark.tif");
        RepairPictures.write(file, even((x, y) -> 0.001 + glow.applyAsDouble(x, y)));
        RgbPicture picture = even((x, y) -> 0.05 + glow.applyAsDouble(x, y));
        Repairer.Repaired repaired = RepairPictures.byDarks(picture, file);
        assertThat(repaired.light().green()[2 * W + 2]).isCloseTo(0.05f, within(0.0015f)); // was 0.0595
        assertThat(repaired.light().green()[W * H - 1]).isCloseTo(0.05f, within(0.0005f));
        assertThat(repaired.changes()).anySatisfy(c -> {
            assertThat(c.kind()).isEqualTo("glow");
            assertThat(c.pixels()).isPositive();
        });
    }

    /** Three views: what stays on the sensor goes, a lamp that is in one view stays; one view alone is refused. */
    @Test
    void spotsThatStayPutOverSeveralViewsAreHotAndLampsAreNot() throws IOException {
        Random random = new Random(31);
        int[] hot = random.ints(30, 0, W * H).toArray();
        Path views = Files.createDirectory(folder.resolve("views"));
        for (int k = 0; k < 3; k++) {
            RepairPictures.write(views.resolve("v" + k + ".tif"), night(100 + k, hot));
        }
        int lamp = 40 * W + 77;
        RgbPicture picture = night(200, hot);
        for (int c = 0; c < 3; c++) {
            picture.plane(c)[lamp] = 0.9f;
        }
        float[] before = picture.green().clone();
        Repair repair = RepairPictures.frames(views);
        Repairer.Repaired repaired = repaired(picture, repair);
        byte[] mask = repaired.mask().values();
        for (int i : hot) {
            assertThat(mask[i]).as("hot pixel " + i).isNotZero();
        }
        assertThat(mask[lamp]).isZero();
        int changed = 0;
        for (int i = 0; i < W * H; i++) {
            changed += repaired.light().green()[i] == before[i] ? 0 : 1;
        }
        assertThat(changed).isLessThanOrEqualTo(hot.length);

        Path same = Files.createDirectory(folder.resolve("same"));
        RepairPictures.write(same.resolve("a.tif"), night(200, hot));
        assertThatThrownBy(() -> repaired(night(200, hot), RepairPictures.frames(same)))
                .hasMessageContaining("shows one view only");
    }

    private static RgbPicture night(long seed, int[] hot) {
        RgbPicture picture = scene(seed);
        Random random = new Random(seed);
        for (int c = 0; c < 3; c++) {
            for (int i = 0; i < W * H; i++) {
                picture.plane(c)[i] = (float) (0.1 * picture.plane(c)[i] + 0.0005 * random.nextGaussian() + 0.002);
            }
            for (int i : hot) {
                picture.plane(c)[i] += 0.2f;
            }
        }
        return picture;
    }

    @Test
    void aTurnLevelsAndCutsEmptyCorners() throws IOException {
        Repair repair = RepairPictures.level(2);
        double slope = Math.tan(Math.toRadians(2));
        // a horizon whose right end lies higher by 2 degrees
        RgbPicture picture = even((x, y) -> y + slope * (x - W / 2.0) < H / 2.0 ? 0.6 : 0.1);
        RgbPicture level = repaired(picture, repair).light();
        assertThat(level.width()).isLessThan(W);
        double left = horizon(level, 5);
        double right = horizon(level, level.width() - 6);
        assertThat(right - left).isCloseTo(0, within(0.6)); // was 8 pixels
    }

    private static double horizon(RgbPicture picture, int x) {
        double rows = 0;
        for (int y = 0; y < picture.height(); y++) {
            rows += (picture.green()[y * picture.width() + x] - 0.1) / 0.5;
        }
        return rows;
    }
}
