package ebblight.app.serve;

import io.javalin.http.Context;
import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.regex.Pattern;

/** The pages: files inside the program, or from a folder while they are being worked on. */
public final class WebFiles {

    private static final Pattern NAME =
            Pattern.compile("[a-z0-9-]+(/[a-z0-9-]+)*\\.(html|js|css|woff2|svg|txt|webmanifest)");
    private static final Map<String, String> TYPES = Map.of(
            "html", "text/html; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "css", "text/css; charset=utf-8",
            "woff2", "font/woff2",
            "svg", "image/svg+xml",
            "txt", "text/plain; charset=utf-8",
            "webmanifest", "application/manifest+json");

    private WebFiles() {}

    static void serve(Context context, String name) throws IOException {
        if (!NAME.matcher(name).matches()) {
            throw new FileNotFoundException("there is no such page");
        }
        String ending = name.substring(name.lastIndexOf('.') + 1);
        context.contentType(String.valueOf(TYPES.get(ending)));
        context.header("Cache-Control", "no-cache");
        context.result(bytes(name));
    }

    /** The bytes of a file of the pages. */
    public static byte[] bytes(String name) throws IOException {
        String folder = System.getProperty("ebblight.web", "");
        if (!folder.isEmpty()) {
            Path file = Path.of(folder, name);
            if (!Files.isRegularFile(file)) {
                throw new FileNotFoundException("there is no page " + name);
            }
            return Files.readAllBytes(file);
        }
        try (InputStream in = WebFiles.class.getResourceAsStream("/ebblight/app/web/" + name)) {
            if (in == null) {
                throw new FileNotFoundException("there is no page " + name);
            }
            return in.readAllBytes();
        }
    }
}
