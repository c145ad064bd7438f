package ebblight.app.pocket;

import com.grack.nanojson.JsonObject;
import ebblight.app.serve.WebFiles;
import ebblight.imaging.OutputFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The phone page as a folder for any static https host: it installs to the home screen and works without a network from
 * then on.
 */
public final class PocketFolder {

    private static final String LINKS =
            """
            <link rel="manifest" href="manifest.webmanifest">
            <link rel="icon" href="icon.svg">
            <link rel="apple-touch-icon" href="icon-192.png">
            <meta name="theme-color" content="#0d1618">
            """;

    /** A page that was there already learns that a newer one took over; the first visit has none before it. */
    private static final String REGISTER =
            """
            <script>
            if (navigator.serviceWorker) {
              const before = navigator.serviceWorker.controller;
              navigator.serviceWorker.addEventListener('controllerchange', () => { globalThis.ebblightNewer = Boolean(before); });
              navigator.serviceWorker.register('service.js').catch(() => {});
            }
            </script>
            """;

    private static final int[] ICONS = {192, 512};

    private PocketFolder() {}

    /** Writes the folder; it holds an engine for older phones too. */
    public static void write(JsonObject outing, Path folder) throws IOException {
        Files.createDirectories(folder);
        byte[] page = new String(PocketPage.html(outing, true), StandardCharsets.UTF_8)
                .replace("</head>", LINKS + "</head>")
                .replace("</body>", REGISTER + "</body>")
                .getBytes(StandardCharsets.UTF_8);
        for (int size : ICONS) {
            OutputFile.write(folder.resolve("icon-" + size + ".png"), PocketIcon.png(size));
        }
        OutputFile.write(folder.resolve("icon.svg"), WebFiles.bytes("mark.svg"));
        OutputFile.write(folder.resolve("manifest.webmanifest"), WebFiles.bytes("pocket/manifest.webmanifest"));
        OutputFile.write(folder.resolve("index.html"), page);
        // last, so that a phone that comes in between puts away nothing half new
        OutputFile.write(
                folder.resolve("service.js"),
                new String(WebFiles.bytes("pocket/service.js"), StandardCharsets.UTF_8)
                        .replace("VERSION", version(page))
                        .getBytes(StandardCharsets.UTF_8));
    }

    private static String version(byte[] page) {
        try {
            byte[] sum = MessageDigest.getInstance("SHA-256").digest(page);
            return HexFormat.of().formatHex(sum, 0, 8);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
