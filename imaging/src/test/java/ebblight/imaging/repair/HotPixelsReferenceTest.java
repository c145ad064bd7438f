package ebblight.imaging.repair;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.LightPicture;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Hot pixels of a real camera (14 dark frames of 25 to 3916 ms), as they are and with more planted among glow and noise,
 * against a plain threshold on the dark frame. What is printed stands in docs/accuracy.md.
 */
class HotPixelsReferenceTest {

    private static final String NAME = "d1_dark_%s-%s.tif";
    private static final String LONG = "3916ms_2019-02-08-171307";
    private static final String SHORT = "2000ms_2019-02-08-171233";

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private Path darks = Path.of("");

    @BeforeEach
    void findTheFrames() {
        darks = Path.of(System.getProperty("ebblight.shared", "../shared"), "data", "darks");
        Assumptions.assumeTrue(Files.exists(darks), "no real dark frames at " + darks);
    }

    /** Codes of a frame; the files hold one grey channel without a profile. */
    private int[] codes(String time, String number) throws Exception {
        LightPicture frame =
                LightPicture.read(darks.resolve(String.format(Locale.ROOT, NAME, time, number)), Work.alone());
        float[] linear = frame.profile().curve().table(8);
        int[] codes = new int[frame.light().red().length];
        for (int i = 0; i < codes.length; i++) {
            while (linear[codes[i]] < frame.light().red()[i]) {
                codes[i]++;
            }
        }
        return codes;
    }

    /** How many of what was found is right, and how many of what is there was found. */
    record Score(double precision, double recall, int truth) {

        static Score of(boolean[] found, boolean[] truth) {
            int both = 0;
            int all = 0;
            int there = 0;
            for (int i = 0; i < found.length; i++) {
                both += found[i] && truth[i] ? 1 : 0;
                all += found[i] ? 1 : 0;
                there += truth[i] ? 1 : 0;
            }
            return new Score(all == 0 ? 1 : (double) both / all, (double) both / there, there);
        }

        double harmonic() {
            return precision + recall == 0 ? 0 : 2 * precision * recall / (precision + recall);
        }

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "precision %.3f, recall %.3f of %d", precision, recall, truth);
        }
    }

    /** Everything brighter than mean + {@code sigmas} standard deviations of the dark frame. */
    private static boolean[] plain(float[] plane, double sigmas) {
        double mean = 0;
        double square = 0;
        for (float v : plane) {
            mean += v / plane.length;
        }
        for (float v : plane) {
            square += (v - mean) * (v - mean) / plane.length;
        }
        boolean[] found = new boolean[plane.length];
        for (int i = 0; i < plane.length; i++) {
            found[i] = plane[i] > mean + sigmas * Math.sqrt(square);
        }
        return found;
    }

    /** The plain threshold at its best, chosen with the truth in hand. */
    private static Score bestPlain(float[] plane, boolean[] truth) {
        Score best = Score.of(plain(plane, 1), truth);
        for (double sigmas = 1; sigmas < 12; sigmas += 0.25) {
            Score score = Score.of(plain(plane, sigmas), truth);
            best = score.harmonic() > best.harmonic() ? score : best;
        }
        return best;
    }

    private DarkLight dark(Path file) throws Exception {
        LightPicture one = LightPicture.read(file, Work.alone());
        DarkFrames frames = DarkFrames.read(
                file, FrameFacts.none(), one.light().width(), one.light().height(), Work.alone());
        return DarkLight.of(frames, OptionalDouble.empty(), Work.alone());
    }

    /** Found in one frame; hot is what another frame of that time and two of half that time show, growing with time. */
    @Test
    void realOnesOfALongExposureAreThoseThatFramesTakenApartShow() throws Exception {
        int[] other = codes(LONG, "0004");
        int[] half = codes(SHORT, "0003");
        int[] halfAgain = codes(SHORT, "0004");
        boolean[] truth = new boolean[other.length];
        for (int i = 0; i < truth.length; i++) {
            truth[i] = other[i] >= 3 && half[i] >= 2 && halfAgain[i] >= 2 && 2 * other[i] >= 3 * half[i] - 2;
        }
        DarkLight dark = dark(darks.resolve(String.format(Locale.ROOT, NAME, LONG, "0003")));
        boolean[] found = HotPixels.inDark(dark);
        Score ours = Score.of(found, truth);
        Score plain = Score.of(plain(dark.light().red(), 5), truth);
        System.out.println("hot pixels, real, 3.9 s: " + ours + "; mean + 5 sigma: " + plain
                + "; best plain threshold: " + bestPlain(dark.light().red(), truth));
        assertThat(ours.recall()).isGreaterThanOrEqualTo(0.95);
        assertThat(ours.precision()).isGreaterThanOrEqualTo(0.8);
        assertThat(ours.harmonic()).isGreaterThanOrEqualTo(plain.harmonic());
    }

    /** The real frame with 300 more, glow from a corner, an offset and read noise: linear light, 16 bits. */
    @Test
    void plantedOnesAreFoundUnderGlowAndNoise() throws Exception {
        int w = 408;
        int h = 344;
        int[] real = codes(LONG, "0003");
        int[] again = codes(LONG, "0004");
        boolean[] truth = new boolean[real.length];
        boolean[] unsure = new boolean[real.length];
        double[] planted = new double[real.length];
        Random random = new Random(7);
        for (int k = 0; k < 300; k++) {
            planted[random.nextInt(planted.length)] = 15 + random.nextInt(185);
        }
        int[] codes = new int[3 * real.length];
        for (int i = 0; i < real.length; i++) {
            int row = i / w;
            double glow = 60 * Math.exp(-Math.hypot(i % w, row) / 90);
            double value = 10 + glow + real[i] + planted[i] + 2 * random.nextGaussian();
            truth[i] = planted[i] > 0 || (real[i] >= 14 && again[i] >= 14);
            unsure[i] = !truth[i] && real[i] >= 2; // real ones too faint for the noise that was added
            for (int c = 0; c < 3; c++) {
                codes[3 * i + c] = (int) Math.max(0, Math.min(65535, Math.round(value * 40)));
            }
        }
        Path file = folder.resolve("dark.tif");
        RepairPictures.writeLinear(file, codes, w, h);
        DarkLight dark = dark(file);
        boolean[] found = HotPixels.inDark(dark);
        for (int i = 0; i < found.length; i++) {
            found[i] &= !unsure[i];
        }
        Score ours = Score.of(found, truth);
        float[] plane = dark.light().red();
        Score plain = Score.of(plain(plane, 5), truth);
        Score best = bestPlain(plane, truth);
        System.out.println("hot pixels, planted under glow: " + ours + "; mean + 5 sigma: " + plain
                + "; best plain threshold: " + best);
        assertThat(ours.precision()).isGreaterThanOrEqualTo(0.98);
        assertThat(ours.recall()).isGreaterThanOrEqualTo(0.97);
        assertThat(ours.harmonic()).isGreaterThan(best.harmonic());
    }

    /** A picture with the sensor's real hot pixels and stars: the stars keep every bit, the hot pixels go. */
    @Test
    void starsAndSprayKeepEveryBit() throws Exception {
        int w = 408;
        int h = 344;
        int[] real = codes(LONG, "0003");
        int[] again = codes(LONG, "0004");
        int[] dark = new int[3 * real.length];
        for (int i = 0; i < dark.length; i++) {
            dark[i] = 40 * real[i / 3];
        }
        Path darkFile = folder.resolve("dark.tif");
        RepairPictures.writeLinear(darkFile, dark, w, h);
        Random random = new Random(11);
        RgbPicture picture = RgbPicture.black(w, h);
        boolean[] star = new boolean[w * h];
        for (int i = 0; i < w * h; i++) {
            int row = i / w;
            for (int c = 0; c < 3; c++) {
                picture.plane(c)[i] = (float) (0.02 + 0.01 * row / h + 0.001 * random.nextGaussian());
            }
        }
        for (int k = 0; k < 600; k++) { // of one pixel each: the hardest to tell from hot ones
            int i = random.nextInt(w * h);
            star[i] = real[i] == 0;
            for (int c = 0; c < 3; c++) {
                picture.plane(c)[i] += star[i] ? 0.05f + 0.8f * random.nextFloat() : 0;
            }
        }
        boolean[] seen = new boolean[w * h];
        for (int i = 0; i < w * h; i++) {
            seen[i] = again[i] * 40 / 65535.0 > 0.01; // ten times the noise of the picture
            for (int c = 0; c < 3; c++) {
                picture.plane(c)[i] += (float) (again[i] * 40 / 65535.0);
            }
        }
        float[][] before = {
            picture.red().clone(), picture.green().clone(), picture.blue().clone()
        };
        Repairer.Repaired repaired = RepairPictures.byDarks(picture, darkFile);
        int replaced = 0;
        int there = 0;
        for (int i = 0; i < w * h; i++) {
            boolean changed = repaired.mask().values()[i] != 0;
            replaced += changed && seen[i] ? 1 : 0;
            there += seen[i] ? 1 : 0;
            for (int c = 0; c < 3; c++) {
                assertThat(changed || repaired.light().plane(c)[i] == before[c][i])
                        .isTrue();
            }
            assertThat(changed && real[i] == 0)
                    .as("changed where the sensor is sound")
                    .isFalse();
            assertThat(changed && star[i]).isFalse();
        }
        assertThat(there).isGreaterThanOrEqualTo(15);
        assertThat(replaced).isEqualTo(there);
    }
}
