package ebblight.app.demo;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.demo.Card;
import ebblight.demo.Coast;
import ebblight.demo.Filter;
import ebblight.demo.Sensor;
import ebblight.demo.View;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The clip and the burst of the evening: ten seconds filmed at ten frames a second, and the same ten seconds as twenty
 * exposures of half a second, each the sum of five of the clip's instants.
 */
final class Evening {

    static final int WIDTH = 960;
    static final int FRAMES = 100;
    static final double FRAMES_PER_SECOND = 10;
    static final double SECONDS = FRAMES / FRAMES_PER_SECOND;
    static final int FRAMES_IN_SHOT = 5;
    static final double SHOT_SECONDS = FRAMES_IN_SHOT / FRAMES_PER_SECOND;

    /** When the clip begins: local time of an invented day. */
    static final LocalDateTime BEGINS = LocalDateTime.of(2027, 1, 14, 17, 15, 0);

    private static final double SHUTTER_SECONDS = 1.0 / 60;
    private static final double F_NUMBER = 11;
    private static final double ISO = 100;
    private static final double FOCAL_MILLIMETRES = 28;

    private final View view;
    private final Sensor sensor = new Sensor(ISO);

    Evening(Coast coast, Work work) {
        view = coast.view(WIDTH, work);
    }

    /** What the meter said without a filter. */
    static String meter() {
        return "f/" + Math.round(Card.METER_F_NUMBER) + " 1/" + Math.round(1 / Card.METER_SECONDS) + " ISO"
                + Math.round(ISO);
    }

    /** Writes the frames of the clip into {@code clip} and those of the burst into {@code burst}. */
    void write(Path clip, Path burst, Work work) throws IOException {
        Files.createDirectories(clip);
        Files.createDirectories(burst);
        int shots = FRAMES / FRAMES_IN_SHOT;
        Failure failure = new Failure();
        work.forEach(shots, shot -> failure.guard(() -> shot(shot, clip, burst)));
        failure.raise();
    }

    private void shot(int shot, Path clip, Path burst) throws IOException {
        RgbPicture light = RgbPicture.black(view.width(), view.height());
        for (int k = 0; k < FRAMES_IN_SHOT; k++) {
            int i = shot * FRAMES_IN_SHOT + k;
            RgbPicture frame = view.frame(i / FRAMES_PER_SECOND);
            add(frame, light, 1f / FRAMES_IN_SHOT);
            String name = "TLG_" + (1001 + i) + ".jpg";
            write(clip.resolve(name), frame, i, i / FRAMES_PER_SECOND, SHUTTER_SECONDS, "one frame of the clip");
        }
        String name = "TLG_" + (2001 + shot) + ".jpg";
        write(burst.resolve(name), light, FRAMES + shot, shot * SHOT_SECONDS, SHOT_SECONDS, "one frame of the burst");
    }

    private static void add(RgbPicture from, RgbPicture to, float weight) {
        for (int c = 0; c < 3; c++) {
            float[] source = from.plane(c);
            float[] sum = to.plane(c);
            for (int p = 0; p < sum.length; p++) {
                sum[p] += weight * source[p];
            }
        }
    }

    private void write(Path file, RgbPicture light, int number, double atSeconds, double exposureSeconds, String what)
            throws IOException {
        PictureFacts facts = new PictureFacts(
                OptionalDouble.of(exposureSeconds),
                OptionalDouble.of(F_NUMBER),
                OptionalDouble.of(ISO),
                OptionalDouble.of(FOCAL_MILLIMETRES),
                Optional.of(BEGINS.plusNanos(Math.round(atSeconds * 1e9))),
                1,
                List.of(),
                Coast.NAME + ", invented: " + what);
        byte[] codes = sensor.srgb8(light, 1000L + number);
        JpegWriter.write(file, CodedPicture.srgb8(view.width(), view.height(), codes), facts);
    }

    /** The bag as the settings are asked for it: stops as engraved. */
    static List<String> bag() {
        List<String> bag = new ArrayList<>();
        for (Filter filter : Filter.BAG) {
            bag.add(Long.toString(Math.round(filter.nominalStops())));
        }
        return bag;
    }
}
