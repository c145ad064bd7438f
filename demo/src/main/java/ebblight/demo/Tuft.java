package ebblight.demo;

import ebblight.core.numeric.RgbPicture;
import java.util.ArrayList;
import java.util.List;

/**
 * Beach grass at the lower right edge. Each blade is a damped resonator that the wind drives: its swing is a sum of
 * oscillations whose frequencies are drawn from its resonance, over a lean that all blades share in the gusts.
 */
final class Tuft {

    private static final int PARTS = 12;
    private static final int TONES = 6;
    private static final int GUST_TONES = 7;
    private static final double DAMPING = 0.11;

    private final List<Blade> blades = new ArrayList<>();
    private final double[] gustCycles = new double[GUST_TONES];
    private final double[] gustTurns = new double[GUST_TONES];
    private final double wind;

    /** Lengths in widths of the picture of the whole cove, angles in radians from upright, positive to the right. */
    private static final class Blade {
        double rootX;
        double rootY;
        double length;
        double angle;
        double curl;
        double thickness;
        double swing;
        boolean plume;
        final float[] root = new float[3];
        final float[] tip = new float[3];
        final double[] cycles = new double[TONES];
        final double[] turns = new double[TONES];
    }

    Tuft(Weather weather, long seed) {
        Dice dice = new Dice(seed);
        wind = Math.min(1.8, weather.windMetresPerSecond() / 3.6);
        for (int i = 0; i < GUST_TONES; i++) {
            gustCycles[i] = 0.04 * StrictMath.exp(2.0 * dice.uniform());
            gustTurns[i] = dice.uniform();
        }
        for (int i = 0; i < 96; i++) {
            blades.add(blade(dice, i));
        }
    }

    private static Blade blade(Dice dice, int number) {
        Blade blade = new Blade();
        double spread = dice.gaussian();
        blade.rootX = 0.975 + 0.022 * spread;
        blade.rootY = 0.640 + 0.012 * dice.gaussian();
        blade.plume = number % 13 == 5;
        blade.length = blade.plume ? dice.uniform(0.20, 0.25) : dice.uniform(0.09, 0.22);
        blade.angle = -0.16 + 0.20 * spread + 0.13 * dice.gaussian();
        blade.curl = blade.plume ? dice.uniform(-0.5, -0.2) : -0.55 + 0.5 * spread + 0.45 * dice.gaussian();
        blade.thickness = blade.plume ? 0.0009 : dice.uniform(0.0011, 0.0019);
        double light = dice.uniform(0.6, 1.25);
        float[] root = {0.018f, 0.021f, 0.013f};
        float[] tip = {0.125f, 0.098f, 0.052f};
        for (int c = 0; c < 3; c++) {
            blade.root[c] = root[c] * (float) light;
            blade.tip[c] = tip[c] * (float) (light * dice.uniform(0.8, 1.1));
        }
        double resonance = 1.15 * Math.sqrt(0.15 / blade.length) * dice.uniform(0.85, 1.15);
        blade.swing = dice.uniform(0.07, 0.13);
        for (int i = 0; i < TONES; i++) {
            double draw = DAMPING * StrictMath.tan(Math.PI * (dice.uniform() - 0.5));
            blade.cycles[i] = resonance * Math.max(0.35, Math.min(2.4, 1 + draw));
            blade.turns[i] = dice.uniform();
        }
        return blade;
    }

    /** Paints the blades over the picture; {@code light} is the evening's factor. Adds to {@code cover} when not empty. */
    void paint(double timeSeconds, Lens lens, RgbPicture picture, float light, float[] cover) {
        double gust = 0;
        for (int i = 0; i < GUST_TONES; i++) {
            gust += Turns.cosine(gustCycles[i] * timeSeconds + gustTurns[i]);
        }
        gust *= 0.75 / Math.sqrt(GUST_TONES);
        float[] colour = new float[3];
        for (Blade blade : blades) {
            double bend = 0;
            for (int i = 0; i < TONES; i++) {
                bend += Turns.cosine(blade.cycles[i] * timeSeconds + blade.turns[i]);
            }
            bend = wind * (blade.swing * (0.55 + 0.45 * gust) * bend * 0.8 - 0.16 * (1 + gust));
            draw(blade, bend, lens, picture, light, colour, cover);
        }
    }

    private static void draw(
            Blade blade, double bend, Lens lens, RgbPicture picture, float light, float[] colour, float[] cover) {
        Lens drawn = Lens.cove(1000);
        double w = lens.focalPixels() / drawn.focalWidths();
        double x = lens.x(drawn.right(blade.rootX * drawn.width()));
        double y = lens.y(drawn.up(blade.rootY * drawn.width()));
        double part = blade.length * w / PARTS;
        for (int i = 0; i < PARTS; i++) {
            double s = (i + 0.5) / PARTS;
            double angle = blade.angle + blade.curl * s + bend * (0.25 + 1.5 * s);
            double nextX = x + part * StrictMath.sin(angle);
            double nextY = y - part * StrictMath.cos(angle);
            double radius = blade.thickness * w * (1 - 0.85 * s * s);
            if (blade.plume && s > 0.74) {
                double p = (s - 0.87) / 0.13;
                radius = w * 0.0036 * Math.max(0.2, 1 - p * p);
            }
            for (int c = 0; c < 3; c++) {
                colour[c] = light * (float) (blade.root[c] + s * s * (blade.tip[c] - blade.root[c]));
            }
            Brush.stroke(picture, x, y, nextX, nextY, radius, colour, cover);
            x = nextX;
            y = nextY;
        }
    }
}
