package ebblight.app;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.app.kit.DataFolder;
import ebblight.app.kit.KitStore;
import ebblight.app.outing.OutingFile;
import ebblight.app.outing.OutingFolder;
import ebblight.app.pocket.PocketFolder;
import ebblight.app.pocket.PocketOuting;
import ebblight.app.pocket.PocketPage;
import ebblight.imaging.OutputFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code pocket}: the phone page of an outing. */
@Command(
        name = "pocket",
        mixinStandardHelpOptions = true,
        description = {
            "Writes the phone page of an outing: one file that opens without a network, a folder for any https host, and"
                    + " the outing alone for a page that the phone has.",
            "Android opens the file from its files. iOS needs the folder on an https host once; then the page is on the"
                    + " home screen. Plain http keeps nothing and knows no camera: no way to install."
        })
final class PocketCommand implements Callable<Integer> {

    @Parameters(index = "0", paramLabel = "OUTING", description = "Folder of the outing.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path folder;

    @Option(names = "-o", required = true, paramLabel = "DIR", description = "Folder to write the page into.")
    @SuppressWarnings("NullAway.Init") // set by picocli
    private Path output;

    @Mixin
    private final JsonOption json = new JsonOption();

    private final Printer printer = new Printer();

    @Override
    public Integer call() throws Exception {
        OutingFolder outing = OutingFolder.open(folder);
        JsonObject document = new OutingFile(outing, folder).read();
        JsonObject packed = PocketOuting.of(document, new KitStore(DataFolder.data()).read(), outing.root());
        Files.createDirectories(output);
        Path file = output.resolve("ebblight-pocket.html");
        byte[] page = PocketPage.html(packed, false);
        OutputFile.write(file, page);
        Path site = output.resolve("site");
        PocketFolder.write(packed, site);
        Path small = output.resolve("outing.pocket.json");
        OutputFile.write(small, JsonWriter.string(packed).getBytes(StandardCharsets.UTF_8));
        JsonObject answer = new JsonObject();
        answer.put("schema", "pocket/1");
        answer.put("file", file.toString());
        answer.put("bytes", page.length);
        answer.put("folder", site.toString());
        answer.put("outing", small.toString());
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            printer.line(
                    "%s  %d kB, opens by itself (Android: from the files)", file, Math.round(page.length / 1000.0));
            printer.line("%s  for an https host: installs to the home screen, then needs no network", site);
            printer.line("%s  this outing alone, for a page that is on the phone already", small);
        }
        return ExitCode.DONE;
    }
}
