package ebblight.core.motion;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * The picture cut into named parts: every pixel belongs to exactly one. A part is a connected area of one kind,
 * together with small islands of that kind; islands of a kind that has no area of its own go to what surrounds them.
 */
public final class RegionMap {

    /** An area smaller than this share of the picture is an island. */
    private static final double SMALLEST_AREA = 0.004;

    /** Two parts are the same part when they share this much of their union. */
    private static final double SAME_OVERLAP = 0.5;

    private final int width;
    private final int height;
    private final int[] index;
    private final List<Part> parts;

    private RegionMap(int width, int height, int[] index, List<Part> parts) {
        this.width = width;
        this.height = height;
        this.index = index;
        this.parts = parts;
    }

    /**
     * One part of the picture.
     *
     * @param id kind and number, kept over measuring again
     * @param areaFraction share of the picture's pixels, 0 to 1
     * @param confidence mean share by which its kind won, 0 to 1
     */
    public record Part(String id, Kind kind, double areaFraction, double confidence) {}

    /** The parts of soft regions, largest first. */
    static RegionMap of(SoftRegions regions) {
        int w = regions.width();
        int h = regions.height();
        byte[] labels = regions.labels();
        int smallest = Math.max(1, (int) (SMALLEST_AREA * w * h));
        giveLostIslandsAway(labels, w, h, smallest);
        Areas areas = Areas.of(labels, w, h);
        int[] home = homes(areas, smallest);
        int[] area = new int[areas.count()];
        for (int a = 0; a < home.length; a++) {
            area[home[a]] += areas.size(a);
        }
        List<Integer> order = new ArrayList<>();
        for (int a = 0; a < home.length; a++) {
            if (home[a] == a) {
                order.add(a);
            }
        }
        order.sort(Comparator.comparing((Integer a) -> -area[a]).thenComparing(a -> a));
        int[] rank = new int[areas.count()];
        for (int r = 0; r < order.size(); r++) {
            rank[order.get(r)] = r;
        }
        int[] index = new int[w * h];
        double[] won = new double[order.size()];
        for (int p = 0; p < index.length; p++) {
            index[p] = rank[home[areas.at(p)]];
            won[index[p]] += regions.all()[labels[p]][p];
        }
        int[] number = new int[RegionModel.KINDS];
        List<Part> parts = new ArrayList<>();
        for (int r = 0; r < order.size(); r++) {
            int a = order.get(r);
            Kind kind = Kind.ofColumn(areas.label(a));
            String id = kind.word() + "-" + ++number[kind.column()];
            parts.add(new Part(id, kind, area[a] / (double) (w * h), won[r] / area[a]));
        }
        return new RegionMap(w, h, index, List.copyOf(parts));
    }

    /** Relabels the islands of kinds whose whole extent is less than an area, by the area they touch most. */
    private static void giveLostIslandsAway(byte[] labels, int w, int h, int smallest) {
        for (int round = 0; round < RegionModel.KINDS; round++) {
            Areas areas = Areas.of(labels, w, h);
            int[] total = new int[RegionModel.KINDS];
            for (int a = 0; a < areas.count(); a++) {
                total[areas.label(a)] += areas.size(a);
            }
            int[] into = areas.mostTouched(labels, w, h);
            boolean changed = false;
            byte[] target = new byte[areas.count()];
            for (int a = 0; a < target.length; a++) {
                target[a] = areas.label(a);
                if (total[areas.label(a)] < smallest && into[a] >= 0) {
                    target[a] = areas.label(into[a]);
                    changed |= target[a] != areas.label(a);
                }
            }
            if (!changed) {
                return;
            }
            for (int p = 0; p < labels.length; p++) {
                labels[p] = target[areas.at(p)];
            }
        }
    }

    /** For every area the one it belongs to: itself when large, else the largest of its kind. */
    private static int[] homes(Areas areas, int smallest) {
        int[] largest = {-1, -1, -1, -1};
        for (int a = 0; a < areas.count(); a++) {
            int kind = areas.label(a);
            if (largest[kind] < 0 || areas.size(a) > areas.size(largest[kind])) {
                largest[kind] = a;
            }
        }
        int[] home = new int[areas.count()];
        for (int a = 0; a < home.length; a++) {
            home[a] = areas.size(a) >= smallest ? a : largest[areas.label(a)];
        }
        return home;
    }

    public int width() {
        return width;
    }

    public int height() {
        return height;
    }

    /** The parts, largest first. */
    public List<Part> parts() {
        return parts;
    }

    /** Index into {@link #parts()} of the part that holds pixel {@code p}. */
    public int partAt(int p) {
        return index[p];
    }

    /** 1 where the pixel belongs to part {@code part}, 0 elsewhere. */
    float[] mask(int part) {
        float[] mask = new float[index.length];
        for (int p = 0; p < mask.length; p++) {
            mask[p] = index[p] == part ? 1 : 0;
        }
        return mask;
    }

    /**
     * This map with the names of an earlier one: a part that overlaps an earlier part of the same kind by half of their
     * union keeps its name; a new part takes a number that the earlier map never used.
     */
    public RegionMap named(RegionMap earlier) {
        if (earlier.width != width || earlier.height != height) {
            return this;
        }
        int[][] both = new int[parts.size()][earlier.parts.size()];
        int[] here = new int[parts.size()];
        int[] there = new int[earlier.parts.size()];
        for (int p = 0; p < index.length; p++) {
            both[index[p]][earlier.index[p]]++;
            here[index[p]]++;
            there[earlier.index[p]]++;
        }
        Set<String> used = new HashSet<>();
        earlier.parts.forEach(part -> used.add(part.id()));
        List<Part> named = new ArrayList<>();
        for (int a = 0; a < parts.size(); a++) {
            Part part = parts.get(a);
            String id = null;
            for (int b = 0; b < there.length; b++) {
                double union = here[a] + (double) there[b] - both[a][b];
                if (earlier.parts.get(b).kind() == part.kind() && both[a][b] >= SAME_OVERLAP * union) {
                    id = earlier.parts.get(b).id();
                }
            }
            if (id == null) {
                int number = 1;
                while (used.contains(part.kind().word() + "-" + number)) {
                    number++;
                }
                id = part.kind().word() + "-" + number;
            }
            used.add(id);
            named.add(new Part(id, part.kind(), part.areaFraction(), part.confidence()));
        }
        return new RegionMap(width, height, index, List.copyOf(named));
    }
}
