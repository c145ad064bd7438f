package ebblight.imaging.raw;

import com.sun.jna.Memory;
import com.sun.jna.Pointer;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.util.Optional;

/** The process in which LibRaw runs: answers requests on standard input until that ends. */
public final class RawWorker {

    private static final String INSTALL = "needs LibRaw, which was not found. Debian: apt-get install libraw-bin;"
            + " macOS: brew install libraw; Windows: unpack the LibRaw binaries of libraw.org and add their bin folder"
            + " to PATH. Without it, develop to TIFF first";

    private final Optional<LibRaw> library = LibRaw.load();
    private final DataInputStream in;
    private final DataOutputStream out;
    private final byte[] piece = new byte[Wire.PIECE];

    private RawWorker(InputStream in, OutputStream out) {
        this.in = new DataInputStream(in);
        this.out = new DataOutputStream(new BufferedOutputStream(out, Wire.PIECE));
    }

    public static void main(String[] arguments) throws IOException {
        RawWorker worker =
                new RawWorker(new FileInputStream(FileDescriptor.in), new FileOutputStream(FileDescriptor.out));
        System.setOut(System.err); // what is printed must not mix with answers
        while (worker.answered()) {
            // the next request
        }
    }

    private boolean answered() throws IOException {
        int first = in.read();
        if (first < 0) {
            return false;
        }
        int mark = first << 24 | in.readUnsignedShort() << 8 | in.readUnsignedByte();
        int request = in.readInt();
        if (mark != Wire.MARK) {
            throw new IOException("not a request: " + mark);
        }
        Memory file = file();
        try (RawPicture raw = new RawPicture(library(), file)) {
            switch (request) {
                case Wire.DEVELOP -> raw.develop(this::developed);
                case Wire.FACTS -> {
                    done();
                    raw.facts(out);
                }
                case Wire.MOSAIC -> raw.mosaic(this::done, out);
                default -> throw new IOException("not a request: " + request);
            }
        } catch (RawException e) {
            out.writeInt(Wire.MARK);
            out.writeInt(Wire.REFUSED);
            out.writeUTF(String.valueOf(e.getMessage()));
        }
        out.flush();
        return true;
    }

    private Memory file() throws IOException {
        Memory memory = new Memory(in.readInt());
        for (long at = 0; at < memory.size(); at += piece.length) {
            int n = (int) Math.min(piece.length, memory.size() - at);
            in.readFully(piece, 0, n);
            memory.write(at, piece, 0, n);
        }
        return memory;
    }

    private LibRaw library() throws RawException {
        return library.orElseThrow(() -> new RawException(INSTALL));
    }

    private void done() throws IOException {
        out.writeInt(Wire.MARK);
        out.writeInt(Wire.DONE);
    }

    private void developed(int width, int height, Pointer samples) throws IOException {
        done();
        out.writeInt(width);
        out.writeInt(height);
        long size = 6L * width * height;
        ByteBuffer all = samples.getByteBuffer(0, size);
        for (long at = 0; at < size; at += piece.length) {
            int n = (int) Math.min(piece.length, size - at);
            all.get(piece, 0, n);
            out.write(piece, 0, n);
        }
    }
}
