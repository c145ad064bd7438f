package ebblight.app.pocket;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.serve.WebFiles;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;

/** Writes the phone page as one HTML file, its parts gzipped and in printable characters. */
public final class PocketPage {

    private static final Pattern STYLE = Pattern.compile("<link rel=\"stylesheet\" href=\"/web/([^\"]+)\">\n?");
    private static final Pattern OTHER_FILES = Pattern.compile("<(link rel=\"icon\"|script)[^>]*>(</script>)?\n?");
    private static final Pattern FONT_FILE = Pattern.compile("@font-face\\{[^}]*}\n?");

    /** Styles of pages that a phone does not have. */
    private static final Set<String> DESK_STYLES =
            Set.of("styles/after.css", "styles/finish.css", "styles/side.css", "styles/blend.css");

    private PocketPage() {}

    /**
     * The page.
     *
     * @param outing what the page is for: the outing's document, the kit, the plan
     * @param script whether browsers without garbage-collected WebAssembly find an engine too; a third larger
     */
    public static byte[] html(JsonObject outing, boolean script) throws IOException {
        String shell = new String(WebFiles.bytes("index.html"), StandardCharsets.UTF_8);
        StringBuilder styles = new StringBuilder();
        Matcher each = STYLE.matcher(shell);
        while (each.find()) {
            if (DESK_STYLES.contains(each.group(1))) {
                continue;
            }
            styles.append(new String(WebFiles.bytes(each.group(1)), StandardCharsets.UTF_8));
        }
        styles.append(new String(WebFiles.bytes("styles/phone.css"), StandardCharsets.UTF_8));
        String bare = OTHER_FILES.matcher(STYLE.matcher(shell).replaceAll("")).replaceAll("");
        JsonObject pages = new JsonObject();
        pages.putAll(PageModules.from("main.js"));
        StringBuilder parts = new StringBuilder();
        part(parts, "styles", FONT_FILE.matcher(styles).replaceAll("").getBytes(StandardCharsets.UTF_8));
        part(parts, "outing", JsonWriter.string(outing).getBytes(StandardCharsets.UTF_8));
        part(parts, "pages", JsonWriter.string(pages).getBytes(StandardCharsets.UTF_8));
        part(parts, "worker", WebFiles.bytes("pocket/worker.js"));
        part(parts, "wasm-runtime", reason("classes.wasm-runtime.js"));
        part(parts, "wasm", reason("reason.wasm"));
        if (script) {
            part(parts, "script", reason("reason.js"));
        }
        String boot = new String(WebFiles.bytes("pocket/boot.js"), StandardCharsets.UTF_8);
        return bare.replace("</body>", parts + "<script>" + boot + "</script>\n</body>")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static byte[] reason(String name) throws IOException {
        try (InputStream in = PocketPage.class.getResourceAsStream("/ebblight/pocket/" + name)) {
            if (in == null) {
                throw new IOException("this build has no phone page in it; build again without -Dpocket.phase=none");
            }
            return in.readAllBytes();
        }
    }

    private static void part(StringBuilder to, String name, byte[] bytes) throws IOException {
        ByteArrayOutputStream packed = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(packed) {
            {
                def.setLevel(Deflater.BEST_COMPRESSION);
            }
        }) {
            gzip.write(bytes);
        }
        to.append("<script type=\"text/plain\" id=\"part-")
                .append(name)
                .append("\">")
                .append(Base91.encode(packed.toByteArray()))
                .append("</script>\n");
    }
}
