package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.after.Pages;
import ebblight.app.after.PictureWritten;
import ebblight.app.after.PrintSize;
import ebblight.app.ask.PictureOutput;
import ebblight.app.ask.UsageException;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.PictureNotes;
import ebblight.imaging.print.PrinterProfile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code write}: files for paper and for the web. */
@Command(
        name = "write",
        mixinStandardHelpOptions = true,
        description = {
            "Writes a picture out: OUT.tif for a print at centimetres and pixels an inch, OUT.jpg for the web, OUT.pdf"
                    + " for the certificate of an edition, a contact sheet, a test strip, or plan against result.",
            "The input stays as it is. Where it was taken is left out unless --place asks for it."
        })
final class WriteCommand extends PictureCommand {

    private static final Pattern BYTES = Pattern.compile("(\\d+(?:\\.\\d+)?)\\s*(k|m)?b?", Pattern.CASE_INSENSITIVE);

    @Parameters(
            paramLabel = "INPUT",
            arity = "1..*",
            description = "A finished picture: TIFF, JPEG or PNG; for a contact sheet also folders.")
    private List<Path> inputs = List.of();

    @Option(names = "--size", paramLabel = "WxH", description = "Print: size in centimetres: 60x40, 60x or x40.")
    private @Nullable String size;

    @Option(names = "--ppi", paramLabel = "N", description = "Print: pixels an inch (default: ${DEFAULT-VALUE}).")
    private double pixelsPerInch = 300;

    @Option(names = "--border", paramLabel = "CM", description = "Print: white on all sides, in centimetres.")
    private double border;

    @Option(names = "--profile", paramLabel = "P.icc", description = "Print: RGB profile to write in.")
    private @Nullable Path profile;

    @Option(names = "--long-edge", paramLabel = "N", description = "Web: pixels of the longer side at most.")
    private int longEdge;

    @Option(names = "--at-most", paramLabel = "BYTES", description = "Web: size of the file, such as 800kB.")
    private @Nullable String atMost;

    @Option(names = "--proof", paramLabel = "PRINTER.icc", description = "Proof the result on a printer's profile.")
    private @Nullable Path proof;

    @Option(
            names = "--intent",
            paramLabel = "HOW",
            description = "Proof: perceptual, relative, saturation or absolute (default: ${DEFAULT-VALUE}).")
    private String intent = "relative";

    @Option(names = "--proof-picture", paramLabel = "P.jpg", description = "Proof: also write what the print shows.")
    private @Nullable Path proofPicture;

    @Mixin
    private final PageOptions pages = new PageOptions();

    @Mixin
    private final NoteOptions notes = new NoteOptions();

    @Override
    Set<String> furtherOutputs() {
        return Set.of("--proof-picture", "--edition");
    }

    /** The register of an edition is the record of its certificates: made again, they would take another number. */
    @Override
    boolean recorded() {
        return !pages.certificate();
    }

    @Override
    void check(Path output) throws IOException {
        if (isPage(output)) {
            PictureOutput.checkPdf("-o", output);
        } else {
            PictureOutput.check(output);
        }
    }

    private static boolean isPage(Path output) {
        return output.toString().toLowerCase(Locale.ROOT).endsWith(".pdf");
    }

    @Override
    JsonObject make(Path target, Work work) throws IOException {
        return isPage(target) ? page(target, work) : picture(target, work);
    }

    @Override
    void print(JsonObject answer, Printer to) {
        WriteReport.print(answer, to);
    }

    private JsonObject page(Path target, Work work) throws IOException {
        String on = size == null ? "" : PrintSize.words(size);
        return pages.write(inputs, on, notes, new Pages(target, work));
    }

    private JsonObject picture(Path target, Work work) throws IOException {
        if (pages.any()) {
            throw new UsageException("-o: --edition, --contact, --strip and --lesson write a PDF; name OUT.pdf");
        }
        if (inputs.size() > 1) {
            throw new UsageException("INPUT: only a contact sheet takes several pictures; name one");
        }
        Path input = inputs.get(0);
        boolean web = target.toString().toLowerCase(Locale.ROOT).matches(".*\\.jpe?g");
        checkOptions(web);
        PrinterProfile.Intent how = PrinterProfile.Intent.of(intent)
                .orElseThrow(() -> new UsageException("--intent: \"" + intent
                        + "\" is not known; expected perceptual, relative, saturation or absolute"));
        if (proofPicture != null) {
            PictureOutput.check(proofPicture);
            PictureOutput.keepOriginal("--proof-picture", proofPicture, input);
        }
        Optional<PrintSize> on = Optional.ofNullable(size).map(PrintSize::parse);
        long most = atMost == null ? 0 : bytes(atMost);
        PictureNotes said = notes.notes(input, pixelsPerInch);
        PictureWritten written = new PictureWritten(input, work);
        CodedPicture coded = web
                ? written.web(target, longEdge, most, said)
                : written.print(target, on, border, Optional.ofNullable(profile), said);
        if (proof != null) {
            written.proof(coded, proof, how, Optional.ofNullable(proofPicture));
        }
        JsonObject answer = written.answer();
        answer.put("place", said.place().isPresent() ? "written" : "left out");
        return answer;
    }

    private void checkOptions(boolean web) {
        if (web && (size != null || border != 0 || profile != null)) {
            throw new UsageException("--size, --border and --profile are for prints; name OUT.tif, or leave them out");
        }
        if (!web && (longEdge != 0 || atMost != null)) {
            throw new UsageException("--long-edge and --at-most are for the web; name OUT.jpg, or leave them out");
        }
        if (proof == null && proofPicture != null) {
            throw new UsageException("--proof-picture: give the printer's profile by --proof too");
        }
        if (!(border >= 0 && border <= 50)) {
            throw new UsageException("--border: must lie between 0 and 50 cm, was " + border);
        }
        if (!(pixelsPerInch >= 10 && pixelsPerInch <= 2400)) {
            throw new UsageException("--ppi: must lie between 10 and 2400 pixels an inch, was " + pixelsPerInch);
        }
        if (longEdge < 0 || longEdge > 65_500) {
            throw new UsageException("--long-edge: must lie between 1 and 65500 pixels, was " + longEdge);
        }
    }

    private static long bytes(String typed) {
        Matcher m = BYTES.matcher(typed.strip());
        if (m.matches()) {
            String unit = m.group(2) == null ? "" : m.group(2).toLowerCase(Locale.ROOT);
            double value = Double.parseDouble(m.group(1)) * (unit.equals("k") ? 1e3 : unit.equals("m") ? 1e6 : 1);
            if (value >= 1 && value <= 1e9) {
                return (long) value;
            }
        }
        throw new UsageException(
                "--at-most: \"" + typed + "\" is no size of a file; expected one such as 800kB or 1.5MB");
    }
}
