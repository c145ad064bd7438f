package ebblight.core.motion;

import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.Work;
import ebblight.demo.Weather;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.opentest4j.TestAbortedException;

/**
 * Measures what can be held against a truth and writes docs/accuracy.md; tools/accuracy runs it. Sections that are not asked
 * for, and those written by hand, stay as they are.
 */
public final class AccuracyPage {

    /** What follows this heading was written by hand. */
    private static final String BY_HAND = "## Where it fails";

    private static final List<String> SECTIONS = List.of("seas", "clouds", "coast", "real");

    private static final Work WORK = new AllCores();
    private static final int MINUTES = 12;
    private static final int SKIES = 32;
    private static final double[] CLIP_SECONDS = {2, 5, 10, 20};

    /** Skies of these numbers and on had no part in calibrating the stated error. */
    private static final int FIRST_SKY = 0;

    private final String old;
    private final List<String> asked;
    private final StringBuilder page = new StringBuilder();

    private AccuracyPage(String old, List<String> asked) {
        this.old = old;
        this.asked = asked;
    }

    /** Writes the page to the file named first; the sections named after it are measured, all when none is named. */
    public static void main(String[] args) throws IOException {
        List<String> asked = args.length > 1 ? List.of(args).subList(1, args.length) : SECTIONS;
        if (args.length == 0 || !SECTIONS.containsAll(asked)) {
            throw new IllegalArgumentException(
                    "name one file to write, for example docs/accuracy.md, and after it any of "
                            + String.join(", ", SECTIONS) + "; had " + String.join(" ", args));
        }
        Path target = Path.of(args[0]).toAbsolutePath();
        AccuracyPage page = new AccuracyPage(Files.exists(target) ? Files.readString(target) : "", asked);
        page.write();
        Path next = Files.createTempFile(target.getParent(), "accuracy", ".md");
        Files.writeString(next, page.page);
        Files.move(next, target, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }

    private void write() {
        line("# How far off it is");
        line("");
        line("Measured by `tools/accuracy`, which writes this page anew (about ten minutes on two cores).");
        line("Stops are stops of shutter time. p90: nine of ten are no further off. Held: how often the likely range or"
                + " the stated error held the truth. n: clips.");
        line("");
        section("seas", "What is left of texture: open water", this::seas);
        section("clouds", "Drift of clouds", this::clouds);
        section("coast", "The demo's coast", this::coast);
        section("real", "Real clips", this::real);
        recipe();
        int from = old.indexOf(BY_HAND);
        page.append(from < 0 ? BY_HAND + "\n" : old.substring(from));
    }

    /** A section of the page that is measured when it is asked for, and else taken over. */
    private void section(String name, String title, Runnable measure) {
        String heading = "## " + title + "\n";
        if (asked.contains(name)) {
            line("## " + title);
            line("");
            line("Measured on " + LocalDate.now(ZoneOffset.UTC) + ".");
            measure.run();
            line("");
        } else if (old.contains(heading)) {
            int from = old.indexOf(heading);
            int to = old.indexOf("\n## ", from);
            page.append(old, from, to < 0 ? old.length() : to + 1);
        }
    }

    private void seas() {
        line("The demo's sea (wave spectrum, no cloud), points of a picture 480 px wide, ISO 100, 8 bits, 10 frames/s;"
                + " noise known. Truth: variance of plain means over " + MINUTES
                + " minutes of the same sea that lie far apart (good to some 3 % itself). Error of R: median with its"
                + " sign, then p90 of its size in %, and p90 in stops.");
        line("");
        line(
                "| sea | clip | n | 2 s | 4 s | 8 s | 15 s | 30 s | 60 s | largest p90, stops | held | called resolved | not told |");
        line("|---|---|---|---|---|---|---|---|---|---|---|---|---|");
        for (Weather weather : Weather.ALL) {
            if (!weather.equals(Weather.EVENING)) {
                SeaRuns runs = SeaRuns.of(weather, MINUTES, 10, WORK);
                for (double seconds : CLIP_SECONDS) {
                    sea(weather.name(), seconds, SeaTrial.of(runs, seconds, 100));
                }
            }
        }
    }

    private void sea(String name, double seconds, SeaTrial trial) {
        StringBuilder row = new StringBuilder(format("| %s | %.0f s | %d |", name, seconds, trial.clips()));
        int refused = 0;
        for (int t = 0; t < SeaTrial.SECONDS.length; t++) {
            row.append(format(" %+.0f / %.0f |", 100 * trial.median()[t], 100 * trial.p90()[t]));
            refused += trial.tooFar()[t] > 0.5 ? 1 : 0;
        }
        double largest = Arrays.stream(trial.p90Stops()).max().orElse(0);
        String untold = refused == 0 ? "" : format("from %.0f s", SeaTrial.SECONDS[SeaTrial.SECONDS.length - refused]);
        row.append(format(
                " %.2f | %.0f %% | %.0f %% | %s |",
                largest, 100 * trial.coveredInAll(), 100 * trial.resolved(), untold));
        line(row.toString());
    }

    private void clouds() {
        line(
                "The demo's clouds, which change as they go, on 480 × 160 px, 10 frames/s, every second sky behind two posts."
                        + " Error: length of the velocity's difference over the true speed. The factor of the stated error was"
                        + " found on other skies.");
        line("");
        line("| drift | clip | ISO | n | median | p90 | stated, median | held |");
        line("|---|---|---|---|---|---|---|---|");
        double[][] cases = {
            {0.2, 10, 100},
            {1, 5, 100},
            {1, 10, 100},
            {1, 10, 800},
            {5, 10, 100},
            {5, 10, 800},
            {10, 10, 100},
            {10, 10, 800}
        };
        for (double[] c : cases) {
            CloudTrial trial = CloudTrial.of(c[0], c[1], c[2], FIRST_SKY, SKIES, WORK);
            line(format(
                    "| %s px/s | %.0f s | %.0f | %d | %.2f %% | %.2f %% | %.2f %% | %.0f %% |",
                    c[0],
                    c[1],
                    c[2],
                    SKIES,
                    100 * trial.median(),
                    100 * trial.p90(),
                    100 * trial.medianStated(),
                    100 * trial.covered()));
        }
    }

    private void coast() {
        line(
                "Whole view, 480 px, 10 s at 10 frames/s, one clip each, weights as delivered, fitted among others on wind-3, wind-8, wind-5-swell-10 at ISO 100 and evening at ISO 800, a made fall and a bough. Cores:"
                        + " pixels further than " + ViewTrial.CORE_PIXELS_OF_480
                        + " px from any other kind and from what shows rock and water in turn (1.5 to 98.5 % of the time"
                        + " dry), which is a kind of its own here and in no core (docs/decisions/0015); covered: share of the"
                        + " view that the cores cover. In turn: its share of the view, then what is told there. Noise: told"
                        + " variance over the true one (sensor and coding), smallest, median and largest of eight classes of luminance."
                        + " Drift: of the mean over a sky seen in perspective.");
        line("");
        line(
                "| weather | ISO | right in cores | without grass | fixed / drifting / flowing / swaying | covered | in turn: share, told fixed, flowing | noise | drift off, stated | camera still |");
        line("|---|---|---|---|---|---|---|---|---|---|");
        for (Weather weather : Weather.ALL) {
            for (double iso : new double[] {100, 800}) {
                ViewTrial view = ViewTrial.of(weather, 480, iso, WORK);
                double[] k = view.rightOfKind();
                double[] noise = view.noise();
                line(format(
                        "| %s | %.0f | %.3f | %.3f | %.2f / %.2f / %.2f / %.2f | %.2f | %.3f, %.2f, %.2f | %s | %.1f %%, %.1f %% | %s |",
                        weather.name(),
                        iso,
                        view.right(),
                        view.rightButSwaying(),
                        k[0],
                        k[1],
                        k[2],
                        k[3],
                        view.cover(),
                        view.inTurn().share(),
                        view.inTurn().fixed(),
                        view.inTurn().flowing(),
                        noise.length == 0
                                ? ""
                                : format(
                                        "%.2f, %.2f, %.2f",
                                        Quantiles.quantile(noise.clone(), noise.length, 0),
                                        Quantiles.median(noise.clone(), noise.length),
                                        Quantiles.quantile(noise.clone(), noise.length, 1)),
                        100 * view.drift(),
                        100 * view.driftStated(),
                        view.still() ? "yes" : "no"));
            }
        }
    }

    private void real() {
        try {
            realClips();
        } catch (TestAbortedException | IOException e) {
            line("Not measured: " + e.getMessage());
        }
    }

    private void realClips() throws IOException {
        line(
                "Not part of this project. Masks drawn by hand; the weights as delivered were fitted with these masks among"
                        + " others; left out: fitted anew on the other two clips, four weathers of the demo's coast, a made fall and a bough. Strokes: one for"
                        + " each kind, where its largest error lies.");
        line("");
        line("| clip | right | with strokes |");
        line("|---|---|---|");
        double plain = 0;
        double stroked = 0;
        for (String name : RealTrial.MASKED) {
            RealTrial.Regions r = RealTrial.regions(name, RegionModel.standard());
            line(format("| %s | %.3f | %.3f |", name, r.plain(), r.stroked()));
            plain += r.plain() / RealTrial.MASKED.size();
            stroked += r.stroked() / RealTrial.MASKED.size();
        }
        line(format("| mean | %.3f | %.3f |", plain, stroked));
        List<RealTrial.Regions> unseen = RealTrial.leftOut(WORK);
        double left = 0;
        double leftStroked = 0;
        for (int k = 0; k < unseen.size(); k++) {
            RealTrial.Regions r = unseen.get(k);
            line(format("| %s, left out of the fit | %.3f | %.3f |", RealTrial.MASKED.get(k), r.plain(), r.stroked()));
            left += r.plain() / unseen.size();
            leftStroked += r.stroked() / unseen.size();
        }
        line(format("| mean, left out | %.3f | %.3f |", left, leftStroked));
        line("");
        double[] stops = RealTrial.waterfallFromItsHalf();
        line(format(
                "- Waterfall, water as the mask has it, first half against the whole at 1 to 2 s: off by %.2f to %.2f"
                        + " stops.",
                Arrays.stream(stops).min().orElse(0), Arrays.stream(stops).max().orElse(0)));
        line(format(
                "- Waterfall at its smoothest, change and standing texture, within 16 minutes: %.2f of the mean (glass is"
                        + " below 0.01).",
                RealTrial.waterfallAtItsSmoothest()));
        RealTrial.Surf surf = RealTrial.surf();
        line(
                "- Surf, 22 s, called breaking waves: " + (surf.breakers() ? "yes" : "no")
                        + ". What means of frames 12 s apart keep (an upper bound of one long exposure), and the likely range:");
        for (int k = 0; k < surf.frames().length; k++) {
            line(format(
                    "  - %d frames: %.2f, likely %.2f to %.2f",
                    surf.frames()[k], surf.kept()[k], surf.low()[k], surf.high()[k]));
        }
        RealTrial.Sky sky = RealTrial.sky(Strokes.none());
        RealTrial.Sky drawn = RealTrial.sky(RealTrial.acrossTheSky());
        line(format(
                "- Clouds 12 s apart: %.0f %% of the upper half called drifting, a drift told: %s; with one stroke %.0f %%,"
                        + " %s.",
                100 * sky.drifting(), sky.told() ? "yes" : "no", 100 * drawn.drifting(), drawn.told() ? "yes" : "no"));
    }

    private void recipe() {
        line("## Recipe");
        line("");
        line("`tools/accuracy`, from a checkout with the real clips beside it (`../shared`), or with"
                + " `-Debblight.shared=FOLDER`; `-Dsections=\"seas real\"` measures these and leaves the others. The tests SyntheticTruthTest, RealTruthTest and PrototypeReferenceTest"
                + " in `checks` fail beyond these figures. What stands from the next heading on is written by hand.");
        line("");
    }

    private void line(String text) {
        page.append(text).append('\n');
        System.out.println(text);
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
