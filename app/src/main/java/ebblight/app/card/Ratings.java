package ebblight.app.card;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.imaging.RatingSidecar;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;

/** Writes what is worth keeping beside the pictures. */
public final class Ratings {

    private static final int BEST = 5;
    private static final int NEAR = 4;

    private Ratings() {}

    /**
     * Rates the best frame of each view and what comes near it; says for each sidecar what became of it.
     *
     * @param sorted the card in {@code folder}, {@code sort/1}
     */
    public static JsonArray write(Path folder, JsonObject sorted) throws IOException {
        JsonArray written = new JsonArray();
        for (JsonObject group : Asked.rows(sorted.getArray("groups"))) {
            if (group.getString("kind").equals("view")) {
                for (JsonObject frame : Asked.rows(group.getArray("frames"))) {
                    if (frame.getBoolean("nearBest")) {
                        written.add(keep(folder.resolve(frame.getString("file")), frame.getInt("rank") == 1));
                    }
                }
            }
        }
        return written;
    }

    /**
     * Rates one frame that is kept.
     *
     * @param best whether it is the best of its view
     */
    public static JsonObject keep(Path frame, boolean best) throws IOException {
        int stars = best ? BEST : NEAR;
        JsonObject one = new JsonObject();
        one.put("file", RatingSidecar.beside(frame).toString());
        try {
            RatingSidecar.Outcome outcome = RatingSidecar.rate(frame, stars);
            boolean there = outcome == RatingSidecar.Outcome.THERE;
            one.put("rating", there ? null : stars);
            one.put("text", there ? "holds a rating already; left as it is" : "rated " + stars);
        } catch (UnreadableInputException e) {
            one.put("rating", null);
            one.put("text", e.getMessage());
        }
        return one;
    }
}
