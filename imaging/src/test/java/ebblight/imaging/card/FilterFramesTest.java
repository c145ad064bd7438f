package ebblight.imaging.card;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import ebblight.core.exposure.FilterCheck;
import ebblight.core.exposure.FilterPair;
import ebblight.imaging.UnreadableInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Pairs made from a known filter, light and noise by {@link PairScene}, which is the source of what is expected. */
class FilterFramesTest {

    private static final int PAIRS = 40;

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @Test
    void densityIsWithinATwentiethStopAndTheRangeHoldsIt() throws Exception {
        int near = 0;
        int inside = 0;
        double worst = 0;
        for (int seed = 0; seed < PAIRS; seed++) {
            PairScene scene = new PairScene(seed);
            Path without = scene.write(folder, "without", 0, scene.clearSeconds(), false);
            Path with = scene.write(folder, "with", 12, scene.filteredDialSeconds(), true);
            boolean bracketed = seed % 2 == 0;
            Optional<Path> after = bracketed
                    ? Optional.of(scene.write(folder, "after", 70, scene.clearSeconds(), false))
                    : Optional.empty();
            OptionalDouble fading = bracketed ? OptionalDouble.empty() : OptionalDouble.of(scene.fading());
            FilterCheck check = FilterCheck.of(List.of(new FilterFrames().pair(without, with, after, fading)));
            double off = check.stops() - scene.stops();
            worst = Math.max(worst, Math.abs(off));
            near += Math.abs(off) <= 0.05 ? 1 : 0;
            inside += check.low() <= scene.stops() && scene.stops() <= check.high() ? 1 : 0;
            assertThat(check.high() - check.low()).isLessThan(0.25);
            assertThat(check.red()).isCloseTo(scene.red(), within(0.02));
            assertThat(check.blue()).isCloseTo(scene.blue(), within(0.02));
        }
        System.out.printf("%d of %d within 0.05 stop, %d inside the range, worst %.3f%n", near, PAIRS, inside, worst);
        assertThat(near).isGreaterThanOrEqualTo((int) (0.95 * PAIRS));
        assertThat(inside).isGreaterThanOrEqualTo((int) (0.95 * PAIRS));
    }

    /**
     * One real RAW file as both frames: nothing was put before the lens, so that the filter takes 0 stops and shifts no
     * colour. The sensor's light is linear, so that no tone curve widens the range.
     */
    @Test
    void rawIsDevelopedAndHoldsNoFilterAgainstItself() throws Exception {
        Path raw = Path.of(System.getProperty("ebblight.shared", "")).resolve("data/raw/CRW_0101.CRW");
        assumeTrue(Files.isRegularFile(raw), "the RAW files of ../shared/data are not here");
        Path with = Files.copy(raw, folder.resolve("with.crw"));
        FilterFrames reader = new FilterFrames();
        FilterCheck check;
        try {
            check = FilterCheck.of(List.of(reader.pair(raw, with, Optional.empty(), OptionalDouble.of(0))));
        } catch (UnreadableInputException e) {
            assumeFalse(String.valueOf(e.getMessage()).contains("LibRaw is not"), "LibRaw is not installed");
            throw e;
        }
        assertThat(check.stops()).isCloseTo(0, within(0.001));
        assertThat(check.low()).isLessThanOrEqualTo(0);
        assertThat(check.high()).isGreaterThanOrEqualTo(0);
        assertThat(check.red()).isCloseTo(1, within(0.001));
        assertThat(check.blue()).isCloseTo(1, within(0.001));
        assertThat(check.cornerStops()).isCloseTo(0, within(0.01));
    }

    /** The exposure time of this file's Exif is 0 (exiftool): nothing can be told from it. */
    @Test
    void rawWithoutAnExposureTimeIsRefusedByName() {
        Path raw = Path.of(System.getProperty("ebblight.shared", "")).resolve("data/raw/tinydng_colorchart.dng");
        assumeTrue(Files.isRegularFile(raw), "the RAW files of ../shared/data are not here");
        Assertions.assertThatThrownBy(() -> new FilterFrames().pair(raw, raw, Optional.empty(), OptionalDouble.empty()))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("tinydng_colorchart.dng")
                .hasMessageMatching("(?s).*(exposure time|LibRaw).*");
    }

    @Test
    void unknownLightWidensTheRangeAndIsSaid() throws Exception {
        PairScene scene = new PairScene(7);
        Path without = scene.write(folder, "without", 0, scene.clearSeconds(), false);
        Path with = scene.write(folder, "with", 60, scene.filteredDialSeconds(), true);
        FilterFrames reader = new FilterFrames();
        FilterCheck check =
                FilterCheck.of(List.of(reader.pair(without, with, Optional.empty(), OptionalDouble.empty())));
        assertThat(check.high() - check.low()).isGreaterThan(0.25);
        assertThat(check.low()).isLessThan(scene.stops());
        assertThat(check.high()).isGreaterThan(scene.stops());
        assertThat(reader.warnings()).anyMatch(w -> w.contains("--after"));
    }

    @Test
    void darkerCornersAreTold() throws Exception {
        PairScene scene = new PairScene(3).withCorners(0.6);
        Path without = scene.write(folder, "without", 0, scene.clearSeconds(), false);
        Path with = scene.write(folder, "with", 12, scene.filteredDialSeconds(), true);
        FilterPair pair = new FilterFrames().pair(without, with, Optional.empty(), OptionalDouble.of(scene.fading()));
        FilterCheck check = FilterCheck.of(List.of(pair));
        assertThat(check.cornerStops()).isCloseTo(0.6, within(0.1));
        assertThat(check.stops()).isCloseTo(scene.stops(), within(0.06));
    }

    @Test
    void aFrameThatDoesNotSayItsTimeIsRefusedByName() throws Exception {
        PairScene scene = new PairScene(1);
        Path without = scene.write(folder, "without", 0, scene.clearSeconds(), false);
        Path silent = scene.writeSilent(folder);
        Assertions.assertThatThrownBy(
                        () -> new FilterFrames().pair(without, silent, Optional.empty(), OptionalDouble.empty()))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("silent.jpg")
                .hasMessageContaining("exposure time");
    }
}
