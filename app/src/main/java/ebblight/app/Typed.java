package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.made.GivenFiles;
import ebblight.app.made.Making;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** What was typed, as the record of the result keeps it. */
final class Typed {

    private final List<String> options = new ArrayList<>();
    private final Map<String, JsonObject> documents = new LinkedHashMap<>();
    private final Map<String, Path> folders = new LinkedHashMap<>();
    private final List<Making.Given> files = new ArrayList<>();

    private Typed() {}

    /**
     * Reads what a command was given.
     *
     * @param outputs options that say where something is written
     */
    static Making of(CommandSpec command, Set<String> outputs) throws IOException {
        Typed typed = new Typed();
        ParseResult parsed = command.commandLine().getParseResult();
        for (OptionSpec option : parsed.matchedOptionsSet()) {
            String name = option.longestName();
            if (outputs.contains(name) || option.usageHelp() || option.versionHelp()) {
                continue;
            }
            if (option.getValue() instanceof Path path) {
                typed.add(name, path);
            } else if (option.getValue() instanceof List<?> list
                    && option.typeInfo().getAuxiliaryTypes()[0] == Path.class) {
                for (Making.Given each :
                        Making.inputs(list.stream().map(Path.class::cast).toList())) {
                    typed.files.add(new Making.Given(name, each.file()));
                }
            } else {
                option.originalStringValues().forEach(value -> typed.options.add(name + "=" + value));
            }
        }
        for (PositionalParamSpec parameter : parsed.matchedPositionalsSet()) {
            if (parameter.getValue() instanceof List<?> list) {
                typed.files.addAll(
                        Making.inputs(list.stream().map(Path.class::cast).toList()));
            } else if (parameter.getValue() instanceof Path path) {
                typed.files.add(new Making.Given(Making.INPUT, path));
            }
        }
        return new Making(command.name(), typed.options, typed.documents, typed.folders, typed.files);
    }

    private void add(String option, Path path) throws IOException {
        if (Files.isDirectory(path)) {
            folders.put(option, path);
            GivenFiles.in(path).forEach(f -> files.add(new Making.Given(option, f)));
        } else if (String.valueOf(path.getFileName()).endsWith(".json")) {
            documents.put(option, SurveyRequest.document(path));
        } else {
            files.add(new Making.Given(option, path));
        }
    }
}
