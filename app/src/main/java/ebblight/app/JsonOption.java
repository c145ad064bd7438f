package ebblight.app;

import picocli.CommandLine.Option;

/** Whether the answer is printed as one JSON document. */
final class JsonOption {

    @Option(names = "--json", description = "Print one JSON document on standard output and nothing else.")
    private boolean json;

    boolean wanted() {
        return json;
    }
}
