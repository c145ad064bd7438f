package ebblight.imaging;

import static org.bytedeco.opencv.global.opencv_imgcodecs.imencode;

import java.io.IOException;
import java.nio.file.Path;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.opencv_core.Mat;

/** Writes maps of one byte a pixel as PNG, and pictures of 8-bit colour. */
public final class GreyPng {

    private GreyPng() {}

    /** Writes {@code values}, {@code width · height} bytes, to {@code target}. */
    public static void write(Path target, byte[] values, int width, int height) throws IOException {
        encode(target, values, width, height, opencv_core.CV_8UC1);
    }

    /** Writes {@code rgb}, {@code 3 · width · height} bytes of red, green, blue, to {@code target}. */
    public static void writeColour(Path target, byte[] rgb, int width, int height) throws IOException {
        byte[] blueFirst = new byte[rgb.length];
        for (int p = 0; p < rgb.length; p += 3) {
            blueFirst[p] = rgb[p + 2];
            blueFirst[p + 1] = rgb[p + 1];
            blueFirst[p + 2] = rgb[p];
        }
        encode(target, blueFirst, width, height, opencv_core.CV_8UC3);
    }

    private static void encode(Path target, byte[] values, int width, int height, int type) throws IOException {
        try (BytePointer data = new BytePointer(values);
                Mat mat = new Mat(height, width, type, data);
                BytePointer out = new BytePointer()) {
            if (!imencode(".png", mat, out)) {
                throw new IOException(target + ": could not be coded as PNG");
            }
            byte[] coded = new byte[(int) out.limit()];
            out.get(coded);
            OutputFile.write(target, coded);
        }
    }
}
