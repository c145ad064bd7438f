package ebblight.app.after;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.print.PrinterProfile;
import ebblight.imaging.print.SoftProof;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A proof on a printer's profile, as {@code write/1} tells it. */
public final class ProofDocument {

    private ProofDocument() {}

    /** The profile of a printer, or of a screen, that a file holds. */
    public static PrinterProfile printer(Path file) throws IOException {
        UnreadableInputException.unlessReadable(file);
        return PrinterProfile.read(Files.readAllBytes(file))
                .orElseThrow(() -> new UnreadableInputException(file, "is no ICC profile of a printer or a screen"));
    }

    /** What a proof says. */
    public static JsonObject of(PrinterProfile printer, PrinterProfile.Intent intent, SoftProof proof) {
        JsonObject told = new JsonObject();
        told.put("profile", printer.name());
        told.put("intent", intent.word());
        told.put("movedFraction", proof.movedFraction());
        told.put("joinedSteps", new JsonArray(proof.joinedSteps()));
        told.put("darkestLightness", proof.darkest());
        return told;
    }
}
