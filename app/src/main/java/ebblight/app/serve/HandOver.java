package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.pocket.PocketPage;
import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The phone page handed over in the network of the house: off until it is asked for, at one address of this machine,
 * behind a token of its own, and off again after a quarter of an hour. It answers three files and nothing else.
 */
final class HandOver implements AutoCloseable {

    /** System property that names the address. */
    static final String TOLD = "ebblight.house";

    private static final Duration OPEN = Duration.ofMinutes(15);

    private final Clock clock;
    private @Nullable Javalin server;
    private Instant until = Instant.EPOCH;
    private String link = "";

    HandOver(Clock clock) {
        this.clock = clock;
    }

    /**
     * The address that phones of the same network reach; empty when there is none. A machine in several networks is told
     * which by the system property {@code ebblight.house}.
     */
    static Optional<InetAddress> inTheHouse() throws IOException {
        String told = System.getProperty(TOLD, "");
        if (!told.isEmpty()) {
            return Optional.of(InetAddress.getByName(told));
        }
        for (NetworkInterface each : Collections.list(NetworkInterface.getNetworkInterfaces())) {
            if (each.isUp() && !each.isLoopback() && !each.isVirtual()) {
                for (InetAddress address : Collections.list(each.getInetAddresses())) {
                    if (address instanceof Inet4Address && address.isSiteLocalAddress()) {
                        return Optional.of(address);
                    }
                }
            }
        }
        return Optional.empty();
    }

    /** Opens the door for one outing; the link that goes to the phone. */
    synchronized String open(InetAddress address, JsonObject packed) throws IOException {
        close();
        byte[] page = PocketPage.html(packed, true);
        byte[] small = JsonWriter.string(packed).getBytes(StandardCharsets.UTF_8);
        byte[] door = WebFiles.bytes("hand-over.html");
        String token = new Gate().token();
        Javalin made = Javalin.create(config -> {
            config.showJavalinBanner = false;
            config.startupWatcherEnabled = false;
            config.router.ignoreTrailingSlashes = false;
        });
        made.before(context -> enter(context, token));
        made.get("/{token}/", context -> give(context, "text/html; charset=utf-8", door));
        made.get("/{token}/ebblight-pocket.html", context -> give(context, "text/html; charset=utf-8", page));
        made.get("/{token}/outing.pocket.json", context -> give(context, "application/json; charset=utf-8", small));
        try {
            made.start(address.getHostAddress(), 0);
        } catch (RuntimeException e) {
            made.stop();
            throw new IOException(
                    address.getHostAddress() + ": this machine does not let programs be reached there;"
                            + " a firewall may forbid it",
                    e);
        }
        server = made;
        until = clock.instant().plus(OPEN);
        link = "http://" + address.getHostAddress() + ":" + made.port() + "/" + token + "/";
        return link;
    }

    /** Lets through who holds the token and asks for this very address, for as long as the door is open. */
    private void enter(Context context, String token) {
        String given = context.path().split("/", 3)[1];
        boolean known =
                MessageDigest.isEqual(given.getBytes(StandardCharsets.UTF_8), token.getBytes(StandardCharsets.UTF_8));
        String host = context.header("Host");
        if (!known || host == null || !link.startsWith("http://" + host + "/")) {
            throw new NotFoundResponse("there is nothing here");
        }
        if (clock.instant().isAfter(until)) {
            throw new NotFoundResponse("this link was open for a quarter of an hour; ask for a new one on the desk");
        }
    }

    private static void give(Context context, String type, byte[] bytes) {
        context.header("Cache-Control", "no-store");
        context.header("X-Content-Type-Options", "nosniff");
        context.header("Referrer-Policy", "no-referrer");
        context.contentType(type);
        context.result(bytes);
    }

    /** The link while the door is open; empty otherwise. */
    synchronized Optional<String> link() {
        if (server != null && clock.instant().isAfter(until)) {
            close();
        }
        return server == null ? Optional.empty() : Optional.of(link);
    }

    @Override
    public synchronized void close() {
        if (server != null) {
            server.stop();
            server = null;
        }
    }
}
