package ebblight.core.motion;

/** Parts drawn as text: {@code #} stands, {@code c} drifts, {@code ~} flows, {@code y} sways. */
final class Drawing {

    private Drawing() {}

    /** Sure shares, every letter a square of {@code scale × scale} pixels. */
    static SoftRegions regions(int scale, String... rows) {
        int w = scale * rows[0].length();
        int h = scale * rows.length;
        float[][] share = new float[RegionModel.KINDS][w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                share["#c~y".indexOf(rows[y / scale].charAt(x / scale))][y * w + x] = 1;
            }
        }
        return new SoftRegions(w, h, share);
    }

    static RegionMap map(int scale, String... rows) {
        return RegionMap.of(regions(scale, rows));
    }

    /** A curve that leaves {@code then} of {@code atOnce}, for what only asks it. */
    static TextureCurve curve(double atOnce, double then, boolean seen, boolean resolved, double measuredTo) {
        return new TextureCurve() {
            @Override
            public double varianceAtOnce() {
                return atOnce;
            }

            @Override
            public double variance(double seconds) {
                return then;
            }

            @Override
            public boolean seen() {
                return seen;
            }

            @Override
            public double measuredToSeconds() {
                return measuredTo;
            }

            @Override
            public boolean resolved() {
                return resolved;
            }

            @Override
            public boolean coarse() {
                return false;
            }

            @Override
            public double correlationSeconds() {
                return 0;
            }

            @Override
            public Remaining at(double seconds) {
                double ratio = Math.sqrt(then / atOnce);
                return new Remaining(seconds, ratio, ratio, ratio, Remaining.Basis.MEASURED);
            }
        };
    }
}
