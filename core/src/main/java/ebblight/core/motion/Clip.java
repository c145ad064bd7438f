package ebblight.core.motion;

import ebblight.core.numeric.Powers;
import java.util.ArrayList;
import java.util.List;

/**
 * Frames of one view at survey width (480 px or less), in the order they were taken. Holds the caller's byte arrays
 * without copying them; nobody may write to them afterwards.
 *
 * <p>A frame is {@code width · height} pixels of red, green, blue, row by row from the top left. Luminance is
 * 0.2126 R + 0.7152 G + 0.0722 B of linear light (IEC 61966-2-1), 1 = white.
 */
public final class Clip {

    private static final double SPACED_SECONDS = 2;

    /** How a frame's samples are written. */
    public enum Coding {
        /** One byte a sample, sRGB transfer function (IEC 61966-2-1). */
        SRGB8(1),
        /** Two bytes a sample, little-endian, linear light, 65535 = white. */
        LINEAR16(2);

        private final int bytes;

        Coding(int bytes) {
            this.bytes = bytes;
        }

        /** Bytes of one sample. */
        public int bytes() {
            return bytes;
        }
    }

    private static final float[] SRGB_TO_LINEAR = srgbToLinear();
    private static final float LINEAR16_STEP = 1f / 65535;

    private final int width;
    private final int height;
    private final double[] timesSeconds;
    private final List<byte[]> frames;
    private final Coding coding;

    private Clip(int width, int height, double[] timesSeconds, List<byte[]> frames, Coding coding) {
        this.width = width;
        this.height = height;
        this.timesSeconds = timesSeconds;
        this.frames = frames;
        this.coding = coding;
    }

    /**
     * A clip of at least one frame.
     *
     * @param timesSeconds the instant of each frame, in seconds from any origin, strictly increasing
     * @throws IllegalArgumentException when a frame has the wrong length or the times do not increase
     */
    public static Clip of(int width, int height, double[] timesSeconds, List<byte[]> frames, Coding coding) {
        if (width < 1 || height < 1) {
            throw new IllegalArgumentException("a frame cannot be " + width + " × " + height + " pixels");
        }
        if (frames.isEmpty() || frames.size() != timesSeconds.length) {
            throw new IllegalArgumentException(
                    "need one time a frame, had " + frames.size() + " frames and " + timesSeconds.length + " times");
        }
        long expected = 3L * width * height * coding.bytes();
        for (int i = 0; i < frames.size(); i++) {
            if (frames.get(i).length != expected) {
                throw new IllegalArgumentException(
                        "frame " + i + " must hold " + expected + " bytes, held " + frames.get(i).length);
            }
            if (i > 0 && !(timesSeconds[i] > timesSeconds[i - 1])) {
                throw new IllegalArgumentException("times must increase: frame " + i + " is at " + timesSeconds[i]
                        + " s, the one before at " + timesSeconds[i - 1] + " s");
            }
        }
        return new Clip(width, height, timesSeconds.clone(), List.copyOf(frames), coding);
    }

    /** Width in pixels. */
    public int width() {
        return width;
    }

    /** Height in pixels. */
    public int height() {
        return height;
    }

    /** Number of frames. */
    public int frames() {
        return frames.size();
    }

    /** The instant of frame {@code i} in seconds from the origin the clip was given. */
    public double timeSeconds(int i) {
        return timesSeconds[i];
    }

    /** Mean time from one frame to the next in seconds; 0 for a single frame. */
    public double spacingSeconds() {
        int n = timesSeconds.length;
        return n < 2 ? 0 : (timesSeconds[n - 1] - timesSeconds[0]) / (n - 1);
    }

    /** Whether frames this many seconds apart are spaced frames rather than a clip. */
    public static boolean spaced(double gapSeconds) {
        return gapSeconds > SPACED_SECONDS;
    }

    /** Time that the clip stands for in seconds: frames × spacing. */
    public double lengthSeconds() {
        return frames() * spacingSeconds();
    }

    /** The frames for which {@code keep} is true. */
    public Clip only(boolean[] keep) {
        int count = 0;
        for (boolean k : keep) {
            count += k ? 1 : 0;
        }
        if (count == frames()) {
            return this;
        }
        double[] times = new double[count];
        List<byte[]> kept = new ArrayList<>();
        for (int i = 0; i < keep.length; i++) {
            if (keep[i]) {
                times[kept.size()] = timesSeconds[i];
                kept.add(frames.get(i));
            }
        }
        return of(width, height, times, kept, coding);
    }

    /** How the samples are written. */
    public Coding coding() {
        return coding;
    }

    /** The bytes of frame {@code i}: not a copy. */
    public byte[] bytes(int i) {
        return frames.get(i);
    }

    /** Writes the linear luminance of frame {@code i} into {@code destination}, {@code width · height} samples. */
    public void luminance(int i, float[] destination) {
        byte[] frame = frames.get(i);
        int n = width * height;
        if (coding == Coding.SRGB8) {
            for (int p = 0, q = 0; p < n; p++, q += 3) {
                destination[p] = (float) (0.2126 * SRGB_TO_LINEAR[frame[q] & 0xFF]
                        + 0.7152 * SRGB_TO_LINEAR[frame[q + 1] & 0xFF]
                        + 0.0722 * SRGB_TO_LINEAR[frame[q + 2] & 0xFF]);
            }
        } else {
            for (int p = 0, q = 0; p < n; p++, q += 6) {
                destination[p] = (float) ((0.2126 * linear16(frame, q)
                                + 0.7152 * linear16(frame, q + 2)
                                + 0.0722 * linear16(frame, q + 4))
                        * LINEAR16_STEP);
            }
        }
    }

    /** Writes channel 0 (red), 1 (green) or 2 (blue) of frame {@code i}, linear, into {@code destination}. */
    public void channel(int i, int channel, float[] destination) {
        byte[] frame = frames.get(i);
        int n = width * height;
        if (coding == Coding.SRGB8) {
            for (int p = 0, q = channel; p < n; p++, q += 3) {
                destination[p] = SRGB_TO_LINEAR[frame[q] & 0xFF];
            }
        } else {
            for (int p = 0, q = 2 * channel; p < n; p++, q += 6) {
                destination[p] = linear16(frame, q) * LINEAR16_STEP;
            }
        }
    }

    private static int linear16(byte[] frame, int at) {
        return (frame[at] & 0xFF) | (frame[at + 1] & 0xFF) << 8;
    }

    private static float[] srgbToLinear() {
        float[] table = new float[256];
        for (int i = 0; i < 256; i++) {
            double v = i / 255.0;
            table[i] = (float) (v <= 0.04045 ? v / 12.92 : Powers.pow((v + 0.055) / 1.055, 2.4));
        }
        return table;
    }
}
