package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonWriter;
import ebblight.app.TypedPictures;
import ebblight.app.outing.OutingFolder;
import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Who is answered, and with what; spoken over real sockets. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class ServerTest {

    @TempDir
    static Path temporary;

    private static LocalServer server;
    private static String token;
    private static Path root;

    @BeforeAll
    static void start() throws IOException {
        root = TestOuting.write(Files.createDirectories(temporary.resolve("outing")), "Shore");
        Files.writeString(temporary.resolve("secret.jpg"), "outside");
        server = LocalServer.start(
                OutingFolder.open(root),
                temporary.resolve("data"),
                temporary.resolve("cache"),
                0,
                Clock.systemUTC(),
                new TypedPictures());
        String link = server.link().toString();
        token = link.substring(link.indexOf("token=") + 6);
    }

    @AfterAll
    static void stop() {
        server.close();
    }

    /** Sends a request as typed and returns the whole answer. */
    private static String raw(String request) throws IOException {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), server.port())) {
            socket.setSoTimeout(20_000);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            socket.getOutputStream().flush();
            return new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static String get(String path, String... headers) throws IOException {
        return raw("GET " + path + " HTTP/1.1\r\nConnection: close\r\n"
                + String.join("", Arrays.stream(headers).map(h -> h + "\r\n").toList()) + "\r\n");
    }

    private static String host() {
        return "Host: 127.0.0.1:" + server.port();
    }

    private static String key() {
        return "X-Ebblight-Token: " + token;
    }

    private static HttpResponse<String> send(String method, String path, String body) throws Exception {
        return HttpClient.newHttpClient()
                .send(
                        HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + server.port() + path))
                                .header("X-Ebblight-Token", token)
                                .method(method, HttpRequest.BodyPublishers.ofString(body))
                                .build(),
                        HttpResponse.BodyHandlers.ofString());
    }

    @Test
    void answersItsOwnAddressWithTheToken() throws IOException {
        assertThat(get("/api/outing", host(), key())).startsWith("HTTP/1.1 200").contains("Test shore");
    }

    @Test
    void refusesForeignHostsAndOriginsEvenWithTheToken() throws IOException {
        assertThat(get("/api/outing", "Host: evil.example", key())).startsWith("HTTP/1.1 403");
        assertThat(get("/api/outing", "Host: 127.0.0.1:1", key())).startsWith("HTTP/1.1 403");
        assertThat(get("/api/outing", host(), key(), "Origin: http://evil.example"))
                .startsWith("HTTP/1.1 403");
        assertThat(get("/api/outing", host(), key(), "Origin: null")).startsWith("HTTP/1.1 403");
        assertThat(get("/api/outing", host(), key(), "Sec-Fetch-Site: cross-site"))
                .startsWith("HTTP/1.1 403");
    }

    @Test
    void refusesWhoHasNoTokenAndTellsHowToComeIn() throws IOException {
        assertThat(get("/api/outing", host())).startsWith("HTTP/1.1 401").contains("./ebblight open");
        assertThat(get("/", host())).startsWith("HTTP/1.1 401").contains("./ebblight open");
        assertThat(get("/enter?token=" + "0".repeat(48), host())).startsWith("HTTP/1.1 401");
        assertThat(get("/api/outing", host(), "Cookie: ebblight-" + server.port() + "=guess"))
                .startsWith("HTTP/1.1 401");
    }

    @Test
    void theExportHoldsTheKitAndWhatIsRemembered() throws Exception {
        String answer = get("/api/kit?export=1", host(), key());
        assertThat(answer).startsWith("HTTP/1.1 200").contains("ebblight-memory.json");
        JsonObject file = JsonParser.object().from(answer.substring(answer.indexOf("\r\n\r\n")));
        assertThat(file.getString("schema")).isEqualTo("memory/1");
        assertThat(file.getObject("kit").getString("schema")).isEqualTo("kit/1");
        assertThat(file).containsKeys("outings", "calibrations");
    }

    @Test
    void theLinkGivesACookieThatScriptsAndOtherSitesCannotUse() throws IOException {
        String answer = get("/enter?token=" + token, host());
        assertThat(answer).startsWith("HTTP/1.1 303").contains("HttpOnly").contains("SameSite=Strict");
    }

    @Test
    void everyAnswerCarriesThePolicy() throws IOException {
        String answer = get("/web/main.js", host());
        assertThat(answer)
                .startsWith("HTTP/1.1 200")
                .contains("Content-Security-Policy: default-src 'none'; script-src 'self'")
                .contains("X-Content-Type-Options: nosniff")
                .doesNotContain("Access-Control-Allow-Origin");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/api/thumbnail?width=64&path=../secret.jpg",
                "/api/thumbnail?width=64&path=%2e%2e%2fsecret.jpg",
                "/api/thumbnail?width=64&path=burst/%2e%2e/%2e%2e/secret.jpg",
                "/api/thumbnail?width=64&path=..%5csecret.jpg",
                "/api/thumbnail?width=64&path=/etc/passwd",
                "/api/thumbnail?width=64&path=%00",
                "/api/picture?path=../secret.jpg",
                "/web/../../../etc/passwd",
                "/web/%2e%2e/%2e%2e/etc/passwd",
                "/web/..%2f..%2fetc/passwd",
                "/api/blobs/..%2f..%2fsecret.jpg"
            })
    void noPathLeadsOut(String path) throws IOException {
        assertThat(get(path, host(), key()))
                .doesNotContain("outside")
                .doesNotContain("root:")
                .doesNotStartWith("HTTP/1.1 2");
    }

    @Test
    void aLinkInTheFolderThatLeadsOutIsNotServed() throws IOException {
        Path link = root.resolve("burst/link.jpg");
        Files.createSymbolicLink(link, temporary.resolve("secret.jpg"));
        try {
            assertThat(get("/api/thumbnail?width=64&path=burst/link.jpg", host(), key()))
                    .startsWith("HTTP/1.1 404");
        } finally {
            Files.delete(link);
        }
    }

    @Test
    void aBodyBeyondItsBoundIsRefused() throws Exception {
        HttpResponse<String> answer = send("PUT", "/api/outing", "{\"x\":\"" + "a".repeat(9 << 20) + "\"}");
        assertThat(answer.statusCode()).isEqualTo(413);
        String announced = raw("POST /api/drop?name=huge.mp4 HTTP/1.1\r\n" + host() + "\r\n" + key()
                + "\r\nConnection: close\r\nContent-Length: 99999999999\r\n\r\nx");
        assertThat(announced).startsWith("HTTP/1.1 413");
    }

    @Test
    void aStalePageGetsTheNewerDocument() throws Exception {
        JsonObject whole =
                JsonParser.object().from(send("GET", "/api/outing", "").body());
        JsonObject outing = whole.getObject("outing");
        JsonObject written = JsonParser.object()
                .from(send("PUT", "/api/outing", JsonWriter.string(outing)).body());
        assertThat(written.getInt("revision")).isEqualTo(outing.getInt("revision") + 1);
        HttpResponse<String> stale = send("PUT", "/api/outing", JsonWriter.string(outing));
        assertThat(stale.statusCode()).isEqualTo(409);
        assertThat(JsonParser.object().from(stale.body()).getObject("newer")).isEqualTo(written);
    }

    @Test
    void droppedFilesAreNeverLaidOverOthersAndNamesCannotLeadAway() throws Exception {
        String first = send("POST", "/api/drop?name=a.mp4", "one").body();
        String second = send("POST", "/api/drop?name=..%2F..%2Fa.mp4", "two").body();
        assertThat(JsonParser.object().from(first).getString("path")).isEqualTo("dropped/a.mp4");
        assertThat(JsonParser.object().from(second).getString("path")).isEqualTo("dropped/a-2.mp4");
        assertThat(root.resolve("dropped/a.mp4")).hasContent("one");
        assertThat(send("POST", "/api/drop?name=.hidden", "x").statusCode()).isEqualTo(400);
    }

    @Test
    void questionsThatCannotBeReadNameTheField() throws Exception {
        HttpResponse<String> none = send("POST", "/api/ask", "{\"schema\":\"measure/1\"}");
        assertThat(none.statusCode()).isEqualTo(400);
        assertThat(none.body()).contains("frames.path");
        HttpResponse<String> gone =
                send("POST", "/api/ask", "{\"schema\":\"measure/1\",\"frames\":{\"path\":\"nowhere.mp4\"}}");
        assertThat(gone.statusCode()).isEqualTo(404);
        assertThat(gone.body()).contains("nowhere.mp4").contains("choose another clip");
    }

    @Test
    void settingsAreAnsweredAtOnceByTheContractOfTheEngine() throws Exception {
        HttpResponse<String> answer = send(
                "POST",
                "/api/ask",
                "{\"schema\":\"settings/1\",\"meter\":\"f/11 1/8 ISO100\",\"time\":\"25s\",\"filters\":[\"6\"]}");
        JsonObject settings = JsonParser.object().from(answer.body()).getObject("answer");
        // f/11 is 11.31, 1/8 s: EV100 = log2(11.31^2 · 8) = 10
        assertThat(settings.getDouble("exposureValue100")).isCloseTo(10, org.assertj.core.data.Offset.offset(1e-9));
        assertThat(settings.getArray("reach")).isNotEmpty();
    }

    @Test
    void aSecondServerOnTheSamePortSaysSo() {
        assertThatThrownBy(() -> LocalServer.start(
                        OutingFolder.open(root),
                        temporary.resolve("data"),
                        temporary.resolve("cache"),
                        server.port(),
                        Clock.systemUTC(),
                        new TypedPictures()))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("port " + server.port() + " is taken");
    }

    @Test
    void aFullDiskLosesNothingAndIsNamed() throws Exception {
        Path small = Files.createDirectories(temporary.resolve("small"));
        Process mount = new ProcessBuilder("mount", "-t", "tmpfs", "-o", "size=64k", "none", small.toString())
                .redirectErrorStream(true)
                .start();
        assumeTrue(mount.waitFor() == 0, "no right to mount a small file system here");
        try {
            Path outing = Files.createDirectories(small.resolve("outing"));
            Files.writeString(
                    outing.resolve("outing.json"),
                    "{\"schema\":\"outing/1\",\"revision\":3,\"zone\":\"UTC\",\"views\":[],\"log\":[]}");
            try (LocalServer full = LocalServer.start(
                    OutingFolder.open(outing),
                    temporary.resolve("data"),
                    temporary.resolve("cache"),
                    0,
                    Clock.systemUTC(),
                    new TypedPictures())) {
                String link = full.link().toString();
                HttpResponse<String> answer = HttpClient.newHttpClient()
                        .send(
                                HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + full.port() + "/api/outing"))
                                        .header("X-Ebblight-Token", link.substring(link.indexOf("token=") + 6))
                                        .PUT(HttpRequest.BodyPublishers.ofString(
                                                "{\"schema\":\"outing/1\",\"revision\":3,\"zone\":\"UTC\",\"views\":[],"
                                                        + "\"log\":[\"" + "x".repeat(200_000) + "\"]}"))
                                        .build(),
                                HttpResponse.BodyHandlers.ofString());
                assertThat(answer.statusCode()).isEqualTo(507);
                assertThat(answer.body()).contains("disk is full").contains("Nothing was lost");
            }
            assertThat(outing.resolve("outing.json")).content().contains("\"revision\":3");
        } finally {
            new ProcessBuilder("umount", small.toString()).start().waitFor();
        }
    }
}
