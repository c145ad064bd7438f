package ebblight.app.report;

import com.grack.nanojson.JsonObject;
import java.util.List;

/**
 * All that the report of a job done shows.
 *
 * @param name of the place
 * @param story in a few lines
 * @param measured answer of {@code measure/1}
 * @param wished answer of {@code wish/1}
 * @param clashing answer of {@code wish/1} to wishes that no one time serves
 * @param settings answer of {@code settings/1}
 * @param chosenSeconds the time settled on
 * @param betweenSeconds the time between that the clash is shown at
 * @param pictures of the job
 * @param burst the frames that were stacked
 * @param compared previews beside true exposures
 * @param truths what is true against what was measured
 */
public record Report(
        String name,
        List<String> story,
        JsonObject measured,
        JsonObject wished,
        JsonObject clashing,
        JsonObject settings,
        double chosenSeconds,
        double betweenSeconds,
        ReportPictures pictures,
        Burst burst,
        List<Compared> compared,
        List<Truth> truths) {

    /**
     * Frames added up to one exposure.
     *
     * @param frames how many, 1 or more
     * @param seconds that all of them gathered light
     */
    public record Burst(int frames, double seconds) {}

    /** One quantity, true and as measured, in words with units. */
    public record Truth(String what, String truly, String measured) {}
}
