package ebblight.demo;

import ebblight.core.numeric.RgbPicture;
import java.util.ArrayList;
import java.util.List;

/** What the demo's sensor does to every frame of the card: dust before it, hot pixels on it. */
public final class Flaws {

    private static final int SPOTS = 4;
    private static final int HOT = 36;
    private static final int NEAR_WHITE_SECONDS = 8;

    private final List<Spot> spots = new ArrayList<>();
    private final List<HotPixel> hotPixels = new ArrayList<>();

    /**
     * A grain of dust on the sensor's cover: a soft dark disk, sharper at small apertures.
     *
     * @param x fraction of the width from the left
     * @param y fraction of the height from the top
     * @param radius fraction of the width at f/16
     * @param depth share of the light that it takes at its middle at f/16
     */
    public record Spot(double x, double y, double radius, double depth) {}

    /**
     * A pixel that fills by itself.
     *
     * @param x column
     * @param y row
     * @param channel 0 red, 1 green, 2 blue
     * @param levelPerSecond linear level that it gains a second at ISO 100, white = 1
     */
    public record HotPixel(int x, int y, int channel, double levelPerSecond) {}

    Flaws(int width, int height, long seed) {
        Dice dice = new Dice(seed);
        for (int i = 0; i < SPOTS; i++) {
            // in the sky, where dust is seen
            spots.add(new Spot(
                    dice.uniform(0.08, 0.95),
                    dice.uniform(0.04, 0.30),
                    dice.uniform(0.006, 0.011),
                    dice.uniform(0.16, 0.35)));
        }
        for (int i = 0; i < HOT; i++) {
            double rate = StrictMath.exp(dice.uniform(StrictMath.log(0.004), StrictMath.log(1.0)));
            hotPixels.add(new HotPixel(
                    (int) dice.uniform(0, width),
                    (int) dice.uniform(0, height),
                    (int) dice.uniform(0, 3),
                    rate / NEAR_WHITE_SECONDS));
        }
    }

    public List<Spot> spots() {
        return List.copyOf(spots);
    }

    public List<HotPixel> hotPixels() {
        return List.copyOf(hotPixels);
    }

    void shade(RgbPicture picture, double fNumber) {
        int w = picture.width();
        double soft = 16 / fNumber;
        for (Spot spot : spots) {
            double radius = spot.radius * w * Math.max(1, soft);
            double depth = spot.depth * Math.min(1, 1 / (soft * soft));
            for (int y = 0; y < picture.height(); y++) {
                for (int x = 0; x < w; x++) {
                    double dx = x + 0.5 - spot.x * w;
                    double dy = y + 0.5 - spot.y * picture.height();
                    double d = Math.sqrt(dx * dx + dy * dy) / radius;
                    if (d < 1.3) {
                        float kept = (float) (1 - depth * (1 - Relief.step(0.6, 1.3, d)));
                        for (int c = 0; c < 3; c++) {
                            picture.plane(c)[y * w + x] *= kept;
                        }
                    }
                }
            }
        }
    }

    void heat(RgbPicture picture, double exposureSeconds, double isoSpeed) {
        for (HotPixel hot : hotPixels) {
            picture.plane(hot.channel)[hot.y * picture.width() + hot.x] +=
                    (float) (hot.levelPerSecond * exposureSeconds * isoSpeed / 100);
        }
    }
}
