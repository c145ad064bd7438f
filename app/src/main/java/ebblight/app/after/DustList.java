package ebblight.app.after;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.SurveyRequest;
import ebblight.engine.Fields;
import ebblight.engine.RequestException;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.repair.Dust;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The dust that a sorted card told, {@code sort/1}, laid on a picture: its places are those of the sensor. */
public final class DustList {

    /** Height of a sensor over its width, where the picture lies on its side (3:2; common practice). */
    private static final double SENSOR_HEIGHT = 2.0 / 3;

    private DustList() {}

    /** Specks as fractions of {@code picture}, which is the sensor's whole, turned as its orientation tag says. */
    public static List<Dust> read(Path sorted, Path picture) throws IOException {
        JsonObject document = SurveyRequest.document(sorted);
        if (!"sort/1".equals(document.getString("schema")) || !(document.get("dust") instanceof JsonArray)) {
            throw new UnreadableInputException(
                    sorted,
                    "holds no dust of a card; write it by: ebblight sort CARD --json > " + sorted.getFileName());
        }
        int orientation = FrameFacts.of(picture).orientation().orElse(1);
        List<Dust> specks = new ArrayList<>();
        try {
            for (Fields each : new Fields(document, "").parts("dust")) {
                specks.add(turned(each.number("x"), each.number("y"), each.number("radius"), orientation));
            }
        } catch (RequestException | IllegalArgumentException e) {
            throw new UnreadableInputException(sorted, String.valueOf(e.getMessage()));
        }
        return specks;
    }

    /** Exif 2.32, orientation: 3 upside down, 6 turned clockwise to be upright, 8 turned the other way. */
    private static Dust turned(double x, double y, double radius, int orientation) {
        return switch (orientation) {
            case 3 -> new Dust(1 - x, 1 - y, radius);
            case 6 -> new Dust(1 - y, x, radius / SENSOR_HEIGHT);
            case 8 -> new Dust(y, 1 - x, radius / SENSOR_HEIGHT);
            default -> new Dust(x, y, radius);
        };
    }
}
