package ebblight.engine;

import com.grack.nanojson.JsonArray;
import ebblight.core.motion.Clip;
import ebblight.core.motion.Kind;
import ebblight.core.motion.Measurement;
import ebblight.core.motion.Preview;
import ebblight.core.motion.RegionModel;
import ebblight.core.motion.Stills;
import ebblight.core.motion.Strokes;
import ebblight.core.motion.ViewSurvey;
import ebblight.core.motion.Worth;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Surveys of the frames that requests name. The last one is kept, so that measuring, wishing and previewing the same
 * frames takes the work once.
 */
final class Surveys {

    private static final double LONGEST_SECONDS = 86_400;

    private @Nullable Kept last;

    /** What was asked about: these very arrays, seen at these times, with these strokes. */
    private record Asked(List<byte[]> frames, int width, List<Double> times, String exposures, Strokes strokes) {
        boolean sameFrames(Asked other) {
            return frames.equals(other.frames)
                    && width == other.width
                    && times.equals(other.times)
                    && exposures.equals(other.exposures);
        }
    }

    /** One surveyed set of frames; measurement and preview are made when first asked for. */
    static final class Kept {
        private final Asked asked;
        private final ViewSurvey survey;
        private final Optional<Stills> stills;
        private final int[] used;
        private @Nullable Measurement measurement;
        private @Nullable Preview preview;
        private @Nullable List<Worth> worth;

        Kept(Asked asked, ViewSurvey survey, Optional<Stills> stills, int[] used) {
            this.asked = asked;
            this.survey = survey;
            this.stills = stills;
            this.used = used;
        }

        /** The exposure times, when frames of different ones were given instead of a clip. */
        Optional<Stills> stills() {
            return stills;
        }

        ViewSurvey survey() {
            return survey;
        }

        /** Which frame of the request frame {@code i} of the survey is. */
        int requestFrame(int i) {
            return used[i];
        }

        Measurement measurement(Work work) {
            Measurement known = measurement;
            if (known == null) {
                if (!survey.hasParts()) {
                    throw new RequestException(
                            "frames",
                            "the camera moved too far for anything to be measured; put it on something firm and film"
                                    + " again");
                }
                known = stills.isPresent() ? Measurement.of(survey, stills.get(), work) : Measurement.of(survey, work);
                measurement = known;
            }
            return known;
        }

        Preview preview(Work work) {
            Preview known = preview;
            if (known == null) {
                known = measurement(work).preview(work);
                preview = known;
            }
            return known;
        }

        /** What the listed times gain. */
        List<Worth> worth(Work work) {
            List<Worth> known = worth;
            if (known == null) {
                Worth.Meter meter = new Worth.Meter(measurement(work), preview(work));
                known = new ArrayList<>();
                for (double seconds : Measurement.listedSeconds()) {
                    work.check();
                    work.progress(0.8 + 0.015 * known.size(), "weighing what each time is worth");
                    known.add(meter.at(seconds));
                }
                worth = known;
            }
            return known;
        }
    }

    Kept of(Fields request, Blobs blobs, Work work) {
        Fields frames = request.part("frames");
        Strokes strokes = strokes(request);
        Clip clip = clip(frames, blobs);
        List<byte[]> bytes = new ArrayList<>();
        List<Double> times = new ArrayList<>();
        for (int i = 0; i < clip.frames(); i++) {
            bytes.add(clip.bytes(i));
            times.add(clip.timeSeconds(i));
        }
        double[] exposures = exposures(frames, clip.frames());
        Asked asked = new Asked(bytes, clip.width(), times, Arrays.toString(exposures), strokes);
        Kept known = last;
        if (known != null && known.asked.equals(asked)) {
            return known;
        }
        if (known != null && known.asked.sameFrames(asked)) {
            ViewSurvey drawn = known.survey.with(strokes, RegionModel.standard(), work);
            Kept made = new Kept(asked, drawn, known.stills, known.used);
            last = made;
            return made;
        }
        if (clip.frames() < 2) {
            throw new RequestException("frames", "only one frame: motion needs several frames of the same view");
        }
        Optional<Stills> stills = Stills.differ(exposures) ? Optional.of(Stills.of(exposures)) : Optional.empty();
        int[] used = IntStream.range(0, exposures.length)
                .filter(i -> stills.isEmpty() || exposures[i] > 0)
                .toArray();
        Clip surveyed = stills.isPresent() ? Stills.levelled(clip, exposures) : clip;
        Kept made = new Kept(asked, ViewSurvey.of(surveyed, strokes, RegionModel.standard(), work), stills, used);
        last = made;
        return made;
    }

    /** Exposure time of every frame, 0 where unknown. */
    static double[] exposures(Fields frames, int count) {
        if (!frames.has("exposureSeconds")) {
            return new double[count];
        }
        double[] seconds = frames.numbers("exposureSeconds");
        if (seconds.length != count) {
            throw new RequestException(
                    "frames.exposureSeconds", "must hold one number a frame, " + count + ", held " + seconds.length);
        }
        for (double each : seconds) {
            if (!(each >= 0 && each <= LONGEST_SECONDS)) {
                throw new RequestException(
                        "frames.exposureSeconds", "must be 0 (unknown) to 86400 s each, held " + each);
            }
        }
        return seconds;
    }

    static Clip clip(Fields frames, Blobs blobs) {
        double[] times = frames.numbers("timesSeconds");
        String name = frames.text("blob");
        List<byte[]> list = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            String each = name + "/" + i;
            list.add(blobs.get(each)
                    .orElseThrow(() -> new RequestException("frames.blob", "no bytes were given for " + each)));
        }
        Clip.Coding coding = coding(frames);
        return Checked.of(
                "frames", () -> Clip.of(frames.whole("width", 0), frames.whole("height", 0), times, list, coding));
    }

    private static Clip.Coding coding(Fields frames) {
        String coding = frames.text("coding", "srgb8");
        return switch (coding) {
            case "srgb8" -> Clip.Coding.SRGB8;
            case "linear16" -> Clip.Coding.LINEAR16;
            default ->
                throw new RequestException(frames.path("coding"), "must be srgb8 or linear16, was \"" + coding + "\"");
        };
    }

    private static Strokes strokes(Fields request) {
        if (!request.has("strokes")) {
            return Strokes.none();
        }
        Fields document = request.part("strokes");
        if (!document.text("schema", "strokes/1").equals("strokes/1")) {
            throw new RequestException("strokes.schema", "must be strokes/1");
        }
        List<Strokes.Stroke> strokes = new ArrayList<>();
        for (Fields stroke : document.parts("strokes")) {
            String word = stroke.text("kind").toLowerCase(Locale.ROOT);
            Kind kind = null;
            for (Kind k : Kind.values()) {
                kind = k.word().equals(word) ? k : kind;
            }
            if (kind == null) {
                throw new RequestException(
                        stroke.path("kind"), "must be fixed, flowing, drifting or swaying, was \"" + word + "\"");
            }
            Kind found = kind;
            double wide = stroke.number("width", 0, 0, 0.25);
            strokes.add(Checked.of(stroke.path("points"), () -> new Strokes.Stroke(found, points(stroke), wide)));
        }
        return new Strokes(strokes);
    }

    private static List<Strokes.Point> points(Fields stroke) {
        List<Strokes.Point> points = new ArrayList<>();
        for (Object row : stroke.rows("points")) {
            if (!(row instanceof JsonArray pair) || pair.size() != 2 || !pair.isNumber(0) || !pair.isNumber(1)) {
                throw new RequestException(stroke.path("points"), "must be pairs of numbers such as [0.1, 0.7]");
            }
            points.add(new Strokes.Point(pair.getDouble(0), pair.getDouble(1)));
        }
        return points;
    }

    /** Whether the request's frames are spaced frames rather than a clip. */
    static boolean spaced(Fields request) {
        return Clip.spaced(request.part("frames").number("medianGapSeconds", 0, 0, 1e9));
    }

    /** Pixels of the source for one survey pixel; {@code wholeWidth} when the frames are the middle of wider ones. */
    static double scale(Fields request) {
        Fields frames = request.part("frames");
        double width = frames.number("width");
        return frames.number("sourceWidth", width, 1, 1e8) / frames.number("wholeWidth", width, 1, 1e8);
    }
}
