package ebblight.app;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.Words;
import java.util.List;

/** What {@code write} tells a person. */
final class WriteReport {

    private WriteReport() {}

    static void print(JsonObject answer, Printer printer) {
        if (!answer.has("width")) {
            page(answer, printer);
            return;
        }
        printer.line(
                "%s  %d × %d, %.0f kB%s",
                answer.getString("file"),
                answer.getInt("width"),
                answer.getInt("height"),
                answer.getDouble("bytes") / 1000,
                answer.has("quality") ? ", quality " + answer.getInt("quality") : "");
        if (answer.has("widthCentimetres")) {
            printer.line(
                    "paper    %s × %s cm at %s pixels an inch",
                    Words.number(answer.getDouble("widthCentimetres"), 1),
                    Words.number(answer.getDouble("heightCentimetres"), 1),
                    Words.number(answer.getDouble("pixelsPerInch"), 0));
        }
        if (answer.has("likeness")) {
            printer.line(
                    "likeness %s of 1 to the picture it was made from", Words.number(answer.getDouble("likeness"), 3));
        }
        printer.line("profile  " + answer.getString("profile"));
        printer.line("place    " + answer.getString("place"));
        if (answer.has("proof")) {
            JsonObject proof = answer.getObject("proof");
            printer.line(
                    "proof    %s, %s: %s of the picture moves to the eye, black reaches L* %.0f",
                    proof.getString("profile"),
                    proof.getString("intent"),
                    Words.percent(proof.getDouble("movedFraction")),
                    proof.getDouble("darkestLightness"));
            List<String> joined =
                    proof.getArray("joinedSteps").stream().map(s -> "−" + s).toList();
            if (!joined.isEmpty()) {
                printer.line("proof    steps of grey that join the next lighter one, in stops below white: "
                        + String.join(", ", joined));
            }
        }
        answer.getArray("warnings").forEach(w -> printer.line("note     " + w));
    }

    private static void page(JsonObject answer, Printer printer) {
        printer.line(
                "%s  %s, %.0f kB",
                answer.getString("file"), answer.getString("kind"), answer.getDouble("bytes") / 1000);
        if (answer.has("entry")) {
            JsonObject entry = answer.getObject("entry");
            printer.line(
                    "print    %d of %d, %d given so far; checksum %s",
                    entry.getInt("number"), entry.getInt("of"), entry.getInt("given"), entry.getString("sha256"));
        }
        if (answer.has("pictures")) {
            printer.line("pictures %d", answer.getInt("pictures"));
        }
        for (JsonObject one : answer.has("skipped") ? Asked.rows(answer.getArray("skipped")) : List.<JsonObject>of()) {
            printer.line("skipped  " + one.getString("file") + ": " + one.getString("reason"));
        }
    }
}
