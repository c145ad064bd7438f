package ebblight.app.ask;

import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameSource;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.OutputFile;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.PictureNotes;
import ebblight.imaging.Skipped;
import ebblight.imaging.TiffWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** Writes a picture in the format that the name of its file asks for. */
public final class PictureOutput {

    private static final List<String> JPEG = List.of(".jpg", ".jpeg");
    private static final List<String> PNG = List.of(".png");
    private static final List<String> TIFF = List.of(".tif", ".tiff");

    private PictureOutput() {}

    /** Fails before any work is done when nothing could be written there. */
    public static void check(Path output) throws IOException {
        if (!ends(output, JPEG) && !ends(output, TIFF)) {
            throw new UsageException("-o: " + output + " must end in .tif, .tiff, .jpg or .jpeg");
        }
        checkFolder(output);
    }

    /** The same for a PNG that {@code option} names. */
    public static void checkPng(String option, Path output) throws IOException {
        if (!ends(output, PNG)) {
            throw new UsageException(option + ": " + output + " must end in .png");
        }
        checkFolder(output);
    }

    /** The same for one picture. */
    public static void keepOriginal(String option, Path output, Path input) throws IOException {
        if (Files.exists(output) && Files.exists(input) && Files.isSameFile(output, input)) {
            throw new UsageException(
                    option + ": " + output + " is the input, and originals stay as they are; choose another name");
        }
    }

    /** The same for a PDF that {@code option} names. */
    public static void checkPdf(String option, Path output) throws IOException {
        if (!ends(output, List.of(".pdf"))) {
            throw new UsageException(option + ": " + output + " must end in .pdf");
        }
        checkFolder(output);
    }

    /** Originals are never written: fails when {@code output} is one of the frames. */
    public static void keepOriginals(String option, Path output, FrameSource source) throws IOException {
        Stream<Path> skipped = source.skipped().stream().map(Skipped::file);
        for (Path frame : Stream.concat(source.files().stream(), skipped).toList()) {
            if (Files.exists(output) && Files.exists(frame) && Files.isSameFile(output, frame)) {
                throw new UsageException(option + ": " + output
                        + " is one of the frames, and originals stay as they are; choose another name");
            }
        }
    }

    private static void checkFolder(Path output) throws IOException {
        Path folder = output.toAbsolutePath().getParent();
        if (folder == null || !Files.isDirectory(folder)) {
            throw new IOException(output + ": the folder " + folder + " does not exist; make it or choose another");
        }
        if (Files.isDirectory(output)) {
            throw new IOException(output + ": is a folder; name a file in it");
        }
        if (!Files.isWritable(folder)) {
            throw new IOException(output + ": the folder " + folder + " cannot be written; choose another");
        }
    }

    public static void write(Path output, CodedPicture picture, PictureFacts facts, Work work) throws IOException {
        write(output, picture, facts, PictureNotes.NONE, work);
    }

    /** The same with what is to be said of the picture. */
    public static void write(Path output, CodedPicture picture, PictureFacts facts, PictureNotes notes, Work work)
            throws IOException {
        if (ends(output, JPEG)) {
            OutputFile.write(output, JpegWriter.encode(picture, facts, notes, JpegWriter.STANDARD_QUALITY));
        } else {
            TiffWriter.write(output, picture, facts, notes, work);
        }
    }

    private static boolean ends(Path output, List<String> endings) {
        String name = output.toString().toLowerCase(Locale.ROOT);
        return endings.stream().anyMatch(name::endsWith);
    }
}
