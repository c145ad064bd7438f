package ebblight.app.serve;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import io.javalin.http.UnauthorizedResponse;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Who may ask: requests that name this very address as host, come from its own pages, and carry the token of the link
 * that {@code open} prints. Keeps other sites in the same browser, and other programs on the machine, out.
 */
final class Gate {

    private static final int TOKEN_BYTES = 24;
    private static final Set<String> SAFE_METHODS = Set.of("GET", "HEAD");

    private static final String POLICY =
            "default-src 'none'; script-src 'self'; style-src 'self'; style-src-attr 'unsafe-inline';"
                    + " img-src 'self' blob: data:; font-src 'self'; connect-src 'self'; media-src 'self' blob:;"
                    + " base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

    private final String token;

    Gate() {
        byte[] random = new byte[TOKEN_BYTES];
        new SecureRandom().nextBytes(random);
        token = HexFormat.of().formatHex(random);
    }

    String token() {
        return token;
    }

    /** Headers of every answer; refuses a foreign host or origin before anything else is looked at. */
    void before(Context context) {
        context.header("Content-Security-Policy", POLICY);
        context.header("X-Content-Type-Options", "nosniff");
        context.header("Referrer-Policy", "no-referrer");
        context.header("Cross-Origin-Resource-Policy", "same-origin");
        context.header("Cross-Origin-Opener-Policy", "same-origin");
        int port = context.port();
        String host = context.header("Host");
        if (!("127.0.0.1:" + port).equals(host) && !("localhost:" + port).equals(host)) {
            throw new ForbiddenException("this server answers only its own address, not " + plain(host));
        }
        String origin = context.header("Origin");
        if (origin != null && !origin.equals("http://" + host)) {
            throw new ForbiddenException("pages from elsewhere may not ask here");
        }
        String site = context.header("Sec-Fetch-Site");
        boolean elsewhere = "cross-site".equals(site) || "same-site".equals(site);
        if (elsewhere && !(SAFE_METHODS.contains(context.method().name()) && isPage(context))) {
            throw new ForbiddenException("pages from elsewhere may not ask here");
        }
    }

    private static boolean isPage(Context context) {
        return context.path().equals("/") || context.path().equals("/enter");
    }

    /** Lets through who holds the token. */
    void check(Context context) {
        String given = context.cookie(cookieName(context));
        String header = context.header("X-Ebblight-Token");
        if (!same(given) && !same(header)) {
            throw new UnauthorizedResponse("open the link that ./ebblight open printed");
        }
    }

    /** Exchanges the token of the link for a cookie that scripts cannot read. */
    void enter(Context context) {
        if (!same(context.queryParam("token"))) {
            throw new UnauthorizedResponse("this link is from an earlier run; start ./ebblight open again");
        }
        Cookie cookie = new Cookie(cookieName(context), token);
        cookie.setHttpOnly(true);
        cookie.setSameSite(SameSite.STRICT);
        cookie.setPath("/");
        context.cookie(cookie);
        context.header("Cache-Control", "no-store");
    }

    /** Cookies do not know ports: two servers on one machine must not share a name. */
    private static String cookieName(Context context) {
        return "ebblight-" + context.port();
    }

    private boolean same(@Nullable String given) {
        return given != null
                && MessageDigest.isEqual(
                        given.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8));
    }

    private static String plain(@Nullable String host) {
        return host == null ? "none" : host.replaceAll("[^A-Za-z0-9.:\\[\\]-]", "?");
    }

    /** The link that opens the app. */
    URI link(int port) {
        return URI.create("http://127.0.0.1:" + port + "/enter?token=" + token);
    }
}
