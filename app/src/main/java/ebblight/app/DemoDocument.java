package ebblight.app;

import ebblight.imaging.OutputFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.temporal.ChronoUnit;

/** The {@code outing.json} of the demo: wishes set, a reading just taken, so that the app opens ready to touch. */
final class DemoDocument {

    private DemoDocument() {}

    /**
     * Writes it.
     *
     * @param frames folder of the burst inside {@code folder}
     * @param fadingStopsPerMinute rate at which the demo's light falls
     */
    static void write(Path folder, String frames, double fadingStopsPerMinute, Clock clock) throws IOException {
        String document =
                """
                {"schema":"outing/1","revision":1,"name":"An invented evening","zone":"UTC",
                 "place":{"name":"Harrow Ledge, invented"},
                 "views":[{"id":"view-1","name":"The post","frames":"%s","nearestMetres":2,
                   "wishes":{"flowing-1":"softened","fixed-1":"still"}}],
                 "light":{"readings":[{"dials":{"fNumber":21,"time":30,"iso":6},
                   "meter":"f/11 0.125s ISO100","at":"%s"}],"stopsPerMinute":%s},
                 "guard":{"packingMinutes":3},"log":[]}
                """
                        .formatted(frames, clock.instant().truncatedTo(ChronoUnit.SECONDS), fadingStopsPerMinute);
        OutputFile.write(folder.resolve("outing.json"), document.getBytes(StandardCharsets.UTF_8));
    }
}
