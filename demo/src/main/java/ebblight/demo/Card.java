package ebblight.demo;

import static ebblight.demo.Shot.Composition.ARCH;
import static ebblight.demo.Shot.Composition.CAP;
import static ebblight.demo.Shot.Composition.COVE;
import static ebblight.demo.Shot.Composition.POSTS;

import ebblight.core.exposure.ThirdStops;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.demo.Shot.Composition;
import ebblight.demo.Shot.Note;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * The card that the photographer brings home from the evening: variants of two compositions, pairs with and without a
 * filter of known density and cast, darks, a burst, one shaken and one mis-set frame, dust and hot pixels. What is
 * wrong with each is known.
 */
public final class Card {

    /** Width of the frames in pixels; they are 3:2. */
    public static final int WIDTH = 720;

    /** What the meter said at the start, without a filter: the setting at which the scene's white is the file's. */
    public static final double METER_SECONDS = 0.125;

    public static final double METER_F_NUMBER = 11;

    private static final double FRAMES_PER_SECOND = 4;
    /** Frames by which an exposure of any length is made, so that a minute does not cost a minute's frames. */
    private static final double FRAMES_AT_MOST = 40;
    /** Half the way that the camera was moved in the shaken frame, fraction of the width. */
    private static final double SHAKE_WIDTHS = 0.0035;

    private static final int SHAKE_STEPS = 9;
    private static final int BURST = 12;
    private static final double BURST_SECONDS = 0.5;

    private final Map<Composition, View> views = new EnumMap<>(Composition.class);
    private final int width;
    private final int height;
    private final Flaws flaws;

    public Card(Coast coast, Work work) {
        this(coast, WIDTH, work);
    }

    /** A card whose frames are {@code width} pixels wide. */
    public Card(Coast coast, int width, Work work) {
        views.put(COVE, coast.view(width, work));
        views.put(ARCH, coast.archView(width, work));
        views.put(POSTS, coast.postsView(width, work));
        this.width = width;
        height = width * 2 / 3;
        flaws = new Flaws(width, height, 41);
    }

    /** All frames in the order in which they were taken. */
    public static List<Shot> shots() {
        List<Shot> shots = new ArrayList<>();
        Optional<Filter> none = Optional.empty();
        Optional<Filter> three = Optional.of(Filter.THREE);
        Optional<Filter> six = Optional.of(Filter.SIX);
        Optional<Filter> ten = Optional.of(Filter.TEN);
        shots.add(new Shot("TLG_0101", COVE, 0, 1.0 / 8, 11, 100, none, Note.GOOD));
        shots.add(new Shot("TLG_0102", COVE, 20, 8, 11, 100, six, Note.GOOD));
        shots.add(new Shot("TLG_0103", COVE, 40, 16, 16, 100, six, Note.GOOD));
        shots.add(new Shot("TLG_0104", COVE, 70, 1, 11, 100, three, Note.GOOD));
        shots.add(new Shot("TLG_0105", COVE, 82, 8, 11, 100, six, Note.SHAKEN));
        shots.add(new Shot("TLG_0106", COVE, 100, 8, 11, 1600, six, Note.MIS_SET));
        shots.add(new Shot("TLG_0107", COVE, 120, 64, 8, 100, ten, Note.GOOD));
        shots.add(new Shot("TLG_0108", ARCH, 240, 1.0 / 8, 11, 100, none, Note.GOOD));
        shots.add(new Shot("TLG_0109", ARCH, 250, 8, 11, 100, six, Note.GOOD));
        shots.add(new Shot("TLG_0110", ARCH, 270, 1, 11, 100, three, Note.GOOD));
        shots.add(new Shot("TLG_0111", ARCH, 280, 64, 8, 100, ten, Note.GOOD));
        for (int i = 0; i < BURST; i++) {
            String name = "TLG_0" + (112 + i);
            shots.add(new Shot(name, COVE, 380 + i * BURST_SECONDS, BURST_SECONDS, 8, 100, three, Note.BURST));
        }
        for (int i = 0; i < 4; i++) {
            double seconds = i < 2 ? 8 : 64;
            shots.add(new Shot("TLG_0" + (112 + BURST + i), CAP, 420 + 70 * i, seconds, 11, 100, none, Note.DARK));
        }
        return shots;
    }

    /**
     * Another card: every composition is worked at twice, in an order, with times, filters and mishaps that are drawn by
     * lot. A visit begins with a test frame; of its good frames the longest is the best one.
     */
    public static List<Shot> mixed(long seed) {
        Dice dice = new Dice(seed);
        List<Shot> shots = new ArrayList<>();
        double clock = 0;
        List<Composition> order = List.of(COVE, POSTS, ARCH);
        int first = (int) dice.uniform(0, order.size());
        for (int visit = 0; visit < order.size(); visit++) {
            Composition composition = order.get((first + visit) % order.size());
            List<Shot> taken = visit(composition, dice);
            for (Shot shot : taken) {
                String name = "TLG_" + (1000 + shots.size());
                shots.add(shot.at(name, clock));
                clock += Math.rint(shot.exposureSeconds() + dice.uniform(4, 15));
            }
            clock += Math.rint(dice.uniform(60, 240));
        }
        return shots;
    }

    private static List<Shot> visit(Composition composition, Dice dice) {
        List<Shot> shots = new ArrayList<>();
        Optional<Filter> three = Optional.of(Filter.THREE);
        Optional<Filter> six = Optional.of(Filter.SIX);
        shots.add(new Shot("", composition, 0, METER_SECONDS, 11, 100, Optional.empty(), Note.GOOD));
        shots.add(new Shot("", composition, 0, 1, 11, 100, three, Note.GOOD));
        shots.add(new Shot("", composition, 0, 8, 11, 100, six, Note.GOOD));
        int bad = (int) dice.uniform(1, 3);
        shots.add(bad, new Shot("", composition, 0, 8, 11, 100, six, Note.SHAKEN));
        if (dice.uniform(0, 1) < 0.5) {
            shots.add(new Shot("", composition, 0, 8, 11, 1600, six, Note.MIS_SET));
        }
        if (dice.uniform(0, 1) < 0.5) {
            shots.add(new Shot("", composition, 0, 2, 16, 100, three, Note.GOOD));
        }
        return shots;
    }

    public Flaws flaws() {
        return flaws;
    }

    /** Height of the frames in pixels. */
    public int height() {
        return height;
    }

    /** Red, green, blue codes of a frame, pixel by pixel. */
    public byte[] srgb8(Shot shot, Work work) {
        RgbPicture light = light(shot, work);
        if (shot.note() == Note.SHAKEN) {
            light = shaken(light);
        }
        flaws.shade(light, shot.fNumber());
        flaws.heat(light, shot.exposureSeconds(), shot.isoSpeed());
        long seed = Math.round(shot.opensSeconds() * 1000) + 77;
        return new Sensor(shot.isoSpeed()).srgb8(light, seed);
    }

    /** What falls on the sensor, times its speed; white = 1. */
    private RgbPicture light(Shot shot, Work work) {
        if (shot.composition() == Composition.CAP) {
            return RgbPicture.black(width, height);
        }
        double seconds = shot.exposureSeconds();
        View view = Objects.requireNonNull(views.get(shot.composition()), "view");
        double perSecond = Math.min(FRAMES_PER_SECOND, FRAMES_AT_MOST / seconds);
        RgbPicture mean = view.exposure(shot.opensSeconds(), seconds, perSecond, work);
        double aperture = ThirdStops.exactFNumber(METER_F_NUMBER) / ThirdStops.exactFNumber(shot.fNumber());
        double gain = seconds / METER_SECONDS * aperture * aperture * shot.isoSpeed() / 100;
        for (int c = 0; c < 3; c++) {
            int channel = c;
            float passes =
                    (float) (gain * shot.filter().map(f -> f.passes(channel)).orElse(1.0));
            float[] plane = mean.plane(c);
            for (int p = 0; p < plane.length; p++) {
                plane[p] *= passes;
            }
        }
        return mean;
    }

    /** A short arc of the camera, most of the time at its ends. */
    private static RgbPicture shaken(RgbPicture still) {
        int w = still.width();
        int h = still.height();
        RgbPicture moved = RgbPicture.black(w, h);
        for (int s = 0; s < SHAKE_STEPS; s++) {
            double turn = Math.PI * s / (SHAKE_STEPS - 1);
            int dx = (int) Math.rint(SHAKE_WIDTHS * w * StrictMath.cos(turn));
            int dy = (int) Math.rint(SHAKE_WIDTHS * w * 0.6 * StrictMath.sin(turn));
            for (int c = 0; c < 3; c++) {
                float[] from = still.plane(c);
                float[] to = moved.plane(c);
                for (int y = 0; y < h; y++) {
                    int row = Math.max(0, Math.min(h - 1, y + dy)) * w;
                    for (int x = 0; x < w; x++) {
                        to[y * w + x] += from[row + Math.max(0, Math.min(w - 1, x + dx))] / SHAKE_STEPS;
                    }
                }
            }
        }
        return moved;
    }
}
