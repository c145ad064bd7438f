package ebblight.app.pocket;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.UsageException;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.zip.GZIPOutputStream;

/**
 * A small outing in the address of the page that is on the phone already: the phone's camera opens it from the screen,
 * and what is kept of the page needs no network for it.
 */
public final class PocketCode {

    /** Signs of an address whose code a phone's camera still reads from a screen: version 30 of a QR code, level L. */
    public static final int MOST_SIGNS = 1732;

    /** In front of the packed outing in the address; also in pocket/packed.js. */
    private static final String OPEN = "#open=";

    private PocketCode() {}

    /**
     * The address.
     *
     * @param page where the phone has its page from, https
     * @param packed the outing as phones take it; its log stays on the desk
     */
    public static String address(String page, JsonObject packed) throws IOException {
        URI at;
        try {
            at = URI.create(page.strip());
        } catch (IllegalArgumentException e) {
            throw new UsageException("page: \"" + page + "\" is no address; expected https://… of the folder \"site\"");
        }
        boolean near = "127.0.0.1".equals(at.getHost()) || "localhost".equals(at.getHost());
        if (at.getHost() == null || !("https".equals(at.getScheme()) || near)) {
            throw new UsageException("page: \"" + page + "\" must begin with https://; over plain http a phone keeps"
                    + " no page, so that there would be none to open without a network");
        }
        String base = page.strip();
        int hash = base.indexOf('#');
        return (hash < 0 ? base : base.substring(0, hash)) + OPEN + text(packed);
    }

    private static String text(JsonObject packed) throws IOException {
        JsonObject small = new JsonObject();
        small.putAll(packed);
        JsonObject outing = new JsonObject();
        outing.putAll(packed.getObject("outing"));
        outing.put("log", new JsonArray());
        outing.remove("light");
        small.put("outing", outing);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (GZIPOutputStream gzip = new GZIPOutputStream(bytes)) {
            gzip.write(JsonWriter.string(small).getBytes(StandardCharsets.UTF_8));
        }
        return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes.toByteArray());
    }
}
