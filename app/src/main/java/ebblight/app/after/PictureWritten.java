package ebblight.app.after;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.UsageException;
import ebblight.app.ask.Words;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.IccProfile;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.LightPicture;
import ebblight.imaging.OutputFile;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.PictureNotes;
import ebblight.imaging.TiffWriter;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.finish.Colours;
import ebblight.imaging.print.Converted;
import ebblight.imaging.print.Likeness;
import ebblight.imaging.print.PrinterProfile;
import ebblight.imaging.print.Resized;
import ebblight.imaging.print.SoftProof;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Writes a finished picture for paper or for the web. */
public final class PictureWritten {

    /** SSIM below which a JPEG shows what it cost (judged by eye on skies). */
    private static final double POOR = 0.95;

    private static final int SMALLEST = 11;

    private static final int MOST_PIXELS = 500_000_000;
    private static final int PROOF_SIDE = 2000;

    private final LightPicture picture;
    private final PictureFacts facts;
    private final Work work;
    private final JsonObject answer = new JsonObject();
    private final JsonArray warnings = new JsonArray();

    /** Reads the picture that is to be written. */
    public PictureWritten(Path input, Work work) throws IOException {
        work.progress(0, "reading " + input.getFileName());
        this.picture = LightPicture.read(input, work);
        this.work = work;
        this.facts = PictureFacts.of(
                picture.facts(),
                picture.facts().exposureSeconds(),
                1,
                List.of(input),
                "Written from " + input.getFileName());
        warnings.addAll(picture.warnings());
        answer.put("schema", "write/1");
    }

    /** What was written. */
    public JsonObject answer() {
        answer.put("warnings", warnings);
        return answer;
    }

    /**
     * TIFF for a print, 16 bits.
     *
     * @param size empty: as many pixels as the picture has
     * @param borderCentimetres of white on all sides
     * @param profile empty: that of the picture
     */
    public CodedPicture print(
            Path target, Optional<PrintSize> size, double borderCentimetres, Optional<Path> profile, PictureNotes notes)
            throws IOException {
        RgbPicture light = picture.light();
        double ppi = notes.pixelsPerInch();
        PrintSize on = size.map(
                        s -> s.of(picture.light().width(), picture.light().height()))
                .orElseGet(() ->
                        PrintSize.of(picture.light().width(), picture.light().height(), ppi));
        if (size.isPresent()) {
            light = sized(
                    light, PrintSize.pixels(on.widthCentimetres(), ppi), PrintSize.pixels(on.heightCentimetres(), ppi));
        }
        if (light.width() * 1.0 > 1.5 * picture.light().width()) {
            warnings.add("the picture was enlarged from " + picture.light().width() + " to " + light.width()
                    + " pixels across; fewer pixels an inch show the same detail");
        }
        IccProfile into = profile.isPresent() ? rgbProfile(profile.get()) : picture.profile();
        CodedPicture coded = coded(light, into);
        if (borderCentimetres > 0) {
            coded = bordered(
                    coded,
                    PrintSize.pixels(on.widthCentimetres() + 2 * borderCentimetres, ppi),
                    PrintSize.pixels(on.heightCentimetres() + 2 * borderCentimetres, ppi));
        }
        TiffWriter.write(target, coded, facts, notes, work);
        answer.put("kind", "print");
        told(target, coded);
        answer.put("widthCentimetres", coded.width() / ppi * 2.54);
        answer.put("heightCentimetres", coded.height() / ppi * 2.54);
        answer.put("pixelsPerInch", ppi);
        return coded;
    }

    /**
     * JPEG in sRGB for the web.
     *
     * @param longEdge pixels at most; 0: as many as the picture has
     * @param mostBytes 0: at the standard quality
     */
    public CodedPicture web(Path target, int longEdge, long mostBytes, PictureNotes notes) throws IOException {
        RgbPicture light = picture.light();
        int side = Math.max(light.width(), light.height());
        if (longEdge > 0 && longEdge < side) {
            double scale = (double) longEdge / side;
            light = sized(light, Math.max(1, (int) Math.round(light.width() * scale)), Math.max(1, (int)
                    Math.round(light.height() * scale)));
        }
        CodedPicture coded = coded(light, IccProfile.srgb());
        int quality = JpegWriter.STANDARD_QUALITY;
        byte[] bytes;
        if (mostBytes > 0) {
            work.progress(0.7, "finding the quality that fits");
            JpegWriter.Sized sized = JpegWriter.atMost(coded, facts, notes, mostBytes)
                    .orElseThrow(() -> new UsageException("--at-most: " + mostBytes + " bytes cannot hold a picture of "
                            + coded.width() + " × " + coded.height() + " pixels at any quality; give a shorter"
                            + " --long-edge or more bytes"));
            quality = sized.quality();
            bytes = sized.bytes();
        } else {
            bytes = JpegWriter.encode(coded, facts, notes, quality);
        }
        OutputFile.write(target, bytes);
        if (coded.width() > SMALLEST && coded.height() > SMALLEST) {
            double likeness = likeness(target, light);
            answer.put("likeness", likeness);
            if (likeness < POOR) {
                warnings.add("so few bytes show: likeness to the picture is " + Words.number(likeness, 3)
                        + " of 1; a shorter long edge looks better in as many bytes");
            }
        }
        answer.put("kind", "web");
        told(target, coded);
        answer.put("quality", quality);
        return coded;
    }

    /** SSIM of the lightness of a written JPEG to the linear light it was made from. */
    private double likeness(Path target, RgbPicture light) throws IOException {
        RgbPicture back = LightPicture.read(target, work).light();
        return Likeness.ssim(lightness(light), lightness(back), light.width(), light.height());
    }

    private static float[] lightness(RgbPicture light) {
        Colours space = Colours.of(IccProfile.srgb());
        float[] plane = new float[light.red().length];
        for (int p = 0; p < plane.length; p++) {
            double y = space.luminance(light.red()[p], light.green()[p], light.blue()[p]);
            plane[p] = (float) (2.55 * Colours.lightness(y));
        }
        return plane;
    }

    /** Proofs what was written on a printer's profile, and writes what it will look like where asked. */
    public void proof(CodedPicture written, Path profile, PrinterProfile.Intent intent, Optional<Path> look)
            throws IOException {
        work.progress(0.8, "proofing");
        PrinterProfile printer = ProofDocument.printer(profile);
        SoftProof proof = SoftProof.of(small(written), printer, intent, work);
        JsonObject told = ProofDocument.of(printer, intent, proof);
        told.put("picture", look.map(Path::toString).orElse(null));
        if (look.isPresent()) {
            JpegWriter.write(look.get(), proof.picture(work), facts);
        }
        answer.put("proof", told);
    }

    /** A copy small enough to look at. */
    private CodedPicture small(CodedPicture written) {
        double scale = (double) PROOF_SIDE / Math.max(written.width(), written.height());
        if (scale >= 1) {
            return written;
        }
        float[] linear = written.profile().curve().table(16);
        RgbPicture light = RgbPicture.black(written.width(), written.height());
        for (int i = 0; i < written.codes().length; i++) {
            light.plane(i % 3)[i / 3] = linear[written.code(i)];
        }
        RgbPicture less = Resized.to(
                light,
                Math.max(1, (int) Math.round(scale * written.width())),
                Math.max(1, (int) Math.round(scale * written.height())),
                work);
        return CodedPicture.of(less, written.profile(), work);
    }

    private RgbPicture sized(RgbPicture light, int width, int height) {
        if ((long) width * height > MOST_PIXELS) {
            throw new UsageException("--size: " + width + " × " + height
                    + " pixels are more than can be written; choose fewer centimetres or a lower --ppi");
        }
        work.progress(0.3, "making " + width + " × " + height + " pixels");
        RgbPicture sized = Resized.to(light, width, height, work);
        work.check();
        return sized;
    }

    private CodedPicture coded(RgbPicture light, IccProfile into) {
        work.progress(0.6, "writing colours");
        if (!Arrays.equals(into.bytes(), picture.profile().bytes())) {
            answer.put("outsideProfileFraction", Converted.to(light, picture.profile(), into, work));
        }
        return CodedPicture.of(light, into, work);
    }

    private static CodedPicture bordered(CodedPicture coded, int width, int height) {
        short[] codes = new short[3 * width * height];
        Arrays.fill(codes, (short) 0xFFFF);
        int left = (width - coded.width()) / 2;
        int top = (height - coded.height()) / 2;
        for (int y = 0; y < coded.height(); y++) {
            System.arraycopy(
                    coded.codes(), 3 * y * coded.width(), codes, 3 * ((y + top) * width + left), 3 * coded.width());
        }
        return new CodedPicture(width, height, codes, coded.profile());
    }

    private static byte[] bytes(Path file) throws IOException {
        UnreadableInputException.unlessReadable(file);
        return Files.readAllBytes(file);
    }

    private static IccProfile rgbProfile(Path file) throws IOException {
        return IccProfile.read(bytes(file))
                .orElseThrow(() -> new UnreadableInputException(
                        file,
                        "is no RGB profile of the matrix kind, which a print file is written in; a printer's own"
                                + " profile goes to --proof"));
    }

    private void told(Path target, CodedPicture coded) throws IOException {
        answer.put("file", target.toString());
        answer.put("width", coded.width());
        answer.put("height", coded.height());
        answer.put("bytes", Files.size(target));
        answer.put(
                "profile",
                PrinterProfile.read(coded.profile().bytes())
                        .map(PrinterProfile::name)
                        .orElse(""));
    }
}
