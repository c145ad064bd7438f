package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.kit.DataFolder;
import ebblight.app.kit.KitStore;
import ebblight.app.outing.OutingFile;
import ebblight.app.outing.OutingFolder;
import ebblight.app.pocket.PocketPage;
import ebblight.imaging.OutputFile;
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
            "Writes the phone page of an outing: one file that opens without a network.",
            "Send it to the phone and open it there; on Android from the files, on iOS from a web host."
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
        JsonObject packed = new JsonObject();
        packed.put("outing", new OutingFile(outing, folder).read());
        packed.put("kit", new KitStore(DataFolder.data()).read());
        Files.createDirectories(output);
        Path file = output.resolve("ebblight-pocket.html");
        byte[] page = PocketPage.html(packed, false);
        OutputFile.write(file, page);
        JsonObject answer = new JsonObject();
        answer.put("schema", "pocket/1");
        answer.put("file", file.toString());
        answer.put("bytes", page.length);
        if (json.wanted()) {
            printer.line(Asked.print(answer));
        } else {
            printer.line("%s  %d kB", file, Math.round(page.length / 1000.0));
        }
        return ExitCode.DONE;
    }
}
