package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;

/** The pages of After open on an outing with frames to stack and a pair without and with a filter. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
abstract class AfterPages extends PagesInBrowser {

    static final String SORTED = "document.querySelector('.sort-list .frame.best')";

    static Path root;

    @BeforeAll
    static void start() throws IOException {
        OpenPages.assumeBrowser();
        root = Files.createDirectories(temporary.resolve("outing"));
        TestOuting.write(root, "Shore");
        Path pair = Files.createDirectories(root.resolve("pair"));
        StillFrame.write(pair.resolve("f1.jpg"), 1, 0.125, 0);
        StillFrame.write(pair.resolve("f2.jpg"), 2, 2, 20);
        pages = OpenPages.on(root, temporary);
        browser = pages.browser();
        browser.driver().get(pages.server().link().toString());
        browser.run("localStorage.setItem('ebblight-tour', 'seen')");
    }

    static JsonObject record(String file) throws Exception {
        return JsonParser.object().from(Files.readString(root.resolve("made").resolve(file + ".json")));
    }
}
