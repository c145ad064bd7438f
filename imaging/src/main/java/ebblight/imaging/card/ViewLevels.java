package ebblight.imaging.card;

import ebblight.core.numeric.Quantiles;
import java.util.List;

/** How bright each frame of a view came out against one of them, by the parts that stand still. */
final class ViewLevels {

    /** Share of the still cells that count as the shadows and as the lights. */
    private static final double END = 0.1;

    private static final int LEAST_CELLS = 60;

    private final List<CardFrame> frames;
    private final ViewParts parts;
    private final Cells reference;

    ViewLevels(List<CardFrame> frames, ViewParts parts) {
        this.frames = frames;
        this.parts = parts;
        this.reference = middle().cells();
    }

    /** The frame whose brightness is the median of all: most others share unclipped parts with it. */
    private CardFrame middle() {
        List<CardFrame> sorted = frames.stream()
                .sorted((a, b) -> Double.compare(a.medianLevel(), b.medianLevel()))
                .toList();
        return sorted.get(sorted.size() / 2);
    }

    /** Stops by which frame {@code k} came out brighter than the middle one. */
    double stops(int k) {
        Cells cells = frames.get(k).cells();
        double stops = ViewParts.median(cells.count(), i -> shared(cells, i), i -> difference(cells, i));
        return Double.isNaN(stops) ? anywhere(cells) : stops;
    }

    /** Where nothing stands still, by all that is known of both. */
    private double anywhere(Cells cells) {
        return ViewParts.median(cells.count(), i -> cells.known(i) && reference.known(i), i -> difference(cells, i));
    }

    private boolean shared(Cells cells, int i) {
        return parts.fixed(i) && cells.known(i) && reference.known(i);
    }

    private double difference(Cells cells, int i) {
        return cells.level(i) - reference.level(i);
    }

    /**
     * Stops by which the shadows of each frame are lifted more than its lights, against the frame of the view in
     * which they are lifted least; not a number where too little is shared.
     */
    double[] veils() {
        double[] veils = new double[frames.size()];
        double least = Double.POSITIVE_INFINITY;
        for (int k = 0; k < veils.length; k++) {
            veils[k] = lifted(frames.get(k).cells());
            least = veils[k] < least ? veils[k] : least;
        }
        for (int k = 0; k < veils.length; k++) {
            veils[k] -= least;
        }
        return veils;
    }

    private double lifted(Cells cells) {
        double[] levels = new double[cells.count()];
        int n = 0;
        for (int i = 0; i < levels.length; i++) {
            if (shared(cells, i)) {
                levels[n++] = reference.level(i);
            }
        }
        if (n < LEAST_CELLS) {
            return Double.NaN;
        }
        double dark = Quantiles.quantile(levels, n, END);
        double bright = Quantiles.quantile(levels, n, 1 - 3 * END);
        return ViewParts.median(
                        cells.count(), i -> shared(cells, i) && reference.level(i) <= dark, i -> difference(cells, i))
                - ViewParts.median(
                        cells.count(),
                        i -> shared(cells, i) && reference.level(i) >= bright,
                        i -> difference(cells, i));
    }
}
