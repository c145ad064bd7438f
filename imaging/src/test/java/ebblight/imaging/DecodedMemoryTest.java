package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A decoded picture stays as it is for as long as somebody reads it, whatever is decoded after it. */
class DecodedMemoryTest {

    private static final int WIDTH = 640;
    private static final int HEIGHT = 480;

    @Test
    void samplesOutliveTheDecoderThatMadeThem(@TempDir Path folder) throws Exception {
        List<PackedFrame> frames = new ArrayList<>();
        List<int[]> firstRows = new ArrayList<>();
        for (int k = 0; k < 12; k++) {
            Path file = folder.resolve("f" + k + ".png");
            TestPictures.write8(file, TestPictures.random(3 * WIDTH * HEIGHT, 255, k), WIDTH, HEIGHT);
            PackedFrame frame = PictureReader.decode(file, ReadableFile.bytes(file));
            frames.add(frame);
            firstRows.add(row(frame));
            System.gc(); // native memory that nobody holds is given back
            Thread.sleep(20);
        }
        for (int k = 0; k < frames.size(); k++) {
            assertThat(row(frames.get(k))).as("frame %d", k).isEqualTo(firstRows.get(k));
        }
    }

    private static int[] row(PackedFrame frame) {
        int[][] row = frame.rowMemory();
        frame.rows().read(HEIGHT / 2, row[0], row[1], row[2]);
        return row[0].clone();
    }
}
