package ebblight.demo;

/** The sea as a function of time: three cascades of waves, and the gusts that roughen them. */
final class Sea {

    private static final int SIDE = 256;
    static final double[] TILE_METRES = {600, 53, 5.9};
    /** Bounds between the bands in rad/m; the longest is the whole tile, the shortest wave is 5 cm long. */
    private static final double[] BAND = {0, 1.1, 12, 125};
    /** Length of a gust and its travel relative to the wind at 10 m. */
    private static final double GUST_METRES = 45;

    private static final double GUST_SPEED = 0.7;

    private final Cascade[] cascades = new Cascade[3];
    private final SlopeVariance[] variances = new SlopeVariance[3];
    private final Gusts gusts;
    private final double significantHeightMetres;

    Sea(Weather weather) {
        Dice dice = new Dice(weather.seed());
        DirectionalSpectrum spectrum = new DirectionalSpectrum(weather);
        for (int i = 0; i < 3; i++) {
            cascades[i] = new Cascade(SIDE, TILE_METRES[i], BAND[i], BAND[i + 1], spectrum, dice);
            variances[i] = new SlopeVariance(cascades[i]);
        }
        gusts = new Gusts(weather, GUST_METRES, GUST_SPEED, dice);
        significantHeightMetres = spectrum.significantHeightMetres();
    }

    /** The sea at one instant; belongs to one thread and is used again for the next instant. */
    static final class State {
        final SlopeField[] fields = {new SlopeField(SIDE), new SlopeField(SIDE), new SlopeField(SIDE)};
        /** Height of the longest band in metres, row by row. */
        final float[] height = new float[SIDE * SIDE];
        /** Size of the slopes relative to the mean, row by row over {@link Gusts#SIDE}². */
        final float[] gust = new float[Gusts.SIDE * Gusts.SIDE];

        private final FieldSpace space;

        private State(FieldSpace space) {
            this.space = space;
        }
    }

    State state() {
        return new State(cascades[0].space());
    }

    void at(double timeSeconds, State state) {
        for (int i = 0; i < 3; i++) {
            cascades[i].slopes(timeSeconds, state.space);
            state.fields[i].set(state.space.re, state.space.im);
            if (i == 0) {
                cascades[0].heights(state.space);
                System.arraycopy(state.space.re, 0, state.height, 0, state.height.length);
            }
        }
        gusts.at(timeSeconds, state.gust);
    }

    Cascade cascade(int i) {
        return cascades[i];
    }

    SlopeVariance variance(int i) {
        return variances[i];
    }

    double significantHeightMetres() {
        return significantHeightMetres;
    }
}
