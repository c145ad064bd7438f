package ebblight.app.ask;

import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.TiffWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Writes a picture in the format that the name of its file asks for. */
public final class PictureOutput {

    private static final List<String> JPEG = List.of(".jpg", ".jpeg");
    private static final List<String> TIFF = List.of(".tif", ".tiff");

    private PictureOutput() {}

    /** Fails before any work is done when nothing could be written there. */
    public static void check(Path output) throws IOException {
        if (!ends(output, JPEG) && !ends(output, TIFF)) {
            throw new UsageException("-o: " + output + " must end in .tif, .tiff, .jpg or .jpeg");
        }
        Path folder = output.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new IOException(output + ": the folder " + folder + " does not exist; make it or choose another");
        }
        if (!Files.isWritable(folder)) {
            throw new IOException(output + ": the folder " + folder + " cannot be written; choose another");
        }
    }

    public static void write(Path output, CodedPicture picture, PictureFacts facts, Work work) throws IOException {
        if (ends(output, JPEG)) {
            JpegWriter.write(output, picture, facts);
        } else {
            TiffWriter.write(output, picture, facts, work);
        }
    }

    private static boolean ends(Path output, List<String> endings) {
        String name = output.toString().toLowerCase(Locale.ROOT);
        return endings.stream().anyMatch(name::endsWith);
    }
}
