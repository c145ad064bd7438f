package ebblight.imaging.repair;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.LightPicture;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.finish.Easel;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * Repairs a picture in linear light: first what the sensor added (hot pixels, glow), then light that leaked in, then what
 * the filters took (corners, cast), then dust, then the level.
 */
public final class Repairer {

    private final LightPicture source;
    private final Repair repair;
    private final Work work;
    private final RgbPicture light;
    private final Mask mask;
    private final List<Change> changes = new ArrayList<>();
    private final List<String> warnings = new ArrayList<>();

    private Repairer(LightPicture source, Repair repair, Work work) {
        this.source = source;
        this.repair = repair;
        this.work = work;
        this.light = source.light();
        this.mask = new Mask(light.width() * light.height());
        warnings.addAll(source.warnings());
    }

    /**
     * A repaired picture.
     *
     * @param light in the primaries of the source
     * @param mask of the source's size, before any levelling
     */
    public record Repaired(RgbPicture light, Mask mask, List<Change> changes, List<String> warnings) {}

    /** Repairs {@code source}, whose light is used up. */
    public static Repaired repair(LightPicture source, Repair repair, Work work) throws IOException {
        Repairer repairer = new Repairer(source, repair, work);
        return repairer.all();
    }

    private Repaired all() throws IOException {
        if (repair.darks().isPresent()) {
            byDarks(repair.darks().get());
        }
        if (repair.frames().isPresent()) {
            work.progress(0.2, "looking for spots that stay put");
            PersistentSpots spots = PersistentSpots.find(light, repair.frames().get(), work);
            warnings.addAll(spots.warnings());
            changes.add(HotPixels.repair(light, spots.hot(), i -> Double.NaN, spots.words(), mask, work));
        }
        if (repair.reference().isPresent()) {
            byReference(repair.reference().get());
        }
        if (repair.cornerStops().isPresent()) {
            changes.add(DarkCorners.repair(light, repair.cornerStops().getAsDouble(), work));
        }
        if (repair.cast().isPresent()) {
            changes.add(repair.cast().get().repair(light, work));
        }
        if (repair.neutral().isPresent()) {
            changes.add(Cast.ofNeutral(light, repair.neutral().get()).repair(light, work));
        }
        if (!repair.dust().isEmpty()) {
            spot(repair.dust());
        }
        RgbPicture level = repair.levelDegrees().orElse(0) == 0
                ? light
                : level(repair.levelDegrees().getAsDouble());
        work.check();
        return new Repaired(level, mask, List.copyOf(changes), List.copyOf(warnings));
    }

    private void byDarks(Path darks) throws IOException {
        work.progress(0.1, "reading dark frames");
        DarkFrames frames = DarkFrames.read(darks, source.facts(), light.width(), light.height(), work);
        warnings.addAll(frames.warnings());
        DarkLight dark = DarkLight.of(frames, source.facts().exposureSeconds(), work);
        boolean[] hot = HotPixels.inDark(dark);
        HotPixels.Promise promise = i -> dark.scale() * dark.excess(dark.hottest(i), i);
        changes.add(HotPixels.repair(light, hot, promise, dark.words(), mask, work));
        changes.add(Glow.repair(light, dark, hot, mask));
    }

    private void byReference(Path file) throws IOException {
        work.progress(0.4, "measuring leaked light");
        RgbPicture reference = LightPicture.read(file, work).light();
        if (reference.width() != light.width() || reference.height() != light.height()) {
            throw new UnreadableInputException(
                    file,
                    "is " + reference.width() + " × " + reference.height() + " pixels, the picture " + light.width()
                            + " × " + light.height() + "; the reference must show the same view from the same camera");
        }
        changes.add(Leak.repair(light, reference, mask));
    }

    private void spot(List<Dust> dust) {
        int pixels = 0;
        int left = 0;
        for (Dust each : dust) {
            int changed = each.repair(light, mask);
            pixels += changed;
            left += changed == 0 ? 1 : 0;
        }
        changes.add(new Change(
                "dust",
                pixels,
                left,
                specks(dust.size() - left) + " spotted out, " + left + " left alone where there is detail round "
                        + (left == 1 ? "it" : "them")));
    }

    private static String specks(int count) {
        return count + (count == 1 ? " speck" : " specks");
    }

    private RgbPicture level(double degrees) {
        Easel easel = new Easel(light.width(), light.height(), degrees);
        RgbPicture level = easel.lay(light, easel.whole(), work);
        changes.add(new Change(
                "level",
                level.width() * level.height(),
                0,
                "turned by " + Places.of(degrees, 2) + "° and cut to " + level.width() + " × " + level.height()));
        return level;
    }
}
