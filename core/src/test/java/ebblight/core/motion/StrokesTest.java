package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What lies under strokes with a width, by plain geometry. */
class StrokesTest {

    private static final int WIDTH = 101;
    private static final int HEIGHT = 61;

    private static Strokes.Stroke line(Kind kind, double y, double width) {
        return new Strokes.Stroke(kind, List.of(new Strokes.Point(0.2, y), new Strokes.Point(0.8, y)), width);
    }

    private static byte[] covered(Strokes.Stroke... strokes) {
        byte[] covered = new byte[WIDTH * HEIGHT];
        Arrays.fill(covered, (byte) -1);
        for (Strokes.Stroke each : strokes) {
            Strokes.cover(each, WIDTH, HEIGHT, covered);
        }
        return covered;
    }

    /** A line of 0.1 of 101 px is 10.1 px wide, with round ends of half of it. */
    @Test
    void aLineCoversItsWidthAndItsRoundEnds() {
        byte[] covered = covered(line(Kind.FLOWING, 0.5, 0.1));
        double radius = 0.1 * WIDTH / 2;
        for (int y = 0; y < HEIGHT; y++) {
            for (int x = 0; x < WIDTH; x++) {
                double along = Math.max(20, Math.min(80, x));
                boolean under = Math.hypot(x - along, y - 30) <= radius;
                assertThat(covered[y * WIDTH + x]).as("%d, %d", x, y).isEqualTo((byte)
                        (under ? Kind.FLOWING.column() : -1));
            }
        }
    }

    @Test
    void aLaterLineLiesOverAnEarlierOne() {
        byte[] covered = covered(line(Kind.FLOWING, 0.5, 0.2), line(Kind.FIXED, 0.5, 0.05));
        assertThat(covered[30 * WIDTH + 50]).isEqualTo((byte) Kind.FIXED.column());
        assertThat(covered[38 * WIDTH + 50]).isEqualTo((byte) Kind.FLOWING.column());
    }

    @Test
    void aLineWithoutAWidthCoversNothingAndOneTooWideIsRefused() {
        assertThat(covered(line(Kind.FLOWING, 0.5, 0))).containsOnly((byte) -1);
        assertThatThrownBy(() -> line(Kind.FLOWING, 0.5, 0.3)).hasMessageContaining("a quarter of the picture");
    }

    /** What is cut from the sides leaves the line as wide in pixels: 0.1 of 100 is 0.125 of 80. */
    @Test
    void inACutPictureALineIsAsWideInPixels() {
        Strokes cut = new Strokes(List.of(line(Kind.FLOWING, 0.5, 0.1))).cropped(10, 100, 60);
        assertThat(cut.strokes().get(0).width()).isEqualTo(0.125);
    }
}
