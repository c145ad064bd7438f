package ebblight.imaging.finish;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.IccProfile;
import ebblight.imaging.grain.Grain;
import ebblight.imaging.grain.GrainEstimate;
import java.util.List;
import java.util.Optional;

/**
 * Finishes pictures: the same bits for any number of threads. Besides the picture, three to five planes of its size are
 * held at a time: about 1 GB at 24 megapixels.
 */
public final class Finisher {

    private static final int TABLE = 1000;

    private final Finish finish;
    private final IccProfile profile;
    private final Colours space;
    private final PartTones parts;
    private final Work work;

    private Finisher(Finish finish, IccProfile profile, PartTones parts, Work work) {
        this.finish = finish;
        this.parts = parts;
        this.profile = profile;
        this.space = Colours.of(profile);
        this.work = work;
    }

    /**
     * Finishes a picture; its planes are used up.
     *
     * @param light linear light of the primaries of {@code profile}, in which the result is written too
     * @param measured noise of the picture, where it is known from the frames it was made of
     */
    public static Finished finish(
            RgbPicture light, IccProfile profile, Optional<Grain> measured, Finish finish, Work work) {
        return finish(light, profile, measured, finish, PartTones.NONE, work);
    }

    /**
     * The same where parts have tones of their own.
     *
     * @param parts where the parts of {@code finish} lie, with its stops
     */
    public static Finished finish(
            RgbPicture light, IccProfile profile, Optional<Grain> measured, Finish finish, PartTones parts, Work work) {
        if (!finish.parts().isEmpty() && parts.shares().isEmpty()) {
            throw new IllegalArgumentException(
                    "parts: where they lie is not known; name the frames that tell it (--frames)");
        }
        return new Finisher(finish, profile, parts, work).run(light, measured);
    }

    private Finished run(RgbPicture light, Optional<Grain> measured) {
        Done done = new Done();
        boolean grainNeeded = finish.grain() > 0 || finish.sharpness().isPresent();
        Grain grain = measured.orElseGet(() -> grainNeeded
                ? GrainEstimate.of(luminance(light), light.width(), light.height())
                : new Grain(0, 0, "not measured"));
        if (finish.grain() > 0) {
            GrainReduction.apply(light, space, grain, finish.grain(), work);
            done.grain(finish.grain(), grain);
        }
        work.check();
        work.progress(0.3, "levelling and cropping");
        Easel easel = new Easel(light.width(), light.height(), finish.levelDegrees());
        Easel.Cut cut = easel.cut(finish.crop());
        float[] factors = parts.untouched()
                ? new float[0]
                : parts.laid(luminance(light), light.width(), light.height(), easel, cut, work);
        RgbPicture picture = easel.lay(light, cut, work);
        done.easel(finish, cut);
        List<OwnColour> colours = finish.changesTones() ? tones(picture, factors, grain, done) : List.of();
        work.progress(0.8, "toning");
        if (!finish.toning().untouched()) {
            tone(picture);
            done.toning(finish.toning());
        }
        return new Finished(CodedPicture.of(picture, profile, work), colours, grain, done.steps());
    }

    private float[] luminance(RgbPicture picture) {
        float[] y = new float[picture.red().length];
        work.forEach(picture.height(), row -> {
            for (int p = row * picture.width(); p < (row + 1) * picture.width(); p++) {
                y[p] = (float) space.luminance(picture.red()[p], picture.green()[p], picture.blue()[p]);
            }
        });
        return y;
    }

    /** Everything on luminance; the colours of each pixel follow it in proportion. */
    private List<OwnColour> tones(RgbPicture picture, float[] factors, Grain grain, Done done) {
        work.progress(0.4, "setting tones");
        List<OwnColour> colours = List.of();
        float gain = (float) Stops.factor(finish.exposureStops());
        for (int c = 0; c < 3; c++) {
            float[] plane = picture.plane(c);
            for (int p = 0; p < plane.length; p++) {
                plane[p] *= gain;
            }
        }
        done.exposure(finish.exposureStops());
        float[] y;
        if (finish.blackAndWhite().isPresent()) {
            Monochrome how = finish.blackAndWhite().get();
            colours = how.resolved(picture, space);
            y = Monochrome.luminance(picture, space, colours, how.filter(), work);
            done.monochrome(colours, how.filter());
        } else {
            y = luminance(picture);
        }
        for (int p = 0; p < factors.length; p++) {
            y[p] *= factors[p];
        }
        done.parts(finish.parts());
        work.check();
        Tonality.apply(y, picture.width(), picture.height(), finish, work);
        done.tones(finish);
        if (finish.sharpness().isPresent()) {
            strengthen(y, picture, finish.sharpness().get(), grain, done);
        }
        work.progress(0.7, "bringing colours along");
        boolean grey = finish.blackAndWhite().isPresent();
        work.forEach(picture.height(), row -> {
            for (int p = row * picture.width(); p < (row + 1) * picture.width(); p++) {
                follow(picture, p, y[p], grey);
            }
        });
        return colours;
    }

    private void strengthen(float[] y, RgbPicture picture, Sharpness sharpness, Grain grain, Done done) {
        double centimetres = finish.pictureCentimetres().orElseThrow();
        double sigma = sharpness.sigma(picture.width() / centimetres);
        double left = finish.grain() > 0 ? 0.3 : 1;
        // noise at middle grey, as a difference in L*: dL*/dY = 116/3 · Y^(−2/3)
        double noise =
                Math.sqrt(grain.variance(Stops.MIDDLE)) * left * 116 / 3 / StrictMath.cbrt(Stops.MIDDLE * Stops.MIDDLE);
        Edges.strengthen(
                y, picture.width(), picture.height(), sigma, sharpness.paper().amount(), 2 * noise, work);
        done.sharpness(sharpness);
    }

    /** Gives a pixel a new luminance; colours too light for the profile are led towards grey, not clipped. */
    private void follow(RgbPicture picture, int p, double luminance, boolean grey) {
        double r = picture.red()[p];
        double g = picture.green()[p];
        double b = picture.blue()[p];
        double before = space.luminance(r, g, b);
        double ratio = luminance / before;
        if (grey || !(before > 0) || !Double.isFinite(ratio)) {
            put(picture, p, luminance, luminance, luminance);
            return;
        }
        r *= ratio;
        g *= ratio;
        b *= ratio;
        double most = Math.max(r, Math.max(g, b));
        if (most > 1) {
            double kept = luminance >= 1 ? 0 : (1 - luminance) / (most - luminance);
            r = luminance + kept * (r - luminance);
            g = luminance + kept * (g - luminance);
            b = luminance + kept * (b - luminance);
        }
        put(picture, p, r, g, b);
    }

    private static void put(RgbPicture picture, int p, double red, double green, double blue) {
        picture.red()[p] = (float) red;
        picture.green()[p] = (float) green;
        picture.blue()[p] = (float) blue;
    }

    private void tone(RgbPicture picture) {
        double[][] add = finish.toning().table(TABLE);
        work.forEach(picture.height(), row -> {
            double[] lab = new double[3];
            double[] rgb = new double[3];
            for (int p = row * picture.width(); p < (row + 1) * picture.width(); p++) {
                space.toLab(picture.red()[p], picture.green()[p], picture.blue()[p], lab);
                double at = Math.max(0, Math.min(TABLE - 1e-6, lab[0] * TABLE / 100));
                int below = (int) at;
                double share = at - below;
                double a = add[0][below] + share * (add[0][below + 1] - add[0][below]);
                double b = add[1][below] + share * (add[1][below + 1] - add[1][below]);
                space.toRgb(lab[0], lab[1] + a, lab[2] + b, rgb);
                put(picture, p, rgb[0], rgb[1], rgb[2]);
            }
        });
    }
}
