package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.SurveyRequest;
import ebblight.core.numeric.Work;
import ebblight.imaging.Inputs;
import ebblight.imaging.SurveyReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.IntConsumer;
import org.jspecify.annotations.Nullable;

/**
 * One clip or folder of frames, read once and kept for the questions that follow. The engine keeps the work it was first
 * given; so it is given this one, which stands in for whichever job is asking now.
 */
final class Reading implements Work {

    private final String identity;
    private final List<Path> frames;
    private final double framesPerSecond;
    private volatile Work now = Work.alone();
    private @Nullable SurveyRequest request;
    private @Nullable PreviewNodes nodes;

    Reading(String identity, List<Path> frames, double framesPerSecond) {
        this.identity = identity;
        this.frames = frames;
        this.framesPerSecond = framesPerSecond;
    }

    String identity() {
        return identity;
    }

    /** The rate that was given; 0 when the frames say it. */
    double framesPerSecond() {
        return framesPerSecond;
    }

    /** Lets {@code job} be the one that is told and that may stop the work. */
    void serve(Work job) {
        now = job;
    }

    SurveyRequest request() throws IOException {
        SurveyRequest known = request;
        if (known == null) {
            known = SurveyRequest.read(
                    Inputs.open(frames, framesPerSecond, true), SurveyReader.SURVEY_WIDTH, null, this);
            request = known;
        }
        return known;
    }

    JsonObject ask(String schema, JsonObject more) throws IOException {
        return request().ask(schema, more, this);
    }

    PreviewNodes nodes() throws IOException {
        PreviewNodes known = nodes;
        if (known == null) {
            known = new PreviewNodes(request(), identity);
            nodes = known;
        }
        return known;
    }

    @Override
    public boolean cancelled() {
        return now.cancelled();
    }

    @Override
    public void progress(double fraction, String stage) {
        now.progress(fraction, stage);
    }

    @Override
    public void forEach(int n, IntConsumer body) {
        now.forEach(n, body);
    }
}
