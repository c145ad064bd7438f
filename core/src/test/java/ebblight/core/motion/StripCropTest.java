package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.RgbPicture;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Detail drawn at one place of a part: the patch lies over it. */
class StripCropTest {

    private static final int WIDTH = 64;
    private static final int HEIGHT = 48;
    private final RegionMap map = Drawing.map(16, "cccc", "~~~~", "~~~~");

    @Test
    void thePatchLiesOverTheDetailOfItsPart() {
        RgbPicture picture = grey();
        checks(picture, 40, 28, 8, 0.02f);
        checks(picture, 10, 4, 8, 0.2f); // more of it, but in the sky
        StripCrop crop = StripCrop.of(map, part(Kind.FLOWING), picture, 0.25, 2);
        assertThat(crop.width()).isEqualTo(16.0 / WIDTH);
        assertThat(crop.height()).isEqualTo(8.0 / HEIGHT);
        assertThat(crop.left() * WIDTH).isBetween(32.0, 40.0);
        assertThat(crop.top() * HEIGHT).isCloseTo(28, within(1e-9));
    }

    /** In the sky 0.04 at a light of about 0.2 is more than 0.06 at 0.7; on water it is less. */
    @Test
    void inTheSkyCloudCountsMoreThanGlow() {
        RgbPicture picture = grey();
        for (int p = 0; p < WIDTH * HEIGHT; p++) {
            picture.green()[p] = (float) (0.1 + 0.01 * (p % WIDTH));
        }
        checks(picture, 4, 4, 8, 0.04f);
        checks(picture, 52, 4, 8, 0.06f);
        checks(picture, 4, 36, 8, 0.04f);
        checks(picture, 52, 36, 8, 0.06f);
        assertThat(StripCrop.of(map, part(Kind.DRIFTING), picture, 0.125, 1).left())
                .isLessThan(0.3);
        assertThat(StripCrop.of(map, part(Kind.FLOWING), picture, 0.125, 1).left())
                .isGreaterThan(0.6);
    }

    /** A part smaller than the patch is shown as far as it can be; the patch never leaves the picture. */
    @Test
    void aSmallPartIsShownWithWhatSurroundsIt() {
        RegionMap narrow = Drawing.map(8, "cccccccc", "cccccccc", "cccccccc", "cccccccc", "cccccccc", "cccccc~~");
        int water = narrow.partAt(WIDTH * HEIGHT - 1);
        StripCrop crop = StripCrop.of(narrow, water, grey(), 0.5, 2);
        assertThat(crop.left() + crop.width()).isEqualTo(1);
        assertThat(crop.top() + crop.height()).isEqualTo(1);
        StripCrop whole = StripCrop.of(narrow, water, grey(), 5, 0.1);
        assertThat(whole).isEqualTo(new StripCrop(0, 0, 1, 1));
        StripCrop least = StripCrop.of(narrow, water, grey(), 0.001, 1);
        assertThat(least.width()).isEqualTo(2.0 / WIDTH);
        assertThat(least.height()).isEqualTo(2.0 / HEIGHT);
    }

    private int part(Kind kind) {
        for (int k = 0; k < map.parts().size(); k++) {
            if (map.parts().get(k).kind() == kind) {
                return k;
            }
        }
        throw new IllegalStateException();
    }

    private static RgbPicture grey() {
        RgbPicture picture = RgbPicture.black(WIDTH, HEIGHT);
        Arrays.fill(picture.green(), 0.3f);
        return picture;
    }

    private static void checks(RgbPicture picture, int left, int top, int size, float by) {
        for (int y = top; y < top + size; y++) {
            for (int x = left; x < left + size; x++) {
                picture.green()[y * WIDTH + x] += (x + y) % 2 == 0 ? by : 0;
            }
        }
    }
}
