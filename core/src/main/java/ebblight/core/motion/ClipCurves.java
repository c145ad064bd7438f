package ebblight.core.motion;

import java.util.Optional;

/** The curves of the parts of a clip; what the flowing pixels as a whole showed is measured once and asked for twice. */
final class ClipCurves implements KindCurves.Maker {

    /** Fewer pixels than this do not tell breaking waves. */
    private static final int ENOUGH_PIXELS = 100;

    private final ViewSurvey.Parts parts;
    private final float[] flowing;
    private final Optional<Watched> flow;

    ClipCurves(ViewSurvey.Parts parts) {
        this.parts = parts;
        flowing = parts.regions().share(Kind.FLOWING);
        int[] at = PixelSeries.thinned(flowing);
        flow = at.length < ENOUGH_PIXELS ? Optional.empty() : Optional.of(Watched.of(parts, at));
    }

    /** Whether what flows holds breaking waves. */
    boolean breakers() {
        return flow.filter(f -> Breakers.look(f.series, f.curve(false))).isPresent();
    }

    @Override
    public TextureCurve make(float[] share, boolean setsUnknown) {
        Watched watched =
                share == flowing && flow.isPresent() ? flow.get() : Watched.of(parts, PixelSeries.thinned(share));
        return watched.curve(setsUnknown);
    }

    /** What some pixels showed over the clip. */
    private record Watched(PixelSeries series, Variogram variogram, Crests crests) {

        static Watched of(ViewSurvey.Parts parts, int[] at) {
            PixelSeries series =
                    PixelSeries.of(parts.frames().all(), parts.frames().timesSeconds(), at);
            return new Watched(
                    series,
                    Variogram.of(series, parts.noise().at(series.mean())),
                    Crests.of(series, at, parts.frames().width()));
        }

        TextureCurve curve(boolean setsUnknown) {
            return ClipCurve.of(variogram, setsUnknown, crests);
        }
    }
}
