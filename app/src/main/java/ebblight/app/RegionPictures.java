package ebblight.app;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.app.ask.SurveyRequest;
import ebblight.core.motion.Clip;
import ebblight.imaging.GreyPng;
import ebblight.imaging.Srgb;
import ebblight.imaging.SurveyFrames;
import ebblight.imaging.ViewCut;
import java.io.IOException;
import java.nio.file.Path;

/** The parts of a measured view as pictures. */
final class RegionPictures {

    /** Tints of fixed, drifting, flowing and swaying parts: none, sand, sea, moss. */
    private static final int[][] TINTS = {{128, 128, 128}, {214, 190, 140}, {70, 130, 165}, {120, 150, 70}};

    private final SurveyRequest request;
    private final JsonObject answer;

    RegionPictures(SurveyRequest request, JsonObject answer) {
        this.request = request;
        this.answer = answer;
    }

    private byte[] map() {
        return request.blobs().get("regions").orElseGet(() -> new byte[0]);
    }

    /** Writes the index of the part at every pixel of the source; what was not surveyed takes its neighbour's. */
    void writeMap(Path target) throws IOException {
        SurveyFrames frames = request.frames();
        int w = frames.sourceWidth();
        int h = frames.sourceHeight();
        ViewCut cut = frames.cut();
        int sw = cut.width();
        int sh = cut.height();
        byte[] map = map();
        if (map.length == 0) {
            throw new IOException(target + ": there are no parts to write; "
                    + answer.getArray("warnings").getString(0));
        }
        byte[] full = new byte[w * h];
        for (int y = 0; y < h; y++) {
            int v = within((int) ((y + 0.5) * cut.wholeHeight() / h) - cut.top(), sh);
            for (int x = 0; x < w; x++) {
                full[y * w + x] = map[v * sw + within((int) ((x + 0.5) * cut.wholeWidth() / w) - cut.left(), sw)];
            }
        }
        GreyPng.write(target, full, w, h);
    }

    private static int within(int index, int size) {
        return Math.max(0, Math.min(size - 1, index));
    }

    /** Writes the middle survey frame, its parts tinted and outlined. */
    void writePicture(Path target) throws IOException {
        Clip clip = request.frames().clip();
        int w = clip.width();
        int h = clip.height();
        byte[] map = map();
        JsonArray regions = answer.getArray("regions");
        float[][] planes = new float[3][w * h];
        for (int c = 0; c < 3; c++) {
            clip.channel(clip.frames() / 2, c, planes[c]);
        }
        byte[] rgb = new byte[3 * w * h];
        for (int p = 0; p < w * h; p++) {
            int region = map.length > 0 ? map[p] & 0xFF : -1;
            int kind = region < 0 ? 0 : kind(regions.getObject(region).getString("kind"));
            boolean edge =
                    region >= 0 && ((p % w < w - 1 && map[p + 1] != map[p]) || (p + w < w * h && map[p + w] != map[p]));
            for (int c = 0; c < 3; c++) {
                double v = planes[c][p];
                double code = 255 * Srgb.code(v);
                double mixed = kind == 0 ? code : 0.72 * code + 0.28 * TINTS[kind][c];
                rgb[3 * p + c] = (byte) Math.max(0, Math.min(255, Math.round(edge ? 255 : mixed)));
            }
        }
        GreyPng.writeColour(target, rgb, w, h);
    }

    private static int kind(String word) {
        return switch (word) {
            case "drifting" -> 1;
            case "flowing" -> 2;
            case "swaying" -> 3;
            default -> 0;
        };
    }
}
