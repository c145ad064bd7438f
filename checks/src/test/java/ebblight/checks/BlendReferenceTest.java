package ebblight.checks;

import static org.assertj.core.api.Assertions.assertThat;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import ebblight.app.ask.BlendPicture;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.demo.DemoOuting;
import ebblight.core.motion.Clip;
import ebblight.core.motion.Kind;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.Inputs;
import ebblight.imaging.Srgb;
import ebblight.imaging.SurveyReader;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A blend of the demo's evening against the scene's own exposures, which are the source: in every part it is as near to
 * the true exposure of that part's time as the plain mean of the same frames is, and no seam shows where parts meet.
 */
class BlendReferenceTest {

    private static final int WIDTH = 320;
    private static final int FRAMES = 100;
    private static final double WATER_SECONDS = 8;
    private static final double CLOUD_SECONDS = 0.5;
    private static final double GRASS_SECONDS = 2;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    static Path folder;

    @SuppressWarnings("NullAway.Init") // set before all tests
    private static FilmedEvening evening;

    @SuppressWarnings("NullAway.Init") // set before all tests
    private static RgbPicture blend;

    @SuppressWarnings("NullAway.Init") // set before all tests
    private static JsonObject answer;

    @BeforeAll
    static void blend() throws Exception {
        evening = new FilmedEvening(WIDTH, FRAMES);
        Path frames = Files.createDirectories(folder.resolve("frames"));
        evening.write(frames);
        Path strokes = folder.resolve("strokes.json");
        try (InputStream in = DemoOuting.class.getResourceAsStream("strokes.json")) {
            Files.write(strokes, Objects.requireNonNull(in).readAllBytes());
        }
        SurveyRequest request = SurveyRequest.read(
                Inputs.open(List.of(frames), FilmedEvening.FRAMES_PER_SECOND, true),
                SurveyReader.SURVEY_WIDTH,
                strokes,
                Work.alone());
        JsonArray parts = JsonParser.array()
                .from("[{\"region\":\"water\",\"time\":\"8s\"},{\"region\":\"cloud\",\"time\":\"1/2\"},"
                        + "{\"region\":\"branch\",\"time\":\"2s\"}]");
        Path out = folder.resolve("blend.tif");
        answer = BlendPicture.write(request, parts, out, folder.resolve("masks"), Work.alone());
        blend = picture(out);
    }

    private static RgbPicture picture(Path file) throws Exception {
        return picture(
                SurveyReader.first(Inputs.open(List.of(file), 0, false), WIDTH, Work.alone())
                        .clip(),
                1);
    }

    /** The mean of the first {@code count} frames of a clip. */
    private static RgbPicture picture(Clip clip, int count) {
        RgbPicture mean = RgbPicture.black(clip.width(), clip.height());
        float[] plane = new float[clip.width() * clip.height()];
        for (int i = 0; i < count; i++) {
            for (int c = 0; c < 3; c++) {
                clip.channel(i, c, plane);
                for (int p = 0; p < plane.length; p++) {
                    mean.plane(c)[p] += plane[p] / count;
                }
            }
        }
        return mean;
    }

    /** Pixels of one kind all round: those at an edge show two kinds, and have no time of their own. */
    private static boolean[] inside(Kind[] kinds, Kind kind) {
        boolean[] inside = new boolean[kinds.length];
        for (int p = WIDTH + 1; p < kinds.length - WIDTH - 1; p++) {
            inside[p] = true;
            for (int d : new int[] {-WIDTH - 1, -WIDTH, -WIDTH + 1, -1, 0, 1, WIDTH - 1, WIDTH, WIDTH + 1}) {
                inside[p] &= kinds[p + d] == kind;
            }
        }
        return inside;
    }

    /** Peak signal-to-noise ratio in sRGB codes over marked pixels, their light made equal first. */
    private static double decibels(RgbPicture one, RgbPicture truth, boolean[] marked) {
        double a = 0;
        double b = 0;
        for (int p = 0; p < marked.length; p++) {
            for (int c = 0; c < 3 && marked[p]; c++) {
                a += one.plane(c)[p];
                b += truth.plane(c)[p];
            }
        }
        double sum = 0;
        int n = 0;
        for (int p = 0; p < marked.length; p++) {
            for (int c = 0; c < 3 && marked[p]; c++) {
                double d = Srgb.code(one.plane(c)[p] * b / a) - Srgb.code(truth.plane(c)[p]);
                sum += d * d;
                n++;
            }
        }
        return -10 * Math.log10(sum / n);
    }

    @Test
    void everyPartIsWithinOneDecibelOfWhatItsOwnTimeGives() throws Exception {
        List<Double> times = List.of(CLOUD_SECONDS, GRASS_SECONDS, WATER_SECONDS);
        List<RgbPicture> truths = evening.view().exposures(0, times, FilmedEvening.FRAMES_PER_SECOND, Work.alone());
        Kind[] kinds = evening.view().kinds(Work.alone());
        Kind[] parts = {Kind.DRIFTING, Kind.FLOWING, Kind.FIXED, Kind.SWAYING};
        // still parts that nobody names go with the longest time
        int[] at = {0, 2, 2, 1};
        for (int k = 0; k < parts.length; k++) {
            int frames = (int) Math.round(times.get(at[k]) * FilmedEvening.FRAMES_PER_SECOND);
            RgbPicture plain = picture(evening.clip(FRAMES), frames);
            boolean[] inside = inside(kinds, parts[k]);
            if (parts[k] == Kind.SWAYING) {
                // The outer blades are measured as water at this size: that is for the checks of the measuring.
                within(inside, mask(parts[k]));
            }
            double blended = decibels(blend, truths.get(at[k]), inside);
            double alone = decibels(plain, truths.get(at[k]), inside);
            System.out.printf("%-9s blend %.1f dB, its time alone %.1f dB%n", parts[k].word(), blended, alone);
            // beyond 60 dB the difference is a quarter of a code of 8 bits: which is nearer, nobody can see
            assertThat(blended).as(parts[k].word()).isGreaterThan(Math.min(alone, 60) - 1);
        }
    }

    private static void within(boolean[] marked, float[] mask) {
        for (int p = 0; p < marked.length; p++) {
            marked[p] &= mask[p] > 0.95;
        }
    }

    /** Where the layer of a kind shows, 0 to 1. */
    private static float[] mask(Kind kind) throws Exception {
        for (Object each : answer.getArray("layers")) {
            JsonObject layer = (JsonObject) each;
            if (layer.getArray("regions").getString(0).startsWith(kind.word())) {
                return mask(layer);
            }
        }
        throw new AssertionError("no layer of " + kind);
    }

    private static float[] mask(JsonObject layer) throws Exception {
        float[] share = picture(Path.of(layer.getString("maskFile"))).plane(1);
        for (int p = 0; p < share.length; p++) {
            share[p] = (float) Srgb.code(share[p]);
        }
        return share;
    }

    @Test
    void noSeamShowsWherePartsMeet() throws Exception {
        List<float[]> layers = new ArrayList<>();
        for (double seconds : new double[] {CLOUD_SECONDS, WATER_SECONDS, GRASS_SECONDS}) {
            int frames = (int) Math.round(seconds * FilmedEvening.FRAMES_PER_SECOND);
            layers.add(lightness(picture(evening.clip(FRAMES), frames)));
        }
        float[] blended = lightness(blend);
        List<Double> result = new ArrayList<>();
        List<Double> sources = new ArrayList<>();
        for (Object each : answer.getArray("layers")) {
            float[] share = mask((JsonObject) each);
            int h = share.length / WIDTH;
            for (int y = 0; y < h - 1; y++) {
                for (int x = 0; x < WIDTH - 1; x++) {
                    int p = y * WIDTH + x;
                    if (share[p] > 0.05 && share[p] < 0.95) {
                        result.add(step(blended, p));
                        sources.add(layers.stream()
                                .mapToDouble(l -> step(l, p))
                                .max()
                                .orElse(0));
                    }
                }
            }
        }
        assertThat(result.size()).isGreaterThan(200);
        for (double q : new double[] {0.5, 0.9, 0.99}) {
            double[] r = result.stream().mapToDouble(Double::doubleValue).toArray();
            double[] s = sources.stream().mapToDouble(Double::doubleValue).toArray();
            double most = Quantiles.quantile(s, s.length, q);
            double seen = Quantiles.quantile(r, r.length, q);
            System.out.printf("step at the edges, quantile %.2f: blend %.4f, sources %.4f%n", q, seen, most);
            assertThat(seen).as("quantile %s", q).isLessThanOrEqualTo(most);
        }
    }

    /** sRGB code of the luminance. */
    private static float[] lightness(RgbPicture picture) {
        float[] out = new float[picture.red().length];
        for (int p = 0; p < out.length; p++) {
            out[p] = (float)
                    Srgb.code(0.2126 * picture.red()[p] + 0.7152 * picture.green()[p] + 0.0722 * picture.blue()[p]);
        }
        return out;
    }

    private static double step(float[] plane, int p) {
        return Math.hypot(plane[p + 1] - plane[p], plane[p + WIDTH] - plane[p]);
    }
}
