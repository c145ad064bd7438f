package ebblight.app.memory;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A list of {@code memory/1} and the table that holds it, by one name.
 *
 * @param name of both
 * @param key fields that tell two rows of one parent apart
 * @param others the other fields; what a row does not say stays as it was
 * @param whole whether a list that comes replaces the one that is there
 * @param below lists inside each row
 */
record MemoryTable(String name, List<String> key, List<String> others, boolean whole, List<MemoryTable> below) {

    /** Fields that are true or false. */
    static final Set<String> FLAGS = Set.of("resolved");

    static final MemoryTable CALIBRATIONS = new MemoryTable(
            "calibrations",
            List.of("filter", "measuredOn"),
            List.of("takes", "stops", "low", "high", "red", "blue", "pairs"),
            false,
            List.of());

    private static final MemoryTable PREDICTIONS =
            new MemoryTable("predictions", List.of("seconds"), List.of("left", "low", "high"), true, List.of());

    private static final MemoryTable PARTS = new MemoryTable(
            "parts",
            List.of("part"),
            List.of(
                    "number",
                    "kind",
                    "water",
                    "areaFraction",
                    "texture",
                    "standing",
                    "correlationSeconds",
                    "wavePeriodSeconds",
                    "confidence",
                    "resolved"),
            true,
            List.of(PREDICTIONS));

    private static final MemoryTable MEASUREMENTS = new MemoryTable(
            "measurements",
            List.of("input"),
            List.of(
                    "filmedAt",
                    "mode",
                    "frames",
                    "seconds",
                    "framesPerSecond",
                    "windMetresPerSecond",
                    "mapWidth",
                    "mapHeight",
                    "map",
                    "sketch"),
            false,
            List.of(PARTS));

    private static final MemoryTable FRAMES = new MemoryTable(
            "frames",
            List.of("file"),
            List.of(
                    "camera",
                    "taken",
                    "exposureSeconds",
                    "fNumber",
                    "iso",
                    "focalMillimetres",
                    "role",
                    "rank",
                    "fixedSharpness",
                    "smoothness",
                    "clippedFraction",
                    "rating",
                    "suggestedRating"),
            false,
            List.of());

    private static final MemoryTable ENTRIES = new MemoryTable(
            "entries",
            List.of("openedAt"),
            List.of("view", "file", "openSeconds", "plannedSeconds", "offStops", "exposureValue100", "verdict"),
            false,
            List.of());

    private static final MemoryTable OUTCOMES = new MemoryTable(
            "outcomes",
            List.of("part"),
            List.of(
                    "kind",
                    "water",
                    "windMetresPerSecond",
                    "predictedFrom",
                    "predicted",
                    "low",
                    "high",
                    "cameOut",
                    "resolved"),
            true,
            List.of());

    private static final MemoryTable RESULTS = new MemoryTable(
            "results", List.of("file"), List.of("command", "seconds", "frames"), false, List.of(OUTCOMES));

    static final MemoryTable OUTINGS = new MemoryTable(
            "outings",
            List.of("folder"),
            List.of("name", "zone", "latitude", "longitude"),
            false,
            List.of(MEASUREMENTS, FRAMES, ENTRIES, RESULTS));

    /** The lists at the top of the document. */
    static final List<MemoryTable> TOP = List.of(CALIBRATIONS, OUTINGS);

    List<String> fields() {
        return Stream.concat(key.stream(), others.stream()).toList();
    }
}
