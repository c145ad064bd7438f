package ebblight.app.serve;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.app.ask.Asked;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.demo.Sensor;
import ebblight.demo.View;
import ebblight.engine.Blobs;
import ebblight.engine.Engine;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A clip of the demo's coast, coded by Debian's ffmpeg, read on the phone page: frames, parts and measures. */
@SuppressWarnings("NullAway") // JUnit and the browser fill in what is read
class PocketClipTest {

    private static final int WIDTH = 336;
    private static final int FRAMES = 45;
    private static final int PER_SECOND = 15;

    /** Codes of 255 by which two decoders' colours may differ on average: their matrices round differently. */
    private static final double MOST_CODES = 3;

    /** Keeps what goes to the engine of the page and what comes back. */
    private static final String WITNESS =
            """
            window.given = {};
            window.asked = [];
            window.told = {};
            const post = Worker.prototype.postMessage;
            Worker.prototype.postMessage = function (message, ...more) {
              if (message.put) {
                given[message.put] = message.bytes;
              } else if (message.answer || message.get) {
                asked.push(message);
              }
              if (!this.witnessed) {
                this.witnessed = true;
                this.addEventListener('message', ({ data }) => { if ('done' in data) { told[data.id] = data.done; } });
              }
              return post.call(this, message, ...more);
            };
            window.coded = (bytes) => {
              let text = '';
              const view = new Uint8Array(bytes.buffer, bytes.byteOffset, bytes.byteLength);
              for (let i = 0; i < view.length; i += 8190) {
                text += btoa(String.fromCharCode(...view.subarray(i, i + 8190)));
              }
              return text;
            };
            """;

    @TempDir
    Path temporary;

    private static byte[] run(List<String> command, byte[] in) throws IOException, InterruptedException {
        Process process;
        try {
            process = new ProcessBuilder(command)
                    .redirectError(ProcessBuilder.Redirect.DISCARD)
                    .start();
        } catch (IOException e) {
            assumeTrue(false, "no ffmpeg here (Debian: ffmpeg)");
            throw e;
        }
        try (OutputStream to = process.getOutputStream()) {
            to.write(in);
        }
        byte[] out = process.getInputStream().readAllBytes();
        assertThat(process.waitFor()).isZero();
        return out;
    }

    /** Films the demo's coast; H.264 as phones do. */
    private static int film(Path clip) throws IOException, InterruptedException {
        View view = Coast.evening().view(WIDTH, Work.alone());
        Sensor sensor = new Sensor(100);
        byte[] all = new byte[FRAMES * 3 * view.width() * view.height()];
        for (int i = 0; i < FRAMES; i++) {
            byte[] frame = sensor.srgb8(view.frame((double) i / PER_SECOND), i);
            System.arraycopy(frame, 0, all, i * frame.length, frame.length);
        }
        run(
                List.of(
                        "ffmpeg",
                        "-f",
                        "rawvideo",
                        "-pix_fmt",
                        "rgb24",
                        "-s",
                        view.width() + "x" + view.height(),
                        "-r",
                        "" + PER_SECOND,
                        "-i",
                        "-",
                        "-c:v",
                        "libx264",
                        "-crf",
                        "14",
                        "-pix_fmt",
                        "yuv420p",
                        "-y",
                        clip.toString()),
                all);
        return view.height();
    }

    private static byte[] bytes(Browser browser, String expression) {
        return Base64.getMimeDecoder().decode(String.valueOf(browser.run("return coded(" + expression + ")")));
    }

    @Test
    void readingOnThePageIsThatOfTheDeskOnTheSameFrames() throws Exception {
        Path clip = temporary.resolve("coast.mp4");
        int height = film(clip);
        try (PhonePage page = PhonePage.of(temporary).offline()) {
            Browser browser = page.browser();
            browser.driver().executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", WITNESS));
            page.open("#there/view-1/new");
            browser.type("input[aria-label='Clip or frames']", clip.toString());
            browser.until("document.querySelector('.axis-page .now') || document.querySelector('.fault')");
            assertThat(browser.text()).doesNotContain("cannot decode");
            JsonObject measure = request(browser, "measure/1");
            List<byte[]> frames = frames(browser, measure);
            sameAsDecoded(frames, measure, clip, height);

            Engine engine = new Engine();
            Blobs blobs = new Blobs();
            for (int i = 0; i < frames.size(); i++) {
                blobs.put("clip/" + i, frames.get(i));
            }
            PocketPageTest.same(here(engine, measure, blobs), answer(browser, "measure/1"), "measure/1 ");
            assertThat(bytes(browser, "told[asked.find(one => one.get === 'regions').id]"))
                    .isEqualTo(blobs.get("regions").orElseThrow());

            // a stroke shows its parts before anything of them is measured
            page.wait(
                    "import('ebblight/pocket/carrier.js').then(({ httpCarrier }) => httpCarrier.answer({ schema: 'parts/1',"
                            + " frames: { path: 'coast.mp4' }, strokes: { schema: 'strokes/1', strokes: [{ kind: 'swaying',"
                            + " points: [[0.1, 0.9], [0.3, 0.9]] }] } })).then(done);");
            JsonObject parts = request(browser, "parts/1");
            PocketPageTest.same(here(engine, parts, blobs), answer(browser, "parts/1"), "parts/1 ");
            assertThat(bytes(browser, "told[asked.findLast(one => one.get === 'regions').id]"))
                    .isEqualTo(blobs.get("regions").orElseThrow());
            assertThat(browser.faults()).isEmpty();
        }
    }

    private static JsonObject here(Engine engine, JsonObject request, Blobs blobs) {
        return Asked.parse(engine.answer(JsonWriter.string(request), blobs, Work.alone()));
    }

    private static String last(String schema) {
        return "asked.findLast(one => one.answer && JSON.parse(one.answer).schema === '" + schema + "')";
    }

    private static JsonObject request(Browser browser, String schema) {
        return Asked.parse(String.valueOf(browser.run("return " + last(schema) + ".answer")));
    }

    private static JsonObject answer(Browser browser, String schema) {
        return Asked.parse(String.valueOf(browser.run("return told[" + last(schema) + ".id]")));
    }

    private static List<byte[]> frames(Browser browser, JsonObject measure) {
        JsonArray times = measure.getObject("frames").getArray("timesSeconds");
        List<byte[]> frames = new ArrayList<>();
        for (int i = 0; i < times.size(); i++) {
            frames.add(bytes(browser, "given['clip/" + i + "']"));
        }
        return frames;
    }

    /** Every frame of the page is one that ffmpeg decodes, at its time. */
    private static void sameAsDecoded(List<byte[]> frames, JsonObject measure, Path clip, int height)
            throws IOException, InterruptedException {
        byte[] decoded =
                run(List.of("ffmpeg", "-i", clip.toString(), "-f", "rawvideo", "-pix_fmt", "rgb24", "-"), new byte[0]);
        int size = 3 * WIDTH * height;
        assertThat(frames).hasSizeGreaterThanOrEqualTo(FRAMES - 2);
        JsonArray times = measure.getObject("frames").getArray("timesSeconds");
        int first = nearest(frames.get(0), decoded, size);
        for (int i = 0; i < frames.size(); i++) {
            int at = first + (int) Math.round(times.getDouble(i) * PER_SECOND);
            assertThat(apart(frames.get(i), decoded, at * size))
                    .as("frame %d at %s s", i, times.get(i))
                    .isLessThan(MOST_CODES);
            assertThat(nearest(frames.get(i), decoded, size)).isEqualTo(at);
        }
    }

    private static int nearest(byte[] frame, byte[] decoded, int size) {
        int best = 0;
        for (int k = 1; k < decoded.length / size; k++) {
            best = apart(frame, decoded, k * size) < apart(frame, decoded, best * size) ? k : best;
        }
        return best;
    }

    private static double apart(byte[] frame, byte[] decoded, int from) {
        double sum = 0;
        for (int i = 0; i < frame.length; i += 7) {
            sum += Math.abs((frame[i] & 0xFF) - (decoded[from + i] & 0xFF));
        }
        return 7 * sum / frame.length;
    }
}
