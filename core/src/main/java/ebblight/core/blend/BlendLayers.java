package ebblight.core.blend;

import ebblight.core.motion.Kind;
import ebblight.core.motion.RegionMap;
import ebblight.core.wish.Wish;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The regions of a picture dealt out to what they are made of: every region to exactly one layer. */
public final class BlendLayers {

    private static final String REST = "rest";

    private final List<Layer> layers;
    private final RegionMap map;
    private final int[] layerOf;

    private BlendLayers(List<Layer> layers, RegionMap map, int[] layerOf) {
        this.layers = layers;
        this.map = map;
        this.layerOf = layerOf;
    }

    /**
     * One wish: a region and what it shall be made of.
     *
     * @param region its name, a kind ({@code flowing} or {@code water}: all of that kind), or {@code rest}
     */
    public record Part(String region, Taken taken) {}

    /**
     * Regions made of the same.
     *
     * @param regions their names
     * @param areaFraction their share of the picture, 0 to 1
     */
    public record Layer(Taken taken, List<String> regions, double areaFraction) {}

    /**
     * Deals the regions of {@code map} out. A region takes the last part that names it: by its own name before by its
     * kind, by its kind before as the rest; what no part names is made of all frames.
     *
     * @throws IllegalArgumentException when a part names no region of the map
     */
    public static BlendLayers of(List<Part> parts, RegionMap map) {
        Taken[] taken = new Taken[map.parts().size()];
        for (int r = 0; r < taken.length; r++) {
            taken[r] = new Taken.Whole();
            int rank = 0;
            for (Part part : parts) {
                int match = match(part.region(), map.parts().get(r));
                if (match > 0 && match >= rank) {
                    rank = match;
                    taken[r] = part.taken();
                }
            }
        }
        for (Part part : parts) {
            mustBeKnown(part.region(), map);
        }
        List<Taken> distinct = List.of(taken).stream().distinct().toList();
        int[] layerOf = new int[taken.length];
        List<Layer> layers = new ArrayList<>();
        for (Taken each : distinct) {
            List<String> names = new ArrayList<>();
            double area = 0;
            for (int r = 0; r < taken.length; r++) {
                if (taken[r].equals(each)) {
                    layerOf[r] = layers.size();
                    names.add(map.parts().get(r).id());
                    area += map.parts().get(r).areaFraction();
                }
            }
            layers.add(new Layer(each, List.copyOf(names), area));
        }
        return new BlendLayers(List.copyOf(layers), map, layerOf);
    }

    private static int match(String typed, RegionMap.Part region) {
        String name = typed.toLowerCase(Locale.ROOT);
        if (name.equals(region.id())) {
            return 3;
        }
        Optional<Kind> kind = Wish.kind(name);
        return kind.isPresent() && kind.get() == region.kind() ? 2 : name.equals(REST) ? 1 : 0;
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

    /** The layers, each region in exactly one. */
    public List<Layer> layers() {
        return layers;
    }

    /** 1 where the picture is made of layer {@code layer}, 0 elsewhere, at the size of the map. */
    public float[] mask(int layer) {
        float[] mask = new float[map.width() * map.height()];
        for (int p = 0; p < mask.length; p++) {
            mask[p] = layerOf[map.partAt(p)] == layer ? 1 : 0;
        }
        return mask;
    }
}
