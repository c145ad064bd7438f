package ebblight.engine;

import ebblight.core.blend.BlendLayers;
import ebblight.core.blend.Taken;
import ebblight.core.exposure.ShutterTime;
import java.util.ArrayList;
import java.util.List;

/** Reads the parts of {@code blend/1}. */
final class BlendFields {

    /** Of an edge, as a fraction of the picture's width. */
    private static final double WIDEST = 0.1;

    private static final List<String> WAYS = List.of("time", "frame", "people", "trails");

    private BlendFields() {}

    static List<BlendLayers.Part> parts(Fields request) {
        List<BlendLayers.Part> parts = new ArrayList<>();
        for (Fields part : request.parts("parts")) {
            String region = part.text("region");
            List<String> given = WAYS.stream().filter(part::has).toList();
            if (given.size() != 1) {
                throw new RequestException(
                        part.path("region"),
                        "\"" + region + "\" must be given one of time, frame, people or trails, was given "
                                + (given.isEmpty() ? "none" : String.join(" and ", given)));
            }
            parts.add(new BlendLayers.Part(region, taken(part, given.get(0)), part.number("edge", 0, 0, WIDEST)));
        }
        if (parts.isEmpty()) {
            throw new RequestException(
                    "parts", "must name a region or more, such as {\"region\":\"flowing\",\"time\":\"8s\"}");
        }
        return parts;
    }

    private static Taken taken(Fields part, String way) {
        return switch (way) {
            case "time" -> time(part);
            case "frame" -> frame(part);
            case "people" -> {
                must(part, "people", "gone", "");
                yield new Taken.PeopleGone();
            }
            default -> {
                must(part, "trails", "joined", "");
                yield new Taken.TrailsJoined();
            }
        };
    }

    private static Taken time(Fields part) {
        double from = Checked.of(part.path("from"), () -> part.has("from") ? ShutterTime.parse(part.text("from")) : 0);
        return Checked.of(part.path("time"), () -> new Taken.Time(ShutterTime.parse(part.text("time")), from));
    }

    private static Taken frame(Fields part) {
        if (part.isNumber("frame")) {
            int number = part.whole("frame", 1);
            return Checked.of(part.path("frame"), () -> new Taken.Frame(number));
        }
        if (part.text("frame").equals("all")) {
            return new Taken.Whole();
        }
        must(part, "frame", "lull", ", \"all\" or the number of a frame, counted from 1");
        return new Taken.Lull();
    }

    private static void must(Fields part, String field, String word, String or) {
        if (!part.text(field).equals(word)) {
            throw new RequestException(
                    part.path(field), "must be \"" + word + "\"" + or + ", was \"" + part.text(field) + "\"");
        }
    }
}
