package ebblight.app.after;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.core.blend.BlendLayers;
import ebblight.core.motion.Kind;
import ebblight.core.numeric.Work;
import ebblight.engine.RequestException;
import ebblight.imaging.ShareGrid;
import ebblight.imaging.finish.Finish;
import ebblight.imaging.finish.PartTones;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Which part every place of a view belongs to, told from its frames. */
public final class PartShares {

    private static final String MAP = "regions";
    /** Shapes that differ by more do not show the same view. */
    private static final double SAME_SHAPE = 0.02;

    private final int width;
    private final int height;
    private final byte[] map;
    private final List<String> ids = new ArrayList<>();
    private final List<Kind> kinds = new ArrayList<>();

    private PartShares(JsonObject answer, int width, int height, byte[] map) {
        this.width = width;
        this.height = height;
        this.map = map;
        for (JsonObject region : Asked.rows(answer.getArray("regions"))) {
            ids.add(region.getString("id"));
            kinds.add(Kind.valueOf(region.getString("kind").toUpperCase(Locale.ROOT)));
        }
        if (map.length == 0 || ids.isEmpty()) {
            throw new RequestException("frames", "show no parts: the camera moved too far, or nothing moves");
        }
    }

    /** Parts the frames of a request. */
    public static PartShares of(SurveyRequest frames, Work work) {
        JsonObject asked = new JsonObject();
        asked.put("regionsBlob", MAP);
        JsonObject answer = frames.ask("parts/1", asked, work);
        return of(
                answer,
                frames.frames().clip().width(),
                frames.frames().clip().height(),
                frames.blobs().get(MAP).orElseGet(() -> new byte[0]));
    }

    /** What {@code parts/1} answered, with the map it gave. */
    public static PartShares of(JsonObject answer, int width, int height, byte[] map) {
        return new PartShares(answer, width, height, map);
    }

    /** The kinds that there are, in their order. */
    public List<Kind> kinds() {
        return kinds.stream().distinct().sorted().toList();
    }

    /** The kind at a place, given as fractions of width and height. */
    Kind kindAt(double x, double y) {
        int u = Math.min(width - 1, (int) (x * width));
        int v = Math.min(height - 1, (int) (y * height));
        return kinds.get(map[v * width + u] & 0xFF);
    }

    /**
     * Where the parts of a finish lie in a picture of the same view.
     *
     * @throws RequestException where no part is named so, or the picture has another shape
     */
    public PartTones tones(List<Finish.Part> parts, int pictureWidth, int pictureHeight) {
        double shape = (double) pictureWidth * height / ((double) pictureHeight * width);
        if (Math.abs(shape - 1) > SAME_SHAPE) {
            throw new RequestException(
                    "frames",
                    "have another shape than the picture, " + width + " to " + height + " against " + pictureWidth
                            + " to " + pictureHeight + "; name the frames it was made of");
        }
        Map<Double, float[]> byStops = new TreeMap<>();
        float[][] plane = new float[ids.size()][];
        for (int k = 0; k < plane.length; k++) {
            plane[k] = byStops.computeIfAbsent(stops(parts, k), s -> new float[map.length]);
        }
        for (int p = 0; p < map.length; p++) {
            plane[map[p] & 0xFF][p] = 1;
        }
        parts.forEach(this::mustBeKnown);
        return new PartTones(
                new ShareGrid(width, height, 0), List.copyOf(byStops.values()), List.copyOf(byStops.keySet()));
    }

    /** By its own name before its kind, by its kind before the rest; a later part wins over an earlier one. */
    private double stops(List<Finish.Part> parts, int region) {
        int best = 0;
        double stops = 0;
        for (Finish.Part part : parts) {
            int claim = BlendLayers.claim(part.region(), ids.get(region), kinds.get(region));
            if (claim > 0 && claim >= best) {
                best = claim;
                stops = part.stops();
            }
        }
        return stops;
    }

    private void mustBeKnown(Finish.Part part) {
        for (int k = 0; k < ids.size(); k++) {
            if (BlendLayers.claim(part.region(), ids.get(k), kinds.get(k)) > 0) {
                return;
            }
        }
        // a kind that this view lacks is no fault: a saved finish is for the next view too
        if (List.of(Kind.values()).stream().allMatch(k -> BlendLayers.claim(part.region(), "", k) == 0)) {
            throw new RequestException(
                    "parts",
                    "\"" + part.region() + "\" is no part of this view; known are " + String.join(", ", ids)
                            + ", their kinds, and rest");
        }
    }
}
