package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.UsageException;
import java.util.List;
import picocli.CommandLine.Option;

/** What is wished of the hour. */
final class HourOptions {

    @Option(
            names = "--hour",
            paramLabel = "WISH=VALUE",
            description = {
                "A wish of the hour, as often as needed: sunAltitude=-6,5  tideMetres=1,2.5  tideDirection=falling",
                "sunInFrame=no  twilight=civil,nautical  hours=05:00,22:00  days=sat,sun  ev100=4,9"
            })
    private List<String> hour = List.of();

    /** Puts what was typed into a document of wishes ({@code wishes/1}). */
    void put(JsonObject wishes) {
        for (String typed : hour) {
            int is = typed.indexOf('=');
            if (is < 1 || is == typed.length() - 1) {
                throw new UsageException("--hour: \"" + typed + "\" is no wish; expected one such as sunAltitude=-6,5");
            }
            wishes.put(
                    typed.substring(0, is).trim(), value(typed.substring(is + 1).trim()));
        }
    }

    /** Yes or no, numbers or words: what the engine expects of a wish is for the engine to say. */
    private static Object value(String typed) {
        if (List.of("yes", "true").contains(typed)) {
            return true;
        }
        if (List.of("no", "false").contains(typed)) {
            return false;
        }
        JsonArray list = new JsonArray();
        for (String part : typed.split(",", -1)) {
            try {
                list.add(Double.parseDouble(part.trim()));
            } catch (NumberFormatException e) {
                list.add(part.trim());
            }
        }
        return List.of("rising", "falling", "any").contains(typed) ? typed : list;
    }
}
