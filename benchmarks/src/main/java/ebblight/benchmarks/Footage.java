package ebblight.benchmarks;

import static org.bytedeco.opencv.global.opencv_imgcodecs.IMWRITE_JPEG_QUALITY;
import static org.bytedeco.opencv.global.opencv_imgcodecs.IMWRITE_JPEG_SAMPLING_FACTOR;
import static org.bytedeco.opencv.global.opencv_imgcodecs.IMWRITE_JPEG_SAMPLING_FACTOR_420;
import static org.bytedeco.opencv.global.opencv_imgcodecs.imwrite;

import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.demo.Sensor;
import ebblight.demo.View;
import ebblight.imaging.ClipWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;

/**
 * What the benchmarks read, filmed on the demo's coast with a sensor's noise: a clip of 10 s as a phone writes it, and
 * JPEG frames as large as cameras make them. Kept in a folder; what is there is not made again.
 */
public final class Footage {

    static final double CLIP_SECONDS = 10;
    private static final int CLIP_WIDTH = 1920;
    private static final int CLIP_HEIGHT = 1080;
    private static final double CLIP_RATE = 30;
    private static final int AT_ONCE = 4;
    private static final int SCENE_WIDTH = 4096;
    private static final int JPEG_QUALITY = 93;

    /** Frames that differ; longer bursts repeat them in turn. */
    static final int DIFFERENT_FRAMES = 8;

    /** Sizes of frames; beyond the width of the scene the picture goes on mirrored, so that its detail stays fine. */
    enum Size {
        MP6(3000, 2000),
        MP24(6000, 4000),
        MP45(8192, 5460);

        final int width;
        final int height;

        Size(int width, int height) {
            this.width = width;
            this.height = height;
        }
    }

    private final Path folder;
    private final Sensor sensor = new Sensor(100);

    private Footage(Path folder) {
        this.folder = folder;
    }

    /** The footage that the running benchmarks were told of by {@code -Debblight.footage}. */
    static Footage given() {
        String folder = System.getProperty("ebblight.footage", "");
        Footage footage = new Footage(Path.of(folder));
        if (folder.isEmpty() || !Files.exists(footage.clip())) {
            throw new IllegalStateException("-Debblight.footage must name a folder that benchmarks/run filled");
        }
        return footage;
    }

    Path clip() {
        return folder.resolve("clip.mp4");
    }

    List<Path> frames(Size size) {
        return IntStream.range(0, DIFFERENT_FRAMES)
                .mapToObj(i -> folder.resolve(size.name().toLowerCase(Locale.ROOT) + "-" + i + ".jpg"))
                .toList();
    }

    /** Fills the folder named by the first argument. */
    public static void main(String[] arguments) throws IOException {
        Footage footage = new Footage(Path.of(arguments[0]));
        Files.createDirectories(footage.folder);
        Work work = new Cores();
        Coast coast = Coast.evening();
        if (!Files.exists(footage.clip())) {
            footage.film(coast.view(CLIP_WIDTH, work), work);
        }
        if (!footage.frames(Size.MP45).stream().allMatch(Files::exists)) {
            footage.burst(coast.view(SCENE_WIDTH, work), work);
        }
    }

    private void film(View view, Work work) throws IOException {
        int frames = (int) Math.round(CLIP_SECONDS * CLIP_RATE);
        int skipped = 3 * CLIP_WIDTH * ((view.height() - CLIP_HEIGHT) / 2);
        try (ClipWriter writer = ClipWriter.begin(clip(), CLIP_WIDTH, CLIP_HEIGHT, CLIP_RATE)) {
            for (int from = 0; from < frames; from += AT_ONCE) {
                int first = from;
                byte[][] shots = new byte[AT_ONCE][3 * CLIP_WIDTH * CLIP_HEIGHT];
                work.forEach(AT_ONCE, k -> {
                    byte[] whole = sensor.srgb8(view.frame((first + k) / CLIP_RATE), first + k);
                    System.arraycopy(whole, skipped, shots[k], 0, shots[k].length);
                });
                for (byte[] shot : shots) {
                    writer.add(shot);
                }
            }
            writer.commit();
        }
    }

    private void burst(View view, Work work) {
        work.forEach(DIFFERENT_FRAMES, i -> {
            byte[] scene = sensor.srgb8(view.frame(0.5 * i), i);
            for (Size size : Size.values()) {
                write(frames(size).get(i), mirrored(scene, view.width(), view.height(), size), size);
            }
        });
    }

    /** Blue first, as OpenCV wants it. */
    private static byte[] mirrored(byte[] scene, int width, int height, Size size) {
        byte[] out = new byte[3 * size.width * size.height];
        for (int y = 0, q = 0; y < size.height; y++) {
            int row = (y < height ? y : 2 * height - 1 - y) * width;
            for (int x = 0; x < size.width; x++, q += 3) {
                int p = 3 * (row + (x < width ? x : 2 * width - 1 - x));
                out[q] = scene[p + 2];
                out[q + 1] = scene[p + 1];
                out[q + 2] = scene[p];
            }
        }
        return out;
    }

    private static void write(Path file, byte[] blueFirst, Size size) {
        try (BytePointer data = new BytePointer(blueFirst);
                Mat mat = new Mat(size.height, size.width, opencv_core.CV_8UC3, data);
                IntPointer options = new IntPointer(
                        IMWRITE_JPEG_QUALITY,
                        JPEG_QUALITY,
                        IMWRITE_JPEG_SAMPLING_FACTOR,
                        IMWRITE_JPEG_SAMPLING_FACTOR_420)) {
            if (!imwrite(file.toString(), mat, options)) {
                throw new IllegalStateException(file + " could not be written");
            }
        }
    }
}
