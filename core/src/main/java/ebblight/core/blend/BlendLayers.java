package ebblight.core.blend;

import ebblight.core.motion.Areas;
import ebblight.core.motion.Kind;
import ebblight.core.motion.RegionMap;
import ebblight.core.motion.ViewSurvey;
import ebblight.core.numeric.Work;
import ebblight.core.wish.Wish;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The regions of a picture dealt out to what they are made of: every region to exactly one layer. */
public final class BlendLayers {

    private static final String REST = "rest";
    private static final double SMALLEST_AREA = 0.0015;
    /** A time with this share of the frames has at most twice the noise of all of them. */
    private static final double LEAST_OF_BURST = 0.25;

    private final List<Layer> layers;
    private final int[] layerAt;

    private BlendLayers(List<Layer> layers, int[] layerAt) {
        this.layers = layers;
        this.layerAt = layerAt;
    }

    /**
     * One wish: a region and what it shall be made of.
     *
     * @param region its name, a kind ({@code flowing} or {@code water}: all of that kind), or {@code rest}
     * @param edge width over which it runs into its neighbours from 10 to 90 %, as a fraction of the picture's width; 0:
     *     as the picture's own edges are
     */
    public record Part(String region, Taken taken, double edge) {}

    /**
     * Regions made of the same.
     *
     * @param regions their names
     * @param areaFraction their share of the picture, 0 to 1
     * @param edge the widest edge that is wished for one of them
     */
    public record Layer(Taken taken, List<String> regions, double areaFraction, double edge) {}

    /**
     * Deals the regions of a view out. A region takes the last part that names it: by its own name before by its
     * kind, by its kind before as the rest. What no part names is made of all frames, or, where it stands still, of the
     * longest time wished for. Layers of moving parts reach into
     * still ones beside them that no part names, as far as something moves there.
     *
     * @throws IllegalArgumentException when a part names no region of the map
     */
    public static BlendLayers of(List<Part> parts, ViewSurvey survey, BurstTime burst, Work work) {
        RegionMap map = survey.map();
        for (Part part : parts) {
            mustBeKnown(part.region(), map);
        }
        Taken[] taken = new Taken[map.parts().size()];
        boolean[] asked = new boolean[taken.length];
        double[] edges = new double[taken.length];
        for (int r = 0; r < taken.length; r++) {
            taken[r] = map.parts().get(r).kind() == Kind.FIXED ? still(parts, burst) : new Taken.Whole();
            int rank = 0;
            for (Part part : parts) {
                int match = match(part.region(), map.parts().get(r));
                if (match > 0 && match >= rank) {
                    rank = match;
                    taken[r] = part.taken();
                    edges[r] = part.edge();
                    asked[r] = true;
                }
            }
        }
        List<Taken> distinct = List.of(taken).stream().distinct().toList();
        int[] layerOf = new int[taken.length];
        List<Layer> layers = new ArrayList<>();
        for (Taken each : distinct) {
            List<String> names = new ArrayList<>();
            double area = 0;
            double edge = 0;
            for (int r = 0; r < taken.length; r++) {
                if (taken[r].equals(each)) {
                    layerOf[r] = layers.size();
                    names.add(map.parts().get(r).id());
                    area += map.parts().get(r).areaFraction();
                    edge = Math.max(edge, edges[r]);
                }
            }
            layers.add(new Layer(each, List.copyOf(names), area, edge));
        }
        int[] layerAt = new int[map.width() * map.height()];
        boolean[] still = new boolean[layerAt.length];
        boolean[] moving = new boolean[layerAt.length];
        for (int p = 0; p < layerAt.length; p++) {
            int region = map.partAt(p);
            boolean fixed = map.parts().get(region).kind() == Kind.FIXED;
            layerAt[p] = layerOf[region];
            still[p] = fixed && !asked[region];
            moving[p] = !fixed;
        }
        Reach.apply(survey.clip(), survey.horizon(), layerAt, still, moving, work);
        giveIslandsAway(layerAt, map.width(), map.height());
        return new BlendLayers(List.copyOf(layers), layerAt);
    }

    /**
     * What unnamed still parts are made of: they look the same at any time, so the longest one wished for serves, and one
     * edge less is to be hidden, unless it has so few frames that it is noisy.
     */
    private static Taken still(List<Part> parts, BurstTime burst) {
        Taken still = new Taken.Whole();
        double longest = LEAST_OF_BURST * burst.seconds();
        for (Part part : parts) {
            if (part.taken() instanceof Taken.Time time && time.seconds() >= longest) {
                longest = time.seconds();
                still = time;
            }
        }
        return still;
    }

    private static int match(String typed, RegionMap.Part region) {
        return claim(typed, region.id(), region.kind());
    }

    /** How well a typed name means a region: 3 its own name, 2 its kind, 1 the rest, 0 not at all. */
    public static int claim(String typed, String id, Kind of) {
        String name = typed.toLowerCase(Locale.ROOT);
        if (name.equals(id)) {
            return 3;
        }
        Optional<Kind> kind = Wish.kind(name);
        return kind.isPresent() && kind.get() == of ? 2 : name.equals(REST) ? 1 : 0;
    }

    private static void mustBeKnown(String typed, RegionMap map) {
        if (typed.equalsIgnoreCase(REST)) {
            return;
        }
        List<String> known = map.parts().stream().map(RegionMap.Part::id).toList();
        for (RegionMap.Part region : map.parts()) {
            if (match(typed, region) > 0) {
                return;
            }
        }
        throw new IllegalArgumentException("\"" + typed + "\" is no region of this picture; known are "
                + String.join(", ", known) + ", their kinds, and rest");
    }

    /** Small islands of a layer would show as specks: they go to the layer they touch most. */
    private static void giveIslandsAway(int[] layerAt, int w, int h) {
        byte[] labels = new byte[layerAt.length];
        for (int p = 0; p < labels.length; p++) {
            labels[p] = (byte) layerAt[p];
        }
        Areas areas = Areas.of(labels, w, h);
        int[] touched = areas.mostTouched(labels, w, h);
        for (int p = 0; p < labels.length; p++) {
            int area = areas.at(p);
            if (areas.size(area) < SMALLEST_AREA * labels.length && touched[area] >= 0) {
                layerAt[p] = areas.label(touched[area]);
            }
        }
    }

    /** The layers, each region in exactly one. */
    public List<Layer> layers() {
        return layers;
    }

    /** 1 where the picture is made of layer {@code layer}, 0 elsewhere, at the size of the map. */
    public float[] mask(int layer) {
        float[] mask = new float[layerAt.length];
        for (int p = 0; p < mask.length; p++) {
            mask[p] = layerAt[p] == layer ? 1 : 0;
        }
        return mask;
    }
}
