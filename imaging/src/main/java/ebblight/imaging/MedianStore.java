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
import java.util.List;
import java.util.function.IntToDoubleFunction;

/**
 * All frames of a stack in 16-bit codes in a temporary file, from which the median of every sample is taken piece by
 * piece: the memory does not grow with the number of frames.
 */
final class MedianStore implements Combination {

    private static final int PIECE_BYTES = 64 << 20;
    private static final double SPARE = 1.1;
    /** Stands for a place where a frame has nothing; the code of white is taken for the one below. */
    private static final int NOTHING = 65535;

    private final Path file;
    private final FileChannel channel;
    private final int samples;
    private final IccProfile profile;
    private int frames;

    private MedianStore(Path file, FileChannel channel, int samples, IccProfile profile) {
        this.file = file;
        this.channel = channel;
        this.samples = samples;
        this.profile = profile;
    }

    static MedianStore open(int samples, IccProfile profile, int mostFrames) throws IOException {
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
        return new MedianStore(file, channel, samples, profile);
    }

    @Override
    public void add(List<Part> parts, Work work) throws IOException {
        for (Part part : parts) {
            add(part.frame(), part.gain());
        }
    }

    private void add(DecodedFrame frame, double gain) throws IOException {
        short[] wide = wide(frame, gain);
        DecodedFrame.RowReader rows = frame.rows();
        int[][] codes = frame.rowMemory();
        ByteBuffer row = ByteBuffer.allocate(6 * frame.width()).order(ByteOrder.LITTLE_ENDIAN);
        for (int y = 0; y < frame.height(); y++) {
            rows.read(y, codes[0], codes[1], codes[2]);
            row.clear();
            for (int x = 0; x < frame.width(); x++) {
                for (int[] plane : codes) {
                    row.putShort(plane[x] < 0 ? (short) NOTHING : wide[plane[x]]);
                }
            }
            row.flip();
            while (row.hasRemaining()) {
                channel.write(row);
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
            double code = gain == 1 ? step * c : encode.code16(gain * linear[c]);
            codes[c] = (short) Math.min(NOTHING - 1, WholeCode.nearest(code));
        }
        return codes;
    }

    /** The median code of every sample; of an even number of frames the mean light of the two in the middle. */
    private short[] median(Work work) throws IOException {
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
                    int seen = 0;
                    for (int f = 0; f < frames; f++) {
                        int code = codes[f][i] & 0xFFFF;
                        if (code != NOTHING) {
                            values[seen++] = code;
                        }
                    }
                    Arrays.sort(values, 0, seen);
                    int high = values[seen / 2];
                    int low = values[(seen - 1) / 2];
                    out[first + i] = low == high
                            ? (short) (high == NOTHING - 1 ? NOTHING : high)
                            : (short) WholeCode.nearest(encode.code16((linear[low] + (double) linear[high]) / 2));
                }
            });
        }
        return out;
    }

    @Override
    public IntToDoubleFunction light(Work work) throws IOException {
        short[] median = median(work);
        float[] linear = profile.curve().table(16);
        return i -> linear[median[i] & 0xFFFF];
    }

    @Override
    public void close() throws IOException {
        channel.close();
        Files.deleteIfExists(file);
    }
}
