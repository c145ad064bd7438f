package ebblight.app.demo;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.demo.Card;
import ebblight.demo.Coast;
import ebblight.demo.Filter;
import ebblight.demo.Sensor;
import ebblight.demo.View;
import ebblight.imaging.ClipWriter;
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
    static final int FRAMES_IN_SHOT = 5;
    static final double SHOT_SECONDS = FRAMES_IN_SHOT / FRAMES_PER_SECOND;

    /** When the clip begins: local time of an invented day. */
    static final LocalDateTime BEGINS = LocalDateTime.of(2027, 1, 14, 17, 15, 0);

    /** Exposures of the burst that are rendered side by side; a divisor of their number. */
    private static final int SHOTS_AT_ONCE = 4;

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

    /** Writes the clip to the file {@code clip} and the frames of the burst into the folder {@code burst}. */
    void write(Path clip, Path burst, Work work) throws IOException {
        Files.createDirectories(burst);
        int shots = FRAMES / FRAMES_IN_SHOT;
        try (ClipWriter writer = ClipWriter.begin(clip, view.width(), view.height(), FRAMES_PER_SECOND)) {
            for (int from = 0; from < shots; from += SHOTS_AT_ONCE) {
                work.progress((double) from / shots, "filming the evening");
                int first = from;
                Failure failure = new Failure();
                byte[][] frames = new byte[SHOTS_AT_ONCE * FRAMES_IN_SHOT][];
                work.forEach(SHOTS_AT_ONCE, k -> failure.guard(() -> shot(first + k, frames, k, burst)));
                failure.raise();
                for (byte[] frame : frames) {
                    writer.add(frame);
                }
            }
            writer.commit();
        }
    }

    /** Renders one frame of the burst and, on the way, the frames of the clip that it is made of. */
    private void shot(int shot, byte[][] frames, int batch, Path burst) throws IOException {
        RgbPicture light = RgbPicture.black(view.width(), view.height());
        for (int k = 0; k < FRAMES_IN_SHOT; k++) {
            int i = shot * FRAMES_IN_SHOT + k;
            RgbPicture frame = view.frame(i / FRAMES_PER_SECOND);
            add(frame, light, 1f / FRAMES_IN_SHOT);
            frames[batch * FRAMES_IN_SHOT + k] = sensor.srgb8(frame, 1000L + i);
        }
        write(burst.resolve("TLG_" + (2001 + shot) + ".jpg"), light, FRAMES + shot, shot * SHOT_SECONDS);
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

    private void write(Path file, RgbPicture light, int number, double atSeconds) throws IOException {
        PictureFacts facts = new PictureFacts(
                OptionalDouble.of(SHOT_SECONDS),
                OptionalDouble.of(F_NUMBER),
                OptionalDouble.of(ISO),
                OptionalDouble.of(FOCAL_MILLIMETRES),
                Optional.of(BEGINS.plusNanos(Math.round(atSeconds * 1e9))),
                1,
                List.of(),
                Coast.NAME + ", invented: one frame of a burst");
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
