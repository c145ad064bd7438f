package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.SurveyRequest;
import ebblight.core.motion.Clip;
import ebblight.core.numeric.Work;
import ebblight.imaging.AlignOn;
import ebblight.imaging.FrameSource;
import ebblight.imaging.SurveyReader;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;

/**
 * What frames are laid over each other by: the parts that were measured to stand still, or the whole picture where that
 * cannot be told.
 *
 * @param alignOn the parts
 * @param warning why it is the whole picture; empty when it is not
 */
record StillParts(AlignOn alignOn, String warning) {

    private static final int LEAST_FRAMES = 5;
    /** Share of the picture below which too little stands still to hold the frames by. */
    private static final double LEAST_AREA = 0.03;

    static StillParts measured(FrameSource source, Work work) throws IOException {
        if (source.mostFrames() < LEAST_FRAMES) {
            return everything(LEAST_FRAMES + " frames or more are needed to tell what stands still");
        }
        SurveyRequest request;
        try {
            request = SurveyRequest.read(source, SurveyReader.SURVEY_WIDTH, null, work);
        } catch (UnreadableInputException e) {
            return everything(String.valueOf(e.getMessage()));
        }
        Clip clip = request.frames().clip();
        if (clip.frames() < LEAST_FRAMES) {
            return everything("only " + clip.frames() + " different frames, too few to tell what stands still");
        }
        JsonObject more = new JsonObject();
        more.put("regionsBlob", "regions");
        JsonArray regions = request.ask("measure/1", more, work).getArray("regions");
        byte[] map = request.blobs().get("regions").orElseGet(() -> new byte[0]);
        if (map.length == 0) {
            return everything("the camera moved too far for what stands still to be told");
        }
        float[] share = new float[map.length];
        double area = 0;
        for (int p = 0; p < map.length; p++) {
            share[p] = regions.getObject(map[p] & 0xFF).getString("kind").equals("fixed") ? 1 : 0;
            area += share[p] / map.length;
        }
        return area < LEAST_AREA
                ? everything("too little of the picture stands still")
                : new StillParts(new AlignOn(clip.width(), clip.height(), share), "");
    }

    private static StillParts everything(String why) {
        return new StillParts(
                AlignOn.everything(),
                "frames were laid over each other by the whole picture: " + why + "; check edges for doubling");
    }
}
