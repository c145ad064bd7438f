package ebblight.app.card;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.card.Slate;
import ebblight.imaging.card.SlateCode;

/** A slate with its code: what a page needs to draw it. */
public final class SlateDocument {

    private SlateDocument() {}

    /** The document: text, modules row by row with 1 for dark, and the path of an SVG in modules. */
    public static JsonObject of(Slate slate, SlateCode code) {
        JsonArray rows = new JsonArray();
        for (int y = 0; y < code.size(); y++) {
            StringBuilder row = new StringBuilder();
            for (int x = 0; x < code.size(); x++) {
                row.append(code.dark(x, y) ? '1' : '0');
            }
            rows.add(row.toString());
        }
        JsonObject document = new JsonObject();
        document.put("schema", "slate/1");
        document.put("text", SlateText.of(slate));
        document.put("size", code.size());
        document.put("quiet", SlateCode.QUIET);
        document.put("rows", rows);
        document.put("path", code.svgPath());
        return document;
    }
}
