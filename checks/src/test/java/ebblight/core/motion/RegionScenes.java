package ebblight.core.motion;

import ebblight.core.numeric.Work;
import ebblight.demo.Bough;
import ebblight.demo.FallingWater;
import ebblight.demo.Scene;
import ebblight.demo.Weather;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** What region weights are fitted on: the real clips with a mask, the demo's coast in four weathers, a made fall and a bough. */
final class RegionScenes {

    /** The demo's coast, by weather and speed; the other weathers are left to be tested on. */
    private static final Map<Weather, Double> FILMED =
            Map.of(Weather.LIGHT, 100.0, Weather.FRESH, 100.0, Weather.SWELL, 100.0, Weather.EVENING, 800.0);

    private static final double FILMED_ISO = 100;

    private final Map<String, ViewSurvey.Parts> real = new TreeMap<>();
    private final List<ViewSurvey.Parts> parts = new ArrayList<>();
    private final List<int[]> kinds = new ArrayList<>();

    /** They take most of a minute to film, and several fits use them. */
    private static Optional<RegionScenes> filmed = Optional.empty();

    private RegionScenes() {}

    static synchronized RegionScenes of(Work work) throws IOException {
        if (filmed.isEmpty()) {
            filmed = Optional.of(film(work));
        }
        return filmed.get();
    }

    private static RegionScenes film(Work work) throws IOException {
        RegionScenes scenes = new RegionScenes();
        for (String name : RealTrial.MASKED) {
            scenes.real.put(name, survey(RealClips.masked(name), work).parts());
        }
        for (Weather weather : Weather.ALL) {
            if (FILMED.containsKey(weather)) {
                ViewTrial.Film film = ViewTrial.film(weather, 480, FILMED.get(weather), work);
                ViewSurvey survey = survey(film.clip(), work);
                if (survey.crop() == 0) {
                    scenes.parts.add(survey.parts());
                    scenes.kinds.add(ViewTrial.columns(film.view(), work));
                }
            }
        }
        for (Scene scene : List.of(new FallingWater(), new Bough(0.1, 2.2, 5, 7.2, false))) {
            scenes.parts.add(
                    survey(ViewTrial.film(scene, FILMED_ISO, work), work).parts());
            scenes.kinds.add(ViewTrial.columns(scene, work));
        }
        return scenes;
    }

    private static ViewSurvey survey(Clip clip, Work work) {
        return ViewSurvey.of(clip, Strokes.none(), RegionModel.standard(), work);
    }

    /**
     * Gives them to a fit, the real clips first.
     *
     * @param but a real clip that is left out
     * @param ofDemo weight of a filmed scene against that of a real clip
     */
    void addTo(RegionFit fit, Optional<String> but, double ofDemo) throws IOException {
        for (Map.Entry<String, ViewSurvey.Parts> one : real.entrySet()) {
            if (!but.equals(Optional.of(one.getKey()))) {
                LuminanceFrames frames = one.getValue().frames();
                fit.add(one.getValue(), RealClips.mask(one.getKey(), frames.width(), frames.height()), 1);
            }
        }
        for (int k = 0; k < parts.size(); k++) {
            fit.add(parts.get(k), kinds.get(k), ofDemo);
        }
    }
}
