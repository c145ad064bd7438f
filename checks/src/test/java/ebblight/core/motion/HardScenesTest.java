package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.core.wish.Demand;
import ebblight.core.wish.Word;
import ebblight.demo.Bough;
import ebblight.demo.Coast;
import ebblight.demo.FallingWater;
import ebblight.demo.Passers;
import ebblight.demo.Scene;
import ebblight.demo.Sensor;
import ebblight.demo.StillDusk;
import ebblight.engine.Blobs;
import ebblight.engine.Engine;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Scenes that measuring by motion stumbles over: a horizon, falling water, a bough that leaves its place, nothing that
 * moves, people who pause. What is true of each scene is the scene's own making, never what is measured.
 */
class HardScenesTest {

    private static final Work WORK = new AllCores();
    private static final int PER_SECOND = 10;
    private static final int SECONDS = 10;

    private static Clip film(Scene scene, double iso) {
        int n = SECONDS * PER_SECOND;
        Sensor sensor = new Sensor(iso);
        double[] times = new double[n];
        byte[][] codes = new byte[n][];
        WORK.forEach(n, i -> {
            times[i] = (double) i / PER_SECOND;
            codes[i] = sensor.srgb8(scene.frame(times[i]), 31L * i + 7);
        });
        return Clip.of(scene.width(), scene.height(), times, List.of(codes), Clip.Coding.SRGB8);
    }

    private static ViewSurvey survey(Clip clip) {
        return ViewSurvey.of(clip, Strokes.none(), RegionModel.standard(), WORK);
    }

    /** Share of the pixels that truly are of a kind and are called another. */
    private static double called(ViewSurvey survey, Kind[] truth, Kind kind, Kind other) {
        int all = 0;
        int as = 0;
        for (int p = 0; p < truth.length; p++) {
            if (truth[p] == kind) {
                all++;
                as += kindAt(survey, p) == other ? 1 : 0;
            }
        }
        return (double) as / all;
    }

    private static Kind kindAt(ViewSurvey survey, int p) {
        return survey.map().parts().get(survey.map().partAt(p)).kind();
    }

    /** A scene as a camera sees it that is turned about the middle of the picture; kinds are those of the level one. */
    private record Leaning(Scene level, double radians) implements Scene {
        @Override
        public int width() {
            return level.width();
        }

        @Override
        public int height() {
            return level.height();
        }

        @Override
        public RgbPicture frame(double timeSeconds) {
            RgbPicture from = level.frame(timeSeconds);
            RgbPicture to = RgbPicture.black(width(), height());
            for (int p = 0; p < width() * height(); p++) {
                double u = p % width() - (width() - 1) / 2.0;
                double v = Math.floor((double) p / width()) - (height() - 1) / 2.0;
                double x = Math.cos(radians) * u + Math.sin(radians) * v + (width() - 1) / 2.0;
                double y = Math.cos(radians) * v - Math.sin(radians) * u + (height() - 1) / 2.0;
                int left = (int) Math.max(0, Math.min(width() - 2, Math.floor(x)));
                int top = (int) Math.max(0, Math.min(height() - 2, Math.floor(y)));
                double a = Math.max(0, Math.min(1, x - left));
                double b = Math.max(0, Math.min(1, y - top));
                int q = top * width() + left;
                for (int c = 0; c < 3; c++) {
                    float[] f = from.plane(c);
                    to.plane(c)[p] = (float) ((1 - b) * ((1 - a) * f[q] + a * f[q + 1])
                            + b * ((1 - a) * f[q + width()] + a * f[q + width() + 1]));
                }
            }
            return to;
        }

        @Override
        public Kind[] kinds(Work work) {
            return level.kinds(work);
        }
    }

    /** The demo's horizon lies two fifths of the height under the upper edge: row 128 of 320. */
    @ParameterizedTest
    @CsvSource({
        "evening, 100, 0",
        "breeze-1.5, 800, 0",
        "wind-3, 800, 1.2",
        "wind-8, 100, -0.8",
        "wind-3-swell-8, 100, 0"
    })
    void seaUnderSkyIsSplitAtTheHorizon(String weather, double iso, double leanDegrees) {
        Scene level = Coast.in(SyntheticTruthTest.weather(weather)).offingView(480, WORK);
        double lean = Math.toRadians(leanDegrees);
        ViewSurvey survey = survey(film(lean == 0 ? level : new Leaning(level, lean), iso));
        Horizon line = survey.horizon().orElseThrow();
        double slope = Math.tan(lean);
        // turned about the middle, row 159.5; the line is met 31.5 to 32 rows above it
        double middle = 159.5 - 31.75 / Math.cos(lean);
        assertThat((line.left() + line.right()) / 2).isCloseTo(middle, within(1.5));
        assertThat(Math.toDegrees(Math.atan((line.right() - line.left()) / 479)))
                .isCloseTo(Math.toDegrees(slope), within(0.3));
        int drifting = 0;
        int flowing = 0;
        for (int p = 0; p < 480 * 320; p++) {
            int row = p / 480;
            double below = row - middle - slope * (p % 480 - 239.5);
            drifting += below > 3 && kindAt(survey, p) == Kind.DRIFTING ? 1 : 0;
            flowing += below < -3 && below > -15 && kindAt(survey, p) == Kind.FLOWING ? 1 : 0;
        }
        assertThat(drifting).as("pixels under the line that drift").isLessThan(150);
        assertThat(flowing).as("pixels over the line that flow").isLessThan(150);
    }

    /** Where there is no sea under a sky, there is no horizon. */
    @Test
    void nothingElseHasAHorizon() {
        for (Scene scene : List.of(new FallingWater(), new Bough(0.1, 2.2, 5, 7.2, true), new StillDusk(0.03))) {
            assertThat(survey(film(scene, 100)).horizon())
                    .as(scene.getClass().getSimpleName())
                    .isEmpty();
        }
    }

    /** Strands of falling water stay however long the exposure: common practice. */
    @ParameterizedTest
    @CsvSource({"100", "800"})
    void fallingWaterFlowsAndNeverReadsGlass(double iso) {
        FallingWater water = new FallingWater();
        ViewSurvey survey = survey(film(water, iso));
        Kind[] truth = water.kinds(WORK);
        // strands near the lip, where it is slow, are told as swaying: a line drawn by hand mends it
        assertThat(called(survey, truth, Kind.FLOWING, Kind.FLOWING)).isGreaterThan(0.75);
        assertThat(called(survey, truth, Kind.FLOWING, Kind.FIXED)).isLessThan(0.03);
        for (RegionMotion region : Measurement.of(survey, WORK).regions()) {
            if (region.part().kind() == Kind.FLOWING && region.part().areaFraction() > 0.02) {
                assertThat(Demand.left(region, region.at().apply(960).ratio())).isGreaterThan(0.01);
                assertThat(demand(region, Word.GLASS).likely()).isEmpty();
            }
        }
    }

    /** What exposures of the fall itself leave: means of a hundred instants a second over half a minute. */
    @Test
    void fallingWaterSettlesAsTold() {
        FallingWater water = new FallingWater();
        int perSecond = 100;
        List<Integer> at = new ArrayList<>();
        float[] mask = new float[water.width() * water.height()];
        for (int p = 0; p < mask.length; p++) {
            mask[p] = water.falls(p) ? 1 : 0;
            if (water.falls(p) && p % water.width() % 5 == 0 && p / water.width() % 7 == 0) {
                at.add(p);
            }
        }
        double[] times = new double[32 * perSecond];
        Arrays.setAll(times, i -> (double) i / perSecond);
        float[][] light = water.luminance(at.stream().mapToInt(p -> p).toArray(), times, WORK);
        LuminanceFrames frames = LuminanceFrames.of(film(water, 100), WORK);
        NoiseModel noise = NoiseModel.of(frames, frames.mean(0, frames.count()));
        int[] pixels = PixelSeries.thinned(mask);
        PixelSeries series = PixelSeries.of(frames.all(), frames.timesSeconds(), pixels);
        ClipCurve curve = ClipCurve.of(
                Variogram.of(series, noise.at(series.mean())), false, Crests.of(series, pixels, frames.width()));
        double atOnce = variance(light, 1);
        for (double seconds : new double[] {0.5, 1, 2, 4}) {
            double truth = Math.sqrt(variance(light, (int) (seconds * perSecond)) / atOnce);
            Remaining told = curve.at(seconds);
            System.out.printf("fall, %s s: %.3f, told %s%n", seconds, truth, told);
            assertThat(2 * Math.abs(Math.log(told.ratio() / truth) / Math.log(2)))
                    .as("stops at %s s", seconds)
                    .isLessThan(1);
            assertThat(truth).isBetween(told.low(), told.high());
        }
    }

    /** Variance between means of {@code n} neighbouring instants, the mean over all pixels. */
    private static double variance(float[][] light, int n) {
        int groups = light.length / n;
        double sum = 0;
        for (int k = 0; k < light[0].length; k++) {
            double all = 0;
            double squares = 0;
            for (int g = 0; g < groups; g++) {
                double mean = 0;
                for (int i = g * n; i < (g + 1) * n; i++) {
                    mean += light[i][k] / n;
                }
                all += mean / groups;
                squares += mean * mean / groups;
            }
            sum += (squares - all * all) * groups / (groups - 1.0);
        }
        return sum / light[0].length;
    }

    /** Its end goes some 30 to 60 pixels to either side, far beyond the size of its leaves. */
    @ParameterizedTest
    @CsvSource({"0.1, 2.2, false, 100", "0.1, 1.6, true, 100", "0.1, 2.2, true, 800", "0.2, 2.5, false, 800"})
    void aBoughThatLeavesItsPlaceSways(double swing, double period, boolean beforeSky, double iso) {
        Bough bough = new Bough(swing, period, 5, 7.2, beforeSky);
        ViewSurvey survey = survey(film(bough, iso));
        Kind[] truth = bough.kinds(WORK);
        assertThat(called(survey, truth, Kind.SWAYING, Kind.FLOWING))
                .as("read as water")
                .isLessThan(0.02);
        assertThat(called(survey, truth, Kind.SWAYING, Kind.SWAYING)).isGreaterThan(0.9);
        RegionMotion part = Measurement.of(survey, WORK).regions().stream()
                .filter(r -> r.part().kind() == Kind.SWAYING)
                .findFirst()
                .orElseThrow();
        assertThat(part.rhythm().periodSeconds()).isCloseTo(period, within(0.05 * period));
        assertThat(part.rhythm().lulls()).anySatisfy(lull -> {
            assertThat(lull.fromSeconds()).isCloseTo(5, within(0.4));
            assertThat(lull.toSeconds()).isCloseTo(7.2, within(0.4));
        });
        // movements beyond the grain of its texture are told too small, and said to be
        assertThat(part.swingPixels().applyAsDouble(period)).isBetween(1.0, bough.swingPixels());
    }

    @ParameterizedTest
    @CsvSource({"1, 100", "1, 800", "0.03, 100", "0.03, 3200"})
    void whereNothingMovesItIsSaid(double light, double iso) throws Exception {
        Clip clip = film(new StillDusk(light), iso);
        Blobs blobs = new Blobs();
        StringBuilder times = new StringBuilder();
        Sensor sensor = new Sensor(iso);
        RgbPicture still = new StillDusk(light).frame(0);
        for (int i = 0; i < clip.frames(); i++) {
            times.append(i == 0 ? "" : ",").append((double) i / PER_SECOND);
            blobs.put("dusk/" + i, sensor.srgb8(still, 31L * i + 7));
        }
        String answer = new Engine()
                .answer(
                        "{\"schema\":\"measure/1\",\"frames\":{\"blob\":\"dusk\",\"coding\":\"srgb8\",\"width\":480,"
                                + "\"height\":320,\"timesSeconds\":[" + times + "]}}",
                        blobs,
                        WORK);
        assertThat(answer).contains("nothing moves that I can see").doesNotContain("\"camera\":\"corrected\"");
        for (RegionMotion region : Measurement.of(survey(clip), WORK).regions()) {
            assertThat(region.velocity()).isEmpty();
            assertThat(region.flags().seen()).isFalse();
            assertThat(region.rhythm().lulls()).isEmpty();
        }
    }

    private static List<Passers.Walk> walks(int people, double pauseSeconds) {
        List<Passers.Walk> walks = new ArrayList<>();
        for (int i = 0; i < people; i++) {
            walks.add(new Passers.Walk(-8 + 1.5 * i, (i % 2 == 0 ? 1 : -1) * (40 + 5 * (i % 4)), 200 + 9 * i, 100, 0));
        }
        if (pauseSeconds > 0) {
            walks.add(new Passers.Walk(0.5, 60, 250, 100, pauseSeconds));
            walks.add(new Passers.Walk(0.5, -60, 270, 380, pauseSeconds));
        }
        return walks;
    }

    /** Share of the time at which somebody covers a place, for every pixel. */
    private static double[] covered(Passers quay) {
        double[] covered = new double[quay.width() * quay.height()];
        for (int i = 0; i < SECONDS * PER_SECOND; i++) {
            float[] cover = quay.cover((double) i / PER_SECOND);
            for (int p = 0; p < cover.length; p++) {
                covered[p] += cover[p] > 0.5 ? 1.0 / (SECONDS * PER_SECOND) : 0;
            }
        }
        return covered;
    }

    @ParameterizedTest
    @CsvSource({"0", "3", "6.3"})
    void placesAreCoveredAsLongAsPeopleStandThere(double pauseSeconds) {
        Passers quay = new Passers(walks(10, pauseSeconds));
        LuminanceFrames frames = LuminanceFrames.of(film(quay, 100), WORK);
        NoiseModel noise = NoiseModel.of(frames, frames.mean(0, frames.count()));
        double[] covered = covered(quay);
        float[] ever = new float[covered.length];
        float[] most = new float[covered.length];
        double all = 0;
        double longest = 0;
        int places = 0;
        int standing = 0;
        for (int p = 0; p < covered.length; p++) {
            ever[p] = covered[p] > 0.02 ? 1 : 0;
            most[p] = covered[p] > 0.55 ? 1 : 0;
            all += ever[p] * covered[p];
            places += (int) ever[p];
            longest += most[p] * covered[p];
            standing += (int) most[p];
        }
        Passing told = Passing.of(frames, ever, noise);
        assertThat(told.coveredShare()).isCloseTo(all / places, within(0.15 * all / places));
        if (pauseSeconds > 5) {
            assertThat(standing)
                    .as("places where somebody stands most of the time")
                    .isGreaterThan(500);
            assertThat(Passing.of(frames, most, noise).coveredShare())
                    .isCloseTo(longest / standing, within(0.1 * longest / standing));
        }
    }

    /** A veil of more than 2 % is no exposure's to take away; a burst's median is. */
    @Test
    void peopleOnACrowdedQuayAreGoneByNoExposure() {
        Passers quay = new Passers(walks(10, 3));
        RegionMotion path = Measurement.of(survey(film(quay, 100)), WORK).regions().stream()
                .filter(r -> !r.remaining().isEmpty())
                .findFirst()
                .orElseThrow();
        Demand gone = demand(path, Word.GONE);
        assertThat(gone.likely()).isEmpty();
        assertThat(gone.note()).contains("median of a burst");
        // true veil: what the mean of ten seconds lacks of the empty quay, where somebody ever was
        float[] empty = quay.empty().green();
        double[] mean = new double[empty.length];
        for (int i = 0; i < SECONDS * PER_SECOND; i++) {
            float[] light = quay.frame((double) i / PER_SECOND).green();
            for (int p = 0; p < mean.length; p++) {
                mean[p] += light[p] / (double) (SECONDS * PER_SECOND);
            }
        }
        double[] covered = covered(quay);
        double veil = 0;
        int places = 0;
        for (int p = 0; p < mean.length; p++) {
            if (covered[p] > 0.02) {
                veil += Math.abs(mean[p] - empty[p]) / empty[p];
                places++;
            }
        }
        assertThat(path.passing().veil()).isCloseTo(veil / places, within(0.25 * veil / places));
        // a passage: a body 0.24 of 62 pixels wide goes by at 40 to 55 pixels a second; somebody pauses 3 s
        Demand trails = demand(path, Word.TRAILS);
        assertThat(trails.likely()).hasSize(1);
        assertThat(trails.likely().get(0).fromSeconds()).isBetween(0.24 * 62 / 55, 4 * 3.0);
        assertThat(trails.likely().get(0).toSeconds()).isInfinite();
    }

    private static Demand demand(RegionMotion region, Word word) {
        return Demand.ofEveryWord(region, 480, 320).stream()
                .filter(d -> d.wish().word() == word)
                .findFirst()
                .orElseThrow();
    }
}
