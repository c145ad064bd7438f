package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;

/** Fast tables and means of pixels against formulas and plain sums. */
class PixelKernelsPropertyTest {

    private static PackedFrame frame(int[] codes, int width, int height, boolean wide) {
        ByteBuffer memory =
                ByteBuffer.allocateDirect(codes.length * (wide ? 2 : 1)).order(ByteOrder.nativeOrder());
        for (int code : codes) {
            if (wide) {
                memory.putShort((short) code);
            } else {
                memory.put((byte) code);
            }
        }
        return new PackedFrame(width, height, wide ? 16 : 8, memory.rewind(), IccProfile.srgb());
    }

    @Property
    void codesAreRoundedAsTheLibraryRounds(@ForAll @DoubleRange(min = 0, max = 65535) double value) {
        assertThat(WholeCode.nearest(value)).isEqualTo((int) Math.round(value));
        double half = Math.floor(value) + 0.5;
        assertThat(WholeCode.nearest(half)).isEqualTo((int) Math.round(half));
        assertThat(WholeCode.nearest(1 + Math.nextDown(half))).isEqualTo((int) Math.round(1 + Math.nextDown(half)));
    }

    /** As many pieces as both grids share: the smaller pixel is the mean of the light of its pieces. */
    @Property(tries = 60)
    void aSmallerFrameIsTheMeanOfItsPieces(
            @ForAll @IntRange(min = 1, max = 23) int width,
            @ForAll @IntRange(min = 1, max = 17) int height,
            @ForAll @IntRange(min = 1, max = 23) int wanted,
            @ForAll boolean wide) {
        int newWidth = Math.min(width, wanted);
        int newHeight = Math.max(1, Math.round((float) height * newWidth / width));
        int largest = wide ? 65535 : 255;
        int[] codes = TestPictures.random(3 * width * height, largest, width + 31L * height + wanted);
        byte[] small = new AreaMean(width, height, newWidth, newHeight).linear16(frame(codes, width, height, wide));
        for (int v = 0; v < newHeight; v++) {
            for (int u = 0; u < newWidth; u++) {
                for (int c = 0; c < 3; c++) {
                    double sum = 0;
                    for (int j = v * height; j < (v + 1) * height; j++) {
                        for (int i = u * width; i < (u + 1) * width; i++) {
                            int p = j / newHeight * width + i / newWidth;
                            sum += PlainStack.linear(codes[3 * p + c] / (double) largest);
                        }
                    }
                    int q = 2 * (3 * (v * newWidth + u) + c);
                    int code = (small[q] & 0xFF) | (small[q + 1] & 0xFF) << 8;
                    assertThat((double) code).isCloseTo(65535 * sum / (width * height), within(0.6));
                }
            }
        }
    }

    /** IEC 61966-2-1, written out again in the plain stack. */
    @Property(tries = 500)
    void theTableOfCodesIsTheCurve(@ForAll @DoubleRange(min = 0, max = 1) double light) {
        double code = CodeTable.of(IccProfile.srgb().curve()).code16(light);
        assertThat(code).isCloseTo(65535 * PlainStack.code(light), within(0.02));
    }

    /** Sums of light are whole numbers: to half of one, and never beyond an int for as many frames as were announced. */
    @Property(tries = 20)
    void lightInWholeNumbersIsTheCurve(
            @ForAll @IntRange(min = 1, max = 3000) int frames, @ForAll @DoubleRange(min = 0.25, max = 2) double gain) {
        double white = LightTable.white(frames);
        assertThat(white * frames).isLessThanOrEqualTo(Integer.MAX_VALUE);
        int[] light = new LightTable(white).of(frame(new int[3], 1, 1, false), gain);
        for (int code = 0; code < 256; code++) {
            double plain = Math.min(1, gain * PlainStack.linear(code / 255.0));
            assertThat((double) light[code]).isCloseTo(white * plain, within(0.5 + 2e-7 * white));
        }
    }

    /** Eight bits of an even tone are, over many pixels, that tone; and never more than one step away. */
    @Property(tries = 40)
    void ditheringKeepsTheMean(@ForAll @IntRange(min = 0, max = 65535) int code) {
        double sum = 0;
        int n = 20_000;
        for (int p = 0; p < n; p++) {
            int eight = Dither.to8(code, Dither.of(p));
            assertThat(Math.abs(257 * eight - code)).isLessThanOrEqualTo(257);
            sum += eight;
        }
        // ½ a step of deviation at most, over the root of 20 000: five of those
        assertThat(sum / n).isCloseTo(code / 257.0, within(5 * 0.5 / Math.sqrt(n) + 1e-3));
    }

    /** A frame put back by whole pixels is itself, moved; beyond its edge there is nothing. */
    @Property(tries = 20)
    void wholePixelsMoveUnchanged(
            @ForAll @IntRange(min = -3, max = 3) int dx, @ForAll @IntRange(min = -3, max = 3) int dy) {
        int w = 12;
        int h = 9;
        int[] codes = TestPictures.random(3 * w * h, 65535, 7);
        RigidMove move = new RigidMove(1, 0, dx, dy);
        DecodedFrame moved = new ShiftedFrame(frame(codes, w, h, true), move);
        int[][] row = moved.rowMemory();
        SplittableRandom dice = new SplittableRandom(dx + 7L * dy);
        for (int k = 0; k < h; k++) {
            int y = dice.nextInt(h);
            moved.rows().read(y, row[0], row[1], row[2]);
            for (int x = 0; x < w; x++) {
                int u = (int) Math.rint(move.x(x, y));
                int v = (int) Math.rint(move.y(x, y));
                boolean there = u >= 0 && u < w && v >= 0 && v < h;
                assertThat(row[1][x]).isCloseTo(there ? codes[3 * (v * w + u) + 1] : DecodedFrame.ABSENT, within(1));
            }
        }
    }
}
