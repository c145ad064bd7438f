package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.app.ask.SurveyRequest;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The first command that anybody runs. */
class DemoCommandTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    @Test
    void doesTheWholeJob() throws Exception {
        assertThat(EbblightCommand.run("demo", "--no-open", "--json", "--dir", folder.toString()))
                .isZero();
        for (String file :
                new String[] {"clip.mp4", "strokes.json", "kit.json", "parts.png", "report.txt", "report.html"}) {
            assertThat(folder.resolve(file)).isNotEmptyFile();
        }
        assertThat(folder.resolve("stack-10s.tif")).isNotEmptyFile();
        var view = SurveyRequest.document(folder.resolve("outing.json"))
                .getArray("views")
                .getObject(0);
        assertThat(view.getArray("strokes")).isNotEmpty();
        // Water, cloud and rock each carry their wish: all three were found in the picture.
        assertThat(view.getObject("wishes")).hasSize(3);
    }
}
