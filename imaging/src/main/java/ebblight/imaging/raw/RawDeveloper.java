package ebblight.imaging.raw;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.File;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;

/**
 * Develops RAW files in one worker process that lives until this process ends. A worker that breaks down or hangs costs
 * the file it was at; the next file gets a new one.
 */
public final class RawDeveloper implements AutoCloseable {

    private static final RawDeveloper SHARED = new RawDeveloper(List.of(), 300);

    /** Address space of a worker in kB, where the system can hold it to that: its own 1 GB and what LibRaw may need. */
    private static final long MOST_MEMORY = 5_000_000;

    private final List<String> options;
    private final long patienceSeconds;
    private Optional<Worker> worker = Optional.empty();

    /**
     * @param options further ones of the worker's virtual machine
     * @param patienceSeconds after which a worker is given up
     */
    RawDeveloper(List<String> options, long patienceSeconds) {
        this.options = options;
        this.patienceSeconds = patienceSeconds;
    }

    /** The developer that all of this process share. */
    public static RawDeveloper shared() {
        return SHARED;
    }

    /** Gives the memory that samples go to, once their number is known. */
    public interface Target {
        /** Memory of {@code 6 · width · height} bytes at least. */
        ByteBuffer of(int width, int height);
    }

    /**
     * Develops a file: 16 bits of red, green, blue a pixel in the machine's order; linear light of ProPhoto primaries,
     * the camera's white balance, upright.
     *
     * @throws RawException when this file cannot be developed, and why
     */
    public void develop(byte[] file, Target target) throws RawException {
        ask(Wire.DEVELOP, file, in -> {
            int width = in.readInt();
            int height = in.readInt();
            ByteBuffer samples = target.of(width, height);
            byte[] piece = new byte[Wire.PIECE];
            for (long left = 6L * width * height; left > 0; ) {
                int n = (int) Math.min(piece.length, left);
                in.readFully(piece, 0, n);
                samples.put(piece, 0, n);
                left -= n;
            }
            return Wire.DONE;
        });
    }

    /**
     * Reads the head of a file.
     *
     * @throws RawException when LibRaw does not know it, and why
     */
    public RawFacts facts(byte[] file) throws RawException {
        return ask(Wire.FACTS, file, in -> {
            float exposure = in.readFloat();
            float fNumber = in.readFloat();
            float iso = in.readFloat();
            float focal = in.readFloat();
            long seconds = in.readLong();
            Optional<LocalDateTime> taken = seconds > 0
                    ? Optional.of(LocalDateTime.ofEpochSecond(seconds, 0, ZoneOffset.UTC))
                    : Optional.empty();
            return new RawFacts(exposure, fNumber, iso, focal, taken, in.readUTF());
        });
    }

    /**
     * Reads what the sensor gathered.
     *
     * @throws RawException when it is no Bayer mosaic or cannot be read, and why
     */
    public RawMosaic mosaic(byte[] file) throws RawException {
        return ask(Wire.MOSAIC, file, in -> {
            int width = in.readInt();
            int height = in.readInt();
            int[] colours = new int[4];
            int[] black = new int[4];
            for (int k = 0; k < 4; k++) {
                colours[k] = in.readInt();
            }
            for (int k = 0; k < 4; k++) {
                black[k] = in.readInt();
            }
            int white = in.readInt();
            int flip = in.readInt();
            float[] cameraGains = floats(in, 3);
            float[] daylightGains = floats(in, 3);
            float[] toSrgb = floats(in, 9);
            String camera = in.readUTF();
            short[] samples = new short[width * height];
            byte[] row = new byte[2 * width];
            for (int y = 0; y < height; y++) {
                in.readFully(row);
                ByteBuffer.wrap(row)
                        .order(ByteOrder.nativeOrder())
                        .asShortBuffer()
                        .get(samples, y * width, width);
            }
            return new RawMosaic(
                    width, height, colours, black, white, flip, cameraGains, daylightGains, toSrgb, camera, samples);
        });
    }

    private static float[] floats(DataInputStream in, int count) throws IOException {
        float[] values = new float[count];
        for (int k = 0; k < count; k++) {
            values[k] = in.readFloat();
        }
        return values;
    }

    private interface Answer<T> {
        T read(DataInputStream in) throws IOException;
    }

    private synchronized <T> T ask(int request, byte[] file, Answer<T> answer) throws RawException {
        CompletableFuture<Void> watch = CompletableFuture.completedFuture(null);
        try {
            Worker now = running();
            watch = CompletableFuture.runAsync(
                    now.process::destroyForcibly, CompletableFuture.delayedExecutor(patienceSeconds, TimeUnit.SECONDS));
            return now.ask(request, file, answer);
        } catch (RawException e) {
            throw e;
        } catch (IOException e) {
            throw new RawException("broke LibRaw: " + end());
        } finally {
            watch.cancel(true);
        }
    }

    private Worker running() throws IOException {
        if (worker.isEmpty() || !worker.get().process.isAlive()) {
            worker = Optional.of(new Worker(start()));
        }
        return worker.get();
    }

    private Process start() throws IOException {
        List<String> command = new ArrayList<>();
        if (System.getProperty("os.name", "").equals("Linux")) {
            command.addAll(List.of("/bin/sh", "-c", "ulimit -v " + MOST_MEMORY + "; exec \"$0\" \"$@\""));
        }
        command.add(System.getProperty("java.home") + File.separator + "bin" + File.separator + "java");
        command.addAll(
                List.of("-Xmx64m", "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-XX:CompressedClassSpaceSize=32m"));
        // where Homebrew puts libraries, which JNA does not look at by itself
        command.add("-Djna.library.path=/opt/homebrew/lib" + File.pathSeparator + "/usr/local/lib");
        command.addAll(options);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), RawWorker.class.getName()));
        ProcessBuilder builder = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD);
        builder.environment().put("TZ", "UTC"); // so that times of day stay those of the camera's clock
        return builder.start();
    }

    /** Ends the worker and says how it ended. */
    private String end() {
        if (worker.isEmpty()) {
            return "its worker could not be started";
        }
        Process process = worker.get().process;
        worker = Optional.empty();
        try {
            if (!process.waitFor(2, TimeUnit.SECONDS)) {
                process.destroyForcibly().waitFor();
            }
            return "its worker ended with code " + process.exitValue()
                    + " on this frame; the next frames get a new one";
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return "waiting for its worker was interrupted";
        }
    }

    /** Identifier of the worker's process; empty while there is none. */
    synchronized Optional<ProcessHandle> process() {
        return worker.map(w -> w.process.toHandle());
    }

    /** Ends the worker; a further file would start one again. */
    @Override
    public synchronized void close() {
        worker.ifPresent(w -> w.process.destroy());
        worker = Optional.empty();
    }

    /** A running process and the streams to and from it. */
    private record Worker(Process process, DataInputStream in, DataOutputStream out) {

        Worker(Process process) {
            this(
                    process,
                    new DataInputStream(new BufferedInputStream(process.getInputStream(), Wire.PIECE)),
                    new DataOutputStream(new BufferedOutputStream(process.getOutputStream(), Wire.PIECE)));
        }

        <T> T ask(int request, byte[] file, Answer<T> answer) throws IOException {
            out.writeInt(Wire.MARK);
            out.writeInt(request);
            out.writeInt(file.length);
            out.write(file);
            out.flush();
            if (in.readInt() != Wire.MARK) {
                throw new IOException("what came back is no answer");
            }
            if (in.readInt() == Wire.REFUSED) {
                throw new RawException(in.readUTF());
            }
            return answer.read(in);
        }
    }
}
