package ebblight.engine;

import ebblight.core.motion.Camera;
import ebblight.core.motion.Kind;
import ebblight.core.motion.Measurement;
import ebblight.core.motion.RegionMotion;
import ebblight.core.numeric.Rounding;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a measurement cannot know, in words for a person. */
final class Warnings {

    private static final double SHORT_SECONDS = 3;
    private static final double LARGE_PART = 0.02;

    private Warnings() {}

    static List<String> of(Camera camera) {
        return switch (camera.verdict()) {
            case STILL -> List.of();
            case CORRECTED -> List.of("the camera moved; the frames were put back in place on what stands still");
            case REFUSED ->
                List.of("the camera moved too far for anything to be measured; put it on something firm and"
                        + " film again");
            case UNSURE ->
                List.of("too little stands still in the picture to tell whether the camera moved; the frames"
                        + " are used as they are");
        };
    }

    static List<String> of(Measurement measurement, boolean spaced) {
        List<String> all = new ArrayList<>(of(measurement.survey().camera()));
        double seconds = measurement.survey().clip().lengthSeconds();
        if (measurement.survey().framesLeftOut() > 0) {
            all.add(measurement.survey().framesLeftOut() + " dark frames of a fade were left out");
        }
        if (measurement.repeatsAfterSeconds() > 0) {
            all.add("the clip repeats itself after " + Rounding.up(10 * measurement.repeatsAfterSeconds()) / 10.0
                    + " s: what long times leave cannot be told from it");
        }
        if (measurement.ofStills()) {
            all.add("frames of different exposure times are samples of waves that come and go: the ranges are wide; a"
                    + " clip of ten seconds tells more");
        } else if (seconds < SHORT_SECONDS) {
            all.add("the clip is only " + Rounding.up(10 * seconds) / 10.0
                    + " s long: times far beyond it cannot be told; film ten seconds, twenty for swell");
        }
        all.addAll(ofParts(measurement, spaced));
        boolean moves = measurement.regions().stream()
                .anyMatch(r -> r.part().kind() != Kind.FIXED
                        && (r.flags().seen() || r.velocity().isPresent()));
        if (!moves) {
            all.add("nothing moves that I can see");
        }
        return all;
    }

    /** What cannot be known of the parts, each said once with the parts it is true of. */
    private static List<String> ofParts(Measurement measurement, boolean spaced) {
        Map<String, List<String>> ids = new LinkedHashMap<>();
        for (RegionMotion region : measurement.regions()) {
            if (region.part().areaFraction() >= LARGE_PART
                    && !region.remaining().isEmpty()) {
                for (String words : of(region.flags(), spaced, measurement.ofStills())) {
                    ids.computeIfAbsent(words, w -> new ArrayList<>())
                            .add(region.part().id());
                }
            }
        }
        return ids.entrySet().stream()
                .map(e -> String.join(", ", e.getValue()) + ": " + e.getKey())
                .toList();
    }

    private static List<String> of(RegionMotion.Flags flags, boolean spaced, boolean stills) {
        if (!flags.seen()) {
            return List.of("nothing moves here that I can see above the noise");
        }
        List<String> all = new ArrayList<>();
        if (stills) {
            if (!flags.resolved()) {
                all.add("unresolved, slower change than the longest exposure shows; take a longer one or film it");
            }
        } else if (spaced) {
            if (flags.coarse()) {
                all.add("frames this far apart keep more than one long exposure would: the upper end of the range is"
                        + " theirs");
            }
            if (!flags.resolved()) {
                all.add("unresolved, slower change than these minutes show; take frames over a longer time");
            }
        } else if (flags.breakers()) {
            all.add("looks like breaking waves, whose sets a clip cannot know; take 20 to 30 frames 10 to 12 s apart");
        } else {
            if (!flags.resolved()) {
                all.add(
                        "unresolved, the clip is short for its slow change; film 20 s or longer, or take 20 to 30 frames"
                                + " 10 to 12 s apart");
            }
            if (flags.coarse()) {
                all.add("too fast for the frames to follow; the upper end of the range is what they show");
            }
        }
        return all;
    }
}
