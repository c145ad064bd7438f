package ebblight.checks;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import ebblight.app.demo.DemoOuting;
import ebblight.core.motion.Clip;
import ebblight.core.motion.Kind;
import ebblight.core.motion.Measurement;
import ebblight.core.motion.Preview;
import ebblight.core.motion.RegionModel;
import ebblight.core.motion.Strokes;
import ebblight.core.motion.ViewSurvey;
import ebblight.core.numeric.Work;
import ebblight.demo.Coast;
import ebblight.demo.Sensor;
import ebblight.demo.View;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.TiffWriter;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;

/** The demo's evening, small, filmed at ten frames a second through its sensor. */
final class FilmedEvening {

    static final double FRAMES_PER_SECOND = 10;

    private final View view;
    private final List<byte[]> frames = new ArrayList<>();

    FilmedEvening(int width, int count) {
        view = Coast.evening().view(width, Work.alone());
        Sensor sensor = new Sensor(100);
        for (int i = 0; i < count; i++) {
            frames.add(sensor.srgb8(view.frame(i / FRAMES_PER_SECOND), 1000L + i));
        }
    }

    View view() {
        return view;
    }

    /** Writes the frames into a folder, without loss. */
    void write(Path folder) throws IOException {
        for (int i = 0; i < frames.size(); i++) {
            CodedPicture picture = CodedPicture.srgb8(view.width(), view.height(), frames.get(i));
            PictureFacts facts =
                    PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "frame " + (1000 + i));
            TiffWriter.write(folder.resolve("f" + (1000 + i) + ".tif"), picture, facts, Work.alone());
        }
    }

    /** The first {@code count} frames. */
    Clip clip(int count) {
        double[] times = new double[count];
        for (int i = 0; i < count; i++) {
            times[i] = i / FRAMES_PER_SECOND;
        }
        return Clip.of(view.width(), view.height(), times, frames.subList(0, count), Clip.Coding.SRGB8);
    }

    /** Previews from the first {@code count} frames. */
    Preview previews(int count) throws Exception {
        Clip clip = clip(count);
        ViewSurvey survey = ViewSurvey.of(clip, strokes(), RegionModel.standard(), Work.alone());
        return Measurement.of(survey, Work.alone()).preview(Work.alone());
    }

    /** The lines that the demo draws over its own clip. */
    private static Strokes strokes() throws Exception {
        List<Strokes.Stroke> strokes = new ArrayList<>();
        try (InputStream in = DemoOuting.class.getResourceAsStream("strokes.json")) {
            for (Object one :
                    JsonParser.object().from(Objects.requireNonNull(in)).getArray("strokes")) {
                JsonObject stroke = (JsonObject) one;
                List<Strokes.Point> points = new ArrayList<>();
                for (Object point : stroke.getArray("points")) {
                    JsonArray xy = (JsonArray) point;
                    points.add(new Strokes.Point(xy.getDouble(0), xy.getDouble(1)));
                }
                strokes.add(new Strokes.Stroke(kind(stroke.getString("kind")), points));
            }
        }
        return new Strokes(strokes);
    }

    private static Kind kind(String word) {
        for (Kind kind : Kind.values()) {
            if (kind.word().equals(word)) {
                return kind;
            }
        }
        throw new IllegalArgumentException(word);
    }
}
