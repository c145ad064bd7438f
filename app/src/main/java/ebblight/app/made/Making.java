package ebblight.app.made;

import com.grack.nanojson.JsonObject;
import ebblight.imaging.Inputs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * How a result is made: a command and all that it was given, but for where the result goes.
 *
 * @param command its name
 * @param options those that name no file, as {@code --as=median}
 * @param documents options that were given a JSON file, with what it held
 * @param folders options that were given a folder
 * @param files every file given, those in folders too
 */
public record Making(
        String command,
        List<String> options,
        Map<String, JsonObject> documents,
        Map<String, Path> folders,
        List<Given> files) {

    /** What files and folders without an option are given as. */
    public static final String INPUT = "INPUT";

    /** A file, and what it was given as: {@link #INPUT}, or the option that named it or its folder. */
    public record Given(String as, Path file) {}

    /**
     * Inputs as files: folders of frames count as the pictures in them now, whatever is put there later. Those that may
     * not be read give nothing to a result, and are left out.
     */
    public static List<Given> inputs(List<Path> inputs) throws IOException {
        return Inputs.files(inputs).stream()
                .filter(Files::isReadable)
                .map(file -> new Given(INPUT, file))
                .toList();
    }
}
