package ebblight.app.after;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.motion.Kind;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.IccProfile;
import ebblight.imaging.finish.Finish;
import ebblight.imaging.finish.Finisher;
import java.util.List;
import java.util.Optional;

/** The middle tone that each kind of part has in a draft. */
final class DraftParts {

    private static final int PLANES = 3;
    /** Code of half of the light (IEC 61966-2-1: 0.735 of the range). */
    private static final int HALF_LIGHT = 48_190;

    private DraftParts() {}

    /**
     * The kinds of a view with their share of the draft and their middle tone.
     *
     * @param placed what levels and crops the picture, and no more
     * @param stops of every pixel of the draft, from middle grey
     */
    static JsonArray of(PartShares shares, Finish placed, int width, int height, double[] stops, Work work) {
        List<Kind> kinds = shares.kinds();
        RgbPicture where = RgbPicture.black(width, height);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int plane = kinds.indexOf(shares.kindAt((x + 0.5) / width, (y + 0.5) / height));
                if (plane < PLANES) {
                    where.plane(plane)[y * width + x] = 1;
                }
            }
        }
        // the easel that lays the picture lays its parts: the fourth kind is where none of the three is
        CodedPicture laid = Finisher.finish(where, IccProfile.srgb(), Optional.empty(), placed, work)
                .picture();
        double[][] tones = new double[kinds.size()][stops.length];
        int[] counts = new int[kinds.size()];
        for (int p = 0; p < stops.length; p++) {
            int plane = 0;
            while (plane < PLANES && laid.code(3 * p + plane) < HALF_LIGHT) {
                plane++;
            }
            if (plane < kinds.size()) {
                tones[plane][counts[plane]++] = stops[p];
            }
        }
        JsonArray told = new JsonArray();
        for (int k = 0; k < kinds.size(); k++) {
            JsonObject one = new JsonObject();
            one.put("kind", kinds.get(k).word());
            one.put("share", (double) counts[k] / stops.length);
            one.put("toneStops", counts[k] == 0 ? null : Quantiles.median(tones[k], counts[k]));
            told.add(one);
        }
        return told;
    }
}
