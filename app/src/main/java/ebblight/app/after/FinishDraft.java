package ebblight.app.after;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonWriter;
import ebblight.core.numeric.Quantiles;
import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.FrameFacts;
import ebblight.imaging.IccProfile;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.LightPicture;
import ebblight.imaging.PictureFacts;
import ebblight.imaging.PictureNotes;
import ebblight.imaging.finish.Colours;
import ebblight.imaging.finish.Finish;
import ebblight.imaging.finish.Finished;
import ebblight.imaging.finish.Finisher;
import ebblight.imaging.finish.OwnColour;
import ebblight.imaging.finish.PartTones;
import ebblight.imaging.print.PrinterProfile;
import ebblight.imaging.print.Resized;
import ebblight.imaging.print.SoftProof;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A picture at the size of a screen, on which a finish is tried before it is made at full size. Grain is left in: at this
 * size it is averaged away already.
 */
public final class FinishDraft {

    /** Longer side of the draft, in pixels. */
    private static final int SIDE = 1280;

    private static final int QUALITY = 90;
    /** Steps of the tablet, half a stop each from 2½ stops over middle grey down; the last holds all that is darker. */
    private static final int STEPS = 16;

    private static final double LIGHTEST_STOPS = 2.5;
    private static final double MIDDLE_GREY = 0.18;
    /** Every so many pixels across and down count for the tones; neighbours say the same. */
    private static final int EVERY = 3;

    private final RgbPicture light;
    private final IccProfile profile;
    private final int fullWidth;
    private final int fullHeight;
    private final boolean grainKnown;
    private String laid = "";
    private RgbPicture base = RgbPicture.black(1, 1);

    private FinishDraft(LightPicture picture, RgbPicture light) {
        this.light = light;
        this.profile = picture.profile();
        this.fullWidth = picture.light().width();
        this.fullHeight = picture.light().height();
        this.grainKnown = picture.grain().isPresent();
    }

    /** Reads a picture and keeps it at the size of a screen. */
    public static FinishDraft read(Path file, Work work) throws IOException {
        work.progress(0, "reading " + file.getFileName());
        LightPicture picture = LightPicture.read(file, work);
        work.progress(0.7, "making it ready for the screen");
        RgbPicture full = picture.light();
        double scale = Math.min(1, (double) SIDE / Math.max(full.width(), full.height()));
        RgbPicture small = scale == 1
                ? full
                : Resized.to(
                        full,
                        Math.max(1, (int) Math.round(scale * full.width())),
                        Math.max(1, (int) Math.round(scale * full.height())),
                        work);
        return new FinishDraft(picture, small);
    }

    /** A draft as JPEG, and what is to be said of it. */
    public record Drawn(byte[] jpeg, JsonObject facts) {}

    /**
     * Draws the picture with a finish ({@code finish/1}).
     *
     * @param shares where the parts of the picture lie, when that is known
     */
    public synchronized Drawn draw(JsonObject document, Optional<PartShares> shares, Work work) throws IOException {
        Finish finish = FinishFile.read(document);
        JsonObject without = new JsonObject();
        without.putAll(document);
        without.put("grain", 0);
        Finish small = FinishFile.read(without);
        PartTones parts = PartTones.NONE;
        if (shares.isPresent() && !small.parts().isEmpty()) {
            parts = shares.get().tones(small.parts(), light.width(), light.height());
        }
        Finished finished = Finisher.finish(copy(light), profile, Optional.empty(), small, parts, work);
        JsonObject facts = new JsonObject();
        facts.put("schema", "draft/1");
        facts.put("fullWidth", fullWidth);
        facts.put("fullHeight", fullHeight);
        facts.put("keptWidth", (int) Math.round((double) finished.picture().width() / light.width() * fullWidth));
        facts.put("keptHeight", (int) Math.round((double) finished.picture().height() / light.height() * fullHeight));
        facts.put("pictureCentimetres", finish.pictureCentimetres().orElse(null));
        facts.put("grainKnown", grainKnown);
        facts.put("done", new JsonArray(finished.done()));
        float[] luminance = luminance(finished.picture());
        facts.put("steps", steps(luminance));
        facts.put("colours", colours(document, finished, luminance, work));
        facts.put("parts", shares.isPresent() ? parts(document, shares.get(), luminance, work) : new JsonArray());
        return new Drawn(jpeg(finished.picture(), "Draft of a finish"), facts);
    }

    private static byte[] jpeg(CodedPicture picture, String description) throws IOException {
        PictureFacts facts = PictureFacts.of(FrameFacts.none(), OptionalDouble.empty(), 1, List.of(), description);
        return JpegWriter.encode(picture, facts, PictureNotes.NONE, QUALITY);
    }

    /** Draws the picture as a printer will show it. */
    public Drawn proof(PrinterProfile printer, PrinterProfile.Intent intent, Work work) throws IOException {
        SoftProof proof = SoftProof.of(CodedPicture.of(light, profile, work), printer, intent, work);
        JsonObject facts = ProofDocument.of(printer, intent, proof);
        return new Drawn(jpeg(proof.picture(work), "Proof on " + printer.name()), facts);
    }

    private static RgbPicture copy(RgbPicture picture) {
        RgbPicture copy = RgbPicture.black(picture.width(), picture.height());
        for (int c = 0; c < 3; c++) {
            System.arraycopy(picture.plane(c), 0, copy.plane(c), 0, picture.plane(c).length);
        }
        return copy;
    }

    private float[] luminance(CodedPicture picture) {
        Colours space = Colours.of(profile);
        float[] linear = picture.profile().curve().table(16);
        float[] y = new float[picture.width() * picture.height()];
        for (int p = 0; p < y.length; p++) {
            y[p] = (float) space.luminance(
                    linear[picture.code(3 * p)], linear[picture.code(3 * p + 1)], linear[picture.code(3 * p + 2)]);
        }
        return y;
    }

    private static double stops(double luminance) {
        return Math.log(Math.max(1e-6, luminance) / MIDDLE_GREY) / Math.log(2);
    }

    /** Share of the picture in each step of the tablet, from the lightest down. */
    private static JsonArray steps(float[] luminance) {
        int[] counts = new int[STEPS];
        for (float y : luminance) {
            int step = (int) Math.floor((LIGHTEST_STOPS - stops(y)) * 2 + 0.5);
            counts[Math.max(0, Math.min(STEPS - 1, step))]++;
        }
        JsonArray shares = new JsonArray();
        for (int count : counts) {
            shares.add((double) count / luminance.length);
        }
        return shares;
    }

    /** The picture's own colours, each with the middle tone that it has in the draft, in stops from middle grey. */
    private JsonArray colours(JsonObject document, Finished finished, float[] luminance, Work work) {
        JsonArray told = FinishFile.colours(finished.colours());
        if (told.isEmpty()) {
            return told;
        }
        RgbPicture untouched = base(document, work);
        List<OwnColour> colours = finished.colours();
        Colours space = Colours.of(profile);
        double[][] tones =
                new double[colours.size()][luminance.length / (EVERY * EVERY) + luminance.length / EVERY + 1];
        int[] counts = new int[colours.size()];
        double[] lab = new double[3];
        for (int y = 0; y < untouched.height(); y += EVERY) {
            for (int x = 0; x < untouched.width(); x += EVERY) {
                int p = y * untouched.width() + x;
                space.toLab(untouched.red()[p], untouched.green()[p], untouched.blue()[p], lab);
                int of = nearest(lab, colours);
                tones[of][counts[of]++] = stops(luminance[p]);
            }
        }
        for (int k = 0; k < colours.size(); k++) {
            Double tone = counts[k] == 0 ? null : Quantiles.median(tones[k], counts[k]);
            told.getObject(k).put("toneStops", tone);
        }
        return told;
    }

    private JsonArray parts(JsonObject document, PartShares shares, float[] luminance, Work work) {
        double[] stops = new double[luminance.length];
        for (int p = 0; p < stops.length; p++) {
            stops[p] = stops(luminance[p]);
        }
        Finish placed = FinishFile.read(only(document, "level", "crop"));
        return DraftParts.of(shares, placed, light.width(), light.height(), stops, work);
    }

    /** A finish with some of its steps alone. */
    private static JsonObject only(JsonObject document, String... steps) {
        JsonObject some = new JsonObject();
        some.put("schema", "finish/1");
        for (String step : steps) {
            if (document.has(step)) {
                some.put(step, document.get(step));
            }
        }
        return some;
    }

    /** The picture levelled, cropped and exposed as the finish says, and no more: what its colours are found on. */
    private RgbPicture base(JsonObject document, Work work) {
        JsonObject before = only(document, "level", "crop", "exposure");
        String asked = JsonWriter.string(before);
        if (!asked.equals(laid)) {
            CodedPicture coded = Finisher.finish(copy(light), profile, Optional.empty(), FinishFile.read(before), work)
                    .picture();
            float[] linear = profile.curve().table(16);
            base = RgbPicture.black(coded.width(), coded.height());
            for (int i = 0; i < coded.codes().length; i++) {
                base.plane(i % 3)[i / 3] = linear[coded.code(i)];
            }
            laid = asked;
        }
        return base;
    }

    /** Lightness counts a quarter, as where the colours are found. */
    private static int nearest(double[] lab, List<OwnColour> colours) {
        int best = 0;
        double least = Double.MAX_VALUE;
        for (int k = 0; k < colours.size(); k++) {
            OwnColour each = colours.get(k);
            double dl = (lab[0] - each.lightness()) / 4;
            double da = lab[1] - each.a();
            double db = lab[2] - each.b();
            double far = dl * dl + da * da + db * db;
            if (far < least) {
                least = far;
                best = k;
            }
        }
        return best;
    }
}
