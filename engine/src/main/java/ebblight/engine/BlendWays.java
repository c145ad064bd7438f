package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.blend.BlendLayers;
import ebblight.core.blend.BurstTime;
import ebblight.core.blend.BurstTime.Shortfall;
import ebblight.core.blend.Taken;
import ebblight.core.exposure.ShutterTime;
import java.util.Optional;

/** What to do about a shutter time that the frames cannot give. */
final class BlendWays {

    private BlendWays() {}

    /** A layer whose time cannot be had, and why. */
    private record Failed(BlendLayers.Layer layer, Taken.Time time, Shortfall why) {}

    private static Optional<Failed> first(BlendLayers dealt, BurstTime burst, boolean stills) {
        for (BlendLayers.Layer layer : dealt.layers()) {
            if (layer.taken() instanceof Taken.Time time) {
                Optional<Shortfall> why = stills ? Optional.empty() : burst.shortfall(time);
                if (why.isPresent()) {
                    return Optional.of(new Failed(layer, time, why.get()));
                }
            }
        }
        return Optional.empty();
    }

    /** The first region whose time cannot be had; null when all can. */
    static JsonObject conflict(BlendLayers dealt, BurstTime burst, boolean stills) {
        Failed failed = first(dealt, burst, stills).orElseThrow();
        JsonObject conflict = new JsonObject();
        conflict.put("regions", new JsonArray(failed.layer.regions()));
        conflict.put("wantedSeconds", failed.time.seconds());
        double after = Math.max(0, burst.seconds() - failed.time.fromSeconds());
        String wanted = words(failed.time.seconds()) + " wished for " + String.join(", ", failed.layer.regions());
        switch (failed.why) {
            case BURST_TOO_SHORT -> {
                conflict.put("longestSeconds", Json.number(after));
                String opens = failed.time.fromSeconds() > 0 ? ", " + words(after) + " of it after it opens" : "";
                conflict.put("text", "the frames span " + words(burst.seconds()) + opens + ", less than the " + wanted);
            }
            case FRAMES_TOO_LONG -> {
                conflict.put("shortestSeconds", Json.number(burst.exposureSeconds()));
                conflict.put(
                        "text",
                        "every frame was exposed for " + words(burst.exposureSeconds()) + ", longer than the "
                                + wanted);
            }
            case FRAMES_TOO_SPARSE -> {
                conflict.put("spacingSeconds", Json.number(burst.spacingSeconds()));
                conflict.put(
                        "text",
                        "the frames are snapshots " + words(burst.spacingSeconds()) + " apart, too few for the "
                                + wanted);
            }
        }
        return conflict;
    }

    /** The ways out; none when every time can be had. */
    static JsonArray of(BlendLayers dealt, BurstTime burst, boolean stills) {
        JsonArray ways = new JsonArray();
        Optional<Failed> failed = first(dealt, burst, stills);
        if (failed.isEmpty()) {
            return ways;
        }
        double wanted = failed.get().time.seconds();
        if (failed.get().why == Shortfall.FRAMES_TOO_LONG) {
            way(ways, "frame", burst.exposureSeconds(), "take one frame: " + words(burst.exposureSeconds()));
            way(ways, "shorter", wanted, "take frames of " + words(wanted) + " or shorter");
            return ways;
        }
        if (failed.get().why == Shortfall.FRAMES_TOO_SPARSE) {
            way(ways, "whole", burst.seconds(), "give it all frames: they keep more texture than one exposure would");
            way(ways, "clip", wanted, "film a clip or a burst without gaps of " + words(wanted));
            return ways;
        }
        way(ways, "whole", burst.seconds(), "give it the whole burst: " + words(burst.seconds()));
        JsonObject film = way(
                ways,
                "longer",
                wanted,
                "take " + burst.frames(wanted) + " frames in one go at this rate, " + words(wanted)
                        + ", with exposure and focus locked");
        film.put("frames", burst.frames(wanted));
        way(
                ways,
                "preview",
                wanted,
                "look at a likely picture of it: preview --time "
                        + ShutterTime.words(wanted).replace(" ", "") + "; it is no record of what was there");
        return ways;
    }

    private static JsonObject way(JsonArray ways, String kind, double seconds, String text) {
        JsonObject way = new JsonObject();
        way.put("kind", kind);
        way.put("seconds", seconds);
        way.put("text", text);
        ways.add(way);
        return way;
    }

    private static String words(double seconds) {
        return ShutterTime.words(seconds);
    }
}
