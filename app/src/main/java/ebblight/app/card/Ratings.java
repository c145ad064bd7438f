package ebblight.app.card;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.imaging.RatingSidecar;
import ebblight.imaging.UnreadableInputException;
import ebblight.imaging.card.SortedCard;
import java.io.IOException;

/** Writes what is worth keeping beside the pictures. */
public final class Ratings {

    private static final int BEST = 5;
    private static final int NEAR = 4;

    private Ratings() {}

    /** Rates the best frame of each view and what comes near it; says for each sidecar what became of it. */
    public static JsonArray write(SortedCard card) throws IOException {
        JsonArray written = new JsonArray();
        for (SortedCard.Group group : card.groups()) {
            if (group.kind() == SortedCard.Kind.VIEW) {
                for (SortedCard.Frame frame : group.frames()) {
                    if (frame.nearBest()) {
                        written.add(one(frame));
                    }
                }
            }
        }
        return written;
    }

    private static JsonObject one(SortedCard.Frame frame) throws IOException {
        int stars = frame.rank() == 1 ? BEST : NEAR;
        JsonObject one = new JsonObject();
        one.put("file", RatingSidecar.beside(frame.file()).toString());
        try {
            RatingSidecar.Outcome outcome = RatingSidecar.rate(frame.file(), stars);
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
