package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.card.KnownCard;
import ebblight.app.card.LearnedFilters;
import ebblight.app.card.Ratings;
import ebblight.app.card.SlatedCard;
import ebblight.app.card.SortDocument;
import ebblight.app.kit.DataFolder;
import ebblight.app.kit.KitStore;
import ebblight.app.memory.Remembered;
import ebblight.core.numeric.Work;
import ebblight.imaging.card.CardSorter;
import ebblight.imaging.card.SortedCard;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code sort}: a card in groups by view, ranked inside with reasons. */
@Command(
        name = "sort",
        mixinStandardHelpOptions = true,
        description = {
            "Sorts the frames of a card: groups them by time and view, tells test frames, filtered frames, bursts and"
                    + " darks by their settings, ranks each group by what is measured, and names dust on the sensor.",
            "Pictures are only read; nothing is deleted or moved."
        })
final class SortCommand implements Callable<Integer> {

    @Parameters(paramLabel = "FOLDER", description = "Folder of a card; folders in it are read too.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path folder;

    @Option(
            names = "--rate",
            description = "Write what is worth keeping beside the pictures, as xmp:Rating in XMP sidecars: 5 for the"
                    + " best of each view, 4 for what comes near. A rating that is there stays.")
    private boolean rate;

    @Option(
            names = "--learn",
            description = "Keep in the kit what pairs with and without a filter tell of it, where a slate says which"
                    + " filter it was.")
    private boolean learn;

    @Option(
            names = "--anew",
            description = "Measure every picture again, though nothing on the card changed since it was sorted.")
    private boolean anew;

    @Mixin
    private final JsonOption json = new JsonOption();

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        JsonObject document = known();
        if (rate) {
            document.put("sidecars", Ratings.write(folder, document));
        }
        if (json.wanted()) {
            printer.line(Asked.print(document));
        } else {
            SortPrinter.print(document, printer);
        }
        return ExitCode.DONE;
    }

    /** What was found when nothing on the card has changed since; what filters teach needs the pictures themselves. */
    private JsonObject known() throws IOException {
        if (!Files.isDirectory(folder) || learn) {
            return sorted();
        }
        KnownCard card = KnownCard.of(folder);
        Optional<JsonObject> before = anew ? Optional.empty() : card.found();
        if (before.isPresent()) {
            before.get().put("measuredBefore", true);
            return before.get();
        }
        JsonObject document = sorted();
        card.keep(document);
        return document;
    }

    private JsonObject sorted() throws IOException {
        Work work = printer.work();
        SortedCard card = CardSorter.sort(folder, work);
        SlatedCard slated = new SlatedCard(card);
        JsonObject document = SortDocument.of(folder, card, slated);
        document.put("measuredBefore", false);
        LearnedFilters filters = new LearnedFilters(card, slated, work);
        document.put("filters", filters.documents());
        if (learn) {
            document.put("kept", filters.keep(new KitStore(DataFolder.data()), DataFolder.data()));
        }
        Optional<Remembered> outing = Remembered.around(folder);
        if (outing.isPresent()) {
            Remembered.tried(() -> outing.get().sorted(folder, document, work)).ifPresent(printer::note);
        }
        return document;
    }
}
