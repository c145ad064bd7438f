package ebblight.app.report;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.SurveyRequest;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.util.Base64;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The pictures of a report as JPEG.
 *
 * @param frame one frame as it was taken
 * @param predicted the preview of the chosen time, full size
 * @param stacked the burst as one exposure
 * @param parts the view with its parts tinted
 * @param strips at the chosen time
 * @param clashStrips at the time between
 */
public record ReportPictures(
        byte[] frame, byte[] predicted, byte[] stacked, byte[] parts, TestStrips strips, TestStrips clashStrips) {

    /** Makes the pictures that come from the survey; the others are given. */
    public static ReportPictures of(
            byte[] frame,
            byte[] predicted,
            byte[] stacked,
            SurveyRequest survey,
            JsonObject measured,
            double chosenSeconds,
            double betweenSeconds,
            Work work)
            throws IOException {
        byte[] map = survey.blobs().get("regions").orElseThrow(() -> new IOException("no parts were asked for"));
        int w = survey.frames().clip().width();
        int h = survey.frames().clip().height();
        RgbPicture middle = RgbPicture.black(w, h);
        for (int c = 0; c < 3; c++) {
            survey.frames().clip().channel(survey.frames().clip().frames() / 2, c, middle.plane(c));
        }
        return new ReportPictures(
                frame,
                predicted,
                stacked,
                jpeg(SoftParts.tinted(middle, map, measured.getArray("regions")), work),
                TestStrips.of(survey, measured, chosenSeconds, work),
                TestStrips.of(survey, measured, betweenSeconds, work));
    }

    /** A picture in linear light as JPEG. */
    static byte[] jpeg(RgbPicture picture, Work work) throws IOException {
        return jpeg(CodedPicture.srgb(picture, work));
    }

    /** A coded picture as JPEG. */
    public static byte[] jpeg(CodedPicture picture) throws IOException {
        return JpegWriter.encode(
                picture, PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), "From the report"));
    }

    /** A JPEG as an address that needs no file. */
    static String address(byte[] jpeg) {
        return "data:image/jpeg;base64," + Base64.getEncoder().encodeToString(jpeg);
    }
}
