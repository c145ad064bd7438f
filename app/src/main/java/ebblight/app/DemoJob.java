package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.demo.DemoOuting;
import ebblight.app.demo.TrueExposure;
import ebblight.app.report.Compared;
import ebblight.app.report.Shown;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.engine.Engine;
import ebblight.imaging.FrameSource;
import ebblight.imaging.Inputs;
import ebblight.imaging.StackOptions;
import ebblight.imaging.StackResult;
import ebblight.imaging.Stacker;
import ebblight.imaging.SurveyReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** The whole job done on the demo's outing, from the clip to the stack, and how far each part is from the truth. */
final class DemoJob {

    /** What the photographer wants of the evening. */
    static final List<String> WISHES = List.of("water=softened", "cloud=streaked", "rock=sharp");

    /** The same with the cloud left as it is, which no one exposure can do. */
    static final List<String> CLASHING = List.of("water=softened", "cloud=sharp", "rock=sharp");

    private static final List<Double> TRUE_SECONDS = List.of(2.0, 8.0, 30.0, 60.0);

    final DemoOuting outing;
    final SurveyRequest survey;
    final JsonObject measured;
    final JsonObject wished;
    final JsonObject clashing;
    final TimeWanted wanted;
    final JsonObject settings;
    final List<Compared> compared;

    private DemoJob(
            DemoOuting outing,
            SurveyRequest survey,
            JsonObject measured,
            JsonObject wished,
            JsonObject clashing,
            TimeWanted wanted,
            JsonObject settings,
            List<Compared> compared) {
        this.outing = outing;
        this.survey = survey;
        this.measured = measured;
        this.wished = wished;
        this.clashing = clashing;
        this.wanted = wanted;
        this.settings = settings;
        this.compared = compared;
    }

    static DemoJob run(Path folder, Work work) throws IOException {
        DemoOuting outing = DemoOuting.write(folder, work);
        FrameSource clip = Inputs.open(List.of(outing.clip()), 0, true);
        SurveyRequest survey = SurveyRequest.read(clip, SurveyReader.SURVEY_WIDTH, outing.strokes(), work);
        JsonObject regions = new JsonObject();
        regions.put("regionsBlob", "regions");
        JsonObject measured = survey.ask("measure/1", regions, work);
        JsonObject wished = survey.ask("wish/1", wishes(WISHES), work);
        JsonObject clashing = survey.ask("wish/1", wishes(CLASHING), work);
        TimeWanted wanted = TimeWanted.of(wished);
        JsonObject settings = settings(wanted, outing.fadingStopsPerMinute(), work);
        TreeSet<Double> times = new TreeSet<>(TRUE_SECONDS);
        times.add(chosenSeconds(settings, wanted));
        List<Compared> compared = compare(survey, outing.expose(List.copyOf(times), work), work);
        return new DemoJob(outing, survey, measured, wished, clashing, wanted, settings, compared);
    }

    private static JsonObject wishes(List<String> typed) {
        JsonObject wishes = new JsonObject();
        wishes.put("wishes", new JsonArray(typed));
        return wishes;
    }

    private static JsonObject settings(TimeWanted wanted, double fading, Work work) {
        JsonObject request = new JsonObject();
        request.put("schema", "settings/1");
        request.put("meter", DemoOuting.meter());
        request.put("filters", new JsonArray(DemoOuting.bag()));
        request.put("fadingStopsPerMinute", fading);
        request.put("from", wanted.fromSeconds() + "s");
        request.put("to", wanted.toSeconds() + "s");
        return Asked.of(new Engine(), request, work);
    }

    /** The time of the first choice, or the shortest wanted when the bag reaches none. */
    static double chosenSeconds(JsonObject settings, TimeWanted wanted) {
        JsonArray choices = settings.getArray("choices");
        return choices.isEmpty() ? wanted.fromSeconds() : choices.getObject(0).getDouble("seconds");
    }

    private static List<Compared> compare(SurveyRequest survey, List<TrueExposure> truths, Work work) {
        List<Compared> compared = new ArrayList<>();
        for (TrueExposure truth : truths) {
            Shown shown = Shown.at(survey, truth.seconds(), work);
            RgbPicture inner = truth.without(shown.crop());
            compared.add(new Compared(
                    truth.seconds(),
                    shown.answer().getString("method"),
                    shown.answer().getDouble("knownFraction"),
                    shown.picture(),
                    inner,
                    TrueExposure.decibels(shown.picture(), inner),
                    TrueExposure.decibels(shown.mean(), inner)));
        }
        return compared;
    }

    /** Stacks the burst into one exposure of 16 bits, with the record that the command writes. */
    StackResult stack(Path target, Work work) throws IOException {
        FrameSource burst = Inputs.open(List.of(outing.burst()), 0, true);
        StackResult stack = Stacker.stack(burst, StackOptions.mean(), work);
        String[] typed = {"stack", "-o=" + target, "--", outing.burst().toString()};
        new TypedPictures().make(typed, work);
        return stack;
    }
}
