package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Arrays;

/**
 * All frames of a stack in 16-bit codes in a temporary file, from which the median of every sample is taken piece by
 * piece: the memory does not grow with the number of frames.
 */
final class MedianStore implements AutoCloseable {

    private static final int PIECE_BYTES = 64 << 20;
    private static final double SPARE = 1.1;

    private final Path file;
    private final FileChannel channel;
    private final int samples;
    private final ByteBuffer row;
    private int frames;

    private MedianStore(Path file, FileChannel channel, int samples) {
        this.file = file;
        this.channel = channel;
        this.samples = samples;
        this.row = ByteBuffer.allocate(1 << 20).order(ByteOrder.LITTLE_ENDIAN);
    }

    static MedianStore open(int samples, int mostFrames) throws IOException {
        Path file = Files.createTempFile("ebblight-median", ".part");
        long needed = (long) (2.0 * samples * mostFrames * SPARE);
        long free = Files.getFileStore(file).getUsableSpace();
        if (free < needed) {
            Files.deleteIfExists(file);
            throw new IOException(file.getParent() + ": the median of " + mostFrames + " frames needs "
                    + needed / 1_000_000 + " MB of temporary space, " + free / 1_000_000
                    + " MB are free; free some or set -Djava.io.tmpdir");
        }
        FileChannel channel = FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE);
        return new MedianStore(file, channel, samples);
    }

    /** Adds a frame whose light counts {@code gain} times. */
    void add(DecodedFrame frame, double gain) throws IOException {
        short[] codes = wide(frame, gain);
        row.clear();
        for (int i = 0; i < samples; i++) {
            row.putShort(codes[frame.code(i)]);
            if (!row.hasRemaining() || i == samples - 1) {
                row.flip();
                while (row.hasRemaining()) {
                    channel.write(row);
                }
                row.clear();
            }
        }
        frames++;
    }

    /** The 16-bit code that stands for each code of the frame. */
    private static short[] wide(DecodedFrame frame, double gain) {
        float[] linear = frame.profile().curve().table(frame.bits());
        CodeTable encode = CodeTable.of(frame.profile().curve());
        short[] codes = new short[linear.length];
        double step = 65535.0 / (codes.length - 1);
        for (int c = 0; c < codes.length; c++) {
            codes[c] = (short) Math.round(gain == 1 ? step * c : encode.code16(gain * linear[c]));
        }
        return codes;
    }

    /** The median code of every sample; of an even number of frames the mean light of the two in the middle. */
    short[] median(IccProfile profile, Work work) throws IOException {
        short[] out = new short[samples];
        int piece = Math.max(1, PIECE_BYTES / (2 * frames));
        float[] linear = profile.curve().table(16);
        CodeTable encode = CodeTable.of(profile.curve());
        for (int from = 0; from < samples; from += piece) {
            work.check();
            work.progress(0.5 + 0.4 * from / samples, "taking the median");
            int first = from;
            int n = Math.min(piece, samples - from);
            short[][] codes = new short[frames][n];
            ByteBuffer buffer = ByteBuffer.allocate(2 * n).order(ByteOrder.LITTLE_ENDIAN);
            for (int f = 0; f < frames; f++) {
                buffer.clear();
                long at = 2L * ((long) f * samples + from);
                while (buffer.hasRemaining()) {
                    if (channel.read(buffer, at + buffer.position()) < 0) {
                        throw new IOException(file + ": ended early");
                    }
                }
                buffer.flip().order(ByteOrder.LITTLE_ENDIAN).asShortBuffer().get(codes[f]);
            }
            int parts = 8;
            work.forEach(parts, part -> {
                int[] values = new int[frames];
                for (int i = (int) ((long) n * part / parts); i < (long) n * (part + 1) / parts; i++) {
                    for (int f = 0; f < frames; f++) {
                        values[f] = codes[f][i] & 0xFFFF;
                    }
                    Arrays.sort(values);
                    int high = values[frames / 2];
                    int low = values[(frames - 1) / 2];
                    out[first + i] = low == high
                            ? (short) high
                            : (short) Math.round(encode.code16((linear[low] + (double) linear[high]) / 2));
                }
            });
        }
        return out;
    }

    @Override
    public void close() throws IOException {
        channel.close();
        Files.deleteIfExists(file);
    }
}
