package ebblight.app.serve;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.PreviewPicture;
import ebblight.app.ask.SurveyRequest;
import ebblight.app.ask.Words;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.PreviewMeans;
import java.io.IOException;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/** Previews at screen size at the thirds of a stop from 1/8 s to 1024 s. */
final class PreviewNodes {

    static final int FIRST = -9;
    static final int LAST = 30;
    static final int WIDTH = 1280;

    private final SurveyRequest request;
    private @Nullable PreviewMeans means;

    PreviewNodes(SurveyRequest request) {
        this.request = request;
    }

    static double seconds(int node) {
        return Math.pow(2, node / 3.0);
    }

    /** The picture of an exposure of {@code seconds}, in linear sRGB light; {@code facts} receives the answer. */
    RgbPicture picture(double seconds, JsonObject asked, JsonObject facts, Work work) throws IOException {
        JsonObject answer = request.ask("preview/1", PreviewPicture.withPictures(asked, seconds + "s"), work);
        PreviewMeans known = means;
        if (known == null) {
            double[] times = new double[LAST - FIRST + 1];
            for (int k = 0; k < times.length; k++) {
                times[k] = seconds(FIRST + k);
            }
            known = PreviewMeans.of(
                    request.source(),
                    WIDTH,
                    times,
                    PreviewPicture.placements(answer),
                    request.frames().sourceIndices(),
                    request.frames().clip().width(),
                    work);
            means = known;
        }
        answer.remove("placements");
        facts.putAll(answer);
        return PreviewPicture.fromFrames(answer)
                ? known.at(seconds)
                : PreviewPicture.laidOver(known.ofAll(), request.blobs(), answer, request.frames(), work);
    }

    /** The same as a JPEG. */
    byte[] jpeg(double seconds, JsonObject asked, JsonObject facts, Work work) throws IOException {
        RgbPicture picture = picture(seconds, asked, facts, work);
        facts.put("width", picture.width());
        facts.put("height", picture.height());
        return JpegWriter.encode(
                CodedPicture.srgb(picture, work),
                PictureFacts.of(
                        request.source().facts(),
                        OptionalDouble.of(seconds),
                        1,
                        List.of(),
                        "Preview of an exposure of " + Words.time(seconds)));
    }
}
