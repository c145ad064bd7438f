package ebblight.app.pocket;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.serve.WebFiles;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Writes the phone page as one HTML file, its parts made small and in printable characters. */
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
        String shell = text("index.html");
        StringBuilder styles = new StringBuilder();
        Matcher each = STYLE.matcher(shell);
        while (each.find()) {
            if (DESK_STYLES.contains(each.group(1))) {
                continue;
            }
            styles.append(text(each.group(1)));
        }
        styles.append(text("styles/phone.css"));
        String bare = OTHER_FILES.matcher(STYLE.matcher(shell).replaceAll("")).replaceAll("");
        JsonObject pages = new JsonObject();
        pages.putAll(PageModules.from("main.js"));
        StringBuilder parts = new StringBuilder();
        part(parts, "styles", Smaller.gzip(FONT_FILE.matcher(styles).replaceAll("")));
        part(parts, "outing", Smaller.gzip(JsonWriter.string(outing)));
        part(parts, "pages", Smaller.gzip(JsonWriter.string(pages)));
        part(parts, "worker", Smaller.gzip(text("pocket/lzma.js") + text("pocket/worker.js")));
        part(parts, "wasm-runtime", Smaller.gzip(reason("classes.wasm-runtime.js")));
        part(parts, "wasm", Smaller.lzma(reason("reason.wasm")));
        if (script) {
            part(parts, "script", Smaller.gzip(reason("reason.js")));
        }
        String boot = text("pocket/boot.js");
        return bare.replace("</body>", parts + "<script>" + boot + "</script>\n</body>")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static String text(String name) throws IOException {
        return new String(WebFiles.bytes(name), StandardCharsets.UTF_8);
    }

    private static byte[] reason(String name) throws IOException {
        try (InputStream in = PocketPage.class.getResourceAsStream("/ebblight/pocket/" + name)) {
            if (in == null) {
                throw new IOException("this build has no phone page in it; build again without -Dpocket.phase=none");
            }
            return in.readAllBytes();
        }
    }

    private static void part(StringBuilder to, String name, byte[] packed) {
        to.append("<script type=\"text/plain\" id=\"part-")
                .append(name)
                .append("\">")
                .append(Base91.encode(packed))
                .append("</script>\n");
    }
}
