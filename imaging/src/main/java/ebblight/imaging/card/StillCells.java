package ebblight.imaging.card;

/** Cells of a pair that stand still: the pattern round them is the same in both pictures. */
final class StillCells {

    private static final int ROUND = 2;
    private static final int COMPARED = 3;
    private static final double MOST_STOPS = 2;
    private static final double SAME = 0.9;
    private static final double LEAST_PATTERN = 0.04;

    private StillCells() {}

    static boolean[] of(ColourCells first, ColourCells second) {
        int n = first.width() * first.height();
        int w = first.width();
        int h = first.height();
        boolean[] both = new boolean[n];
        double[] a = new double[n];
        double[] b = new double[n];
        for (int i = 0; i < n; i++) {
            both[i] = first.known(i) && second.known(i);
            a[i] = first.level(i);
            b[i] = second.level(i);
        }
        float[] pa = HighPass.of(a, both, w, h, ROUND, MOST_STOPS);
        float[] pb = HighPass.of(b, both, w, h, ROUND, MOST_STOPS);
        double[] ab = new double[n];
        double[] aa = new double[n];
        double[] bb = new double[n];
        double[] count = new double[n];
        for (int i = 0; i < n; i++) {
            ab[i] = pa[i] * pb[i];
            aa[i] = pa[i] * pa[i];
            bb[i] = pb[i] * pb[i];
            count[i] = both[i] ? 1 : 0;
        }
        double[] sab = HighPass.boxSums(ab, w, h, COMPARED);
        double[] saa = HighPass.boxSums(aa, w, h, COMPARED);
        double[] sbb = HighPass.boxSums(bb, w, h, COMPARED);
        double[] counts = HighPass.boxSums(count, w, h, COMPARED);
        boolean[] still = new boolean[n];
        for (int i = 0; i < n; i++) {
            double pattern = counts[i] > 0 ? Math.sqrt(Math.sqrt(Math.max(0, saa[i] * sbb[i])) / counts[i]) : 0;
            still[i] = both[i] && pattern > LEAST_PATTERN && sab[i] > SAME * Math.sqrt(saa[i] * sbb[i]);
        }
        return still;
    }
}
