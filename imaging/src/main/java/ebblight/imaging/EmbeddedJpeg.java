package ebblight.imaging;

import java.util.Arrays;
import java.util.Optional;

/** Finds the largest JPEG inside another file: the preview that cameras put into RAW files. */
final class EmbeddedJpeg {

    private EmbeddedJpeg() {}

    static Optional<byte[]> largest(byte[] file) {
        int best = -1;
        long bestArea = 0;
        for (int i = 0; i + 3 < file.length; i++) {
            if (marker(file, i) == 0xD8 && (file[i + 2] & 0xFF) == 0xFF) {
                long area = area(file, i + 2);
                if (area > bestArea) {
                    bestArea = area;
                    best = i;
                }
            }
        }
        return best < 0 ? Optional.empty() : Optional.of(Arrays.copyOfRange(file, best, file.length));
    }

    /** Pixels of a JPEG by its header; 0 when it does not say. */
    static long pixels(byte[] jpeg) {
        return area(jpeg, 2);
    }

    private static int marker(byte[] file, int i) {
        return (file[i] & 0xFF) == 0xFF ? file[i + 1] & 0xFF : -1;
    }

    /** Pixels told by the frame header of a baseline or progressive JPEG that follows; 0 when there is none. */
    private static long area(byte[] file, int from) {
        int at = from;
        while (at + 9 < file.length) {
            int marker = marker(file, at);
            if (marker < 0xC0 || marker == 0xDA || marker == 0xD9) {
                return 0;
            }
            if (marker == 0xC0 || marker == 0xC1 || marker == 0xC2) {
                int height = (file[at + 5] & 0xFF) << 8 | (file[at + 6] & 0xFF);
                int width = (file[at + 7] & 0xFF) << 8 | (file[at + 8] & 0xFF);
                return (long) width * height;
            }
            at += 2 + ((file[at + 2] & 0xFF) << 8 | (file[at + 3] & 0xFF));
        }
        return 0;
    }
}
