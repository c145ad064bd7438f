package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import ebblight.app.ask.SurveyRequest;
import java.nio.file.Files;
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
        // The page is passed on by itself: no script, nothing fetched; words that danger rules out are not on it.
        String page = Files.readString(folder.resolve("report.html"));
        assertThat(page).doesNotContain("<script").doesNotContain("src=\"http").doesNotContain("url(\"..");
        assertThat(page).contains("data:font/woff2").contains("Never turn your back on the sea");
        String words = page.replaceAll("base64,[A-Za-z0-9+/=]+", "");
        assertThat(words).doesNotContainPattern("(?i)\\b(safe|dry|spare|time for one more)\\b");
        var view = SurveyRequest.document(folder.resolve("outing.json"))
                .getArray("views")
                .getObject(0);
        assertThat(view.getArray("strokes")).isNotEmpty();
        // Water, cloud and rock each carry their wish: all three were found in the picture.
        assertThat(view.getObject("wishes")).hasSize(3);
    }
}
