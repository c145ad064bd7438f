package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.UsageException;
import ebblight.app.card.FilterDocument;
import ebblight.app.kit.DataFolder;
import ebblight.app.kit.KitStore;
import ebblight.app.kit.MeasuredFilter;
import ebblight.app.memory.Calibrations;
import ebblight.core.exposure.FilterCheck;
import ebblight.core.exposure.FilterPair;
import ebblight.core.numeric.Work;
import ebblight.imaging.card.FilterFrames;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code filter-check}: what a filter truly takes. */
@Command(
        name = "filter-check",
        mixinStandardHelpOptions = true,
        description = {
            "Measures the true density and cast of a filter from pairs of one view, by the parts that stand still.",
            "Tripod, white balance, aperture and ISO stay as they are; only the filter and the time change. Times of a"
                    + " dial count as what they are: 30 s is 32 s."
        })
final class FilterCheckCommand implements Callable<Integer> {

    @Parameters(
            paramLabel = "WITHOUT WITH",
            arity = "2..*",
            description = "A frame without the filter and one with it; more pairs may follow.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private List<Path> frames;

    @Option(
            names = "--after",
            paramLabel = "FRAME",
            description = "A frame without the filter, taken after the pairs: tells how the light changed.")
    private @Nullable Path after;

    @Option(
            names = "--fading",
            paramLabel = "R",
            description = "Stops a minute by which the light faded; negative when it grew.")
    private @Nullable Double fading;

    @Option(
            names = "--filter",
            paramLabel = "NAME",
            description = "Keep the result with this filter of the kit (by its name, or what it takes).")
    private @Nullable String filter;

    @Mixin
    private final JsonOption json = new JsonOption();

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        if (frames.size() % 2 != 0) {
            throw new UsageException("WITHOUT WITH: " + frames.size()
                    + " frames were named; expected pairs, each a frame without the filter and one with it");
        }
        if (after != null && fading != null) {
            throw new UsageException("--fading: give either --after or --fading, not both");
        }
        Optional<KitStore> kit = filter == null ? Optional.empty() : Optional.of(new KitStore(DataFolder.data()));
        if (kit.isPresent() && filter != null) {
            MeasuredFilter.find(kit.get().read(), filter); // refuses before any work is done
        }
        FilterFrames reader = new FilterFrames();
        FilterCheck check = FilterCheck.of(pairs(reader));
        JsonObject document = FilterDocument.of(frames, check, reader.warnings());
        if (kit.isPresent() && filter != null) {
            document.put("filter", keep(kit.get(), filter, check));
        }
        if (json.wanted()) {
            printer.line(Asked.print(document));
        } else {
            print(document);
        }
        return ExitCode.DONE;
    }

    private List<FilterPair> pairs(FilterFrames reader) throws IOException {
        Work work = printer.work();
        List<FilterPair> pairs = new ArrayList<>();
        for (int k = 0; k < frames.size(); k += 2) {
            work.check();
            work.progress((double) k / frames.size(), "reading pairs");
            pairs.add(reader.pair(
                    frames.get(k),
                    frames.get(k + 1),
                    Optional.ofNullable(after),
                    fading == null ? OptionalDouble.empty() : OptionalDouble.of(fading)));
        }
        return pairs;
    }

    private String keep(KitStore store, String name, FilterCheck check) throws IOException {
        JsonObject kit = store.read();
        JsonObject row = MeasuredFilter.find(kit, name);
        MeasuredFilter.put(row, check, FilterDocument.dateOf(frames.get(1)));
        store.write(kit);
        Calibrations.add(DataFolder.data(), row, check, FilterDocument.dateOf(frames.get(1)));
        return row.getString("name");
    }

    private void print(JsonObject document) {
        JsonObject cast = document.getObject("cast");
        JsonObject lab = document.getObject("castLab");
        JsonObject corner = document.getObject("vignetting");
        printer.line(
                "%-11s%.2f stops (%.2f to %.2f)",
                "takes", document.getDouble("stops"), document.getDouble("low"), document.getDouble("high"));
        printer.line(
                "%-11sred × %.3f, green × 1, blue × %.3f: a grey goes %+.1f in a*, %+.1f in b* (%s)",
                "cast",
                cast.getDouble("red"),
                cast.getDouble("blue"),
                lab.getDouble("a"),
                lab.getDouble("b"),
                document.getString("castWord"));
        printer.line(
                "%-11s%.2f stop more in the corners than in the middle (± %.2f)",
                "vignetting", corner.getDouble("cornerStops"), corner.getDouble("rangeStops"));
        if (document.has("filter")) {
            printer.line(
                    "%-11s%s in the kit; settings made with the kit use it from now on",
                    "kept", document.getString("filter"));
        }
        for (Object warning : document.getArray("warnings")) {
            printer.line("%-11s%s", "note", warning);
        }
    }
}
