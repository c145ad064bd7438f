package ebblight.checks;

import ebblight.core.numeric.Work;
import ebblight.demo.Card;
import ebblight.demo.Coast;
import ebblight.demo.Shot;
import ebblight.imaging.CodedPicture;
import ebblight.imaging.JpegWriter;
import ebblight.imaging.PictureFacts;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;

/** Cards of the demo, small: what is true of every frame is what the demo drew it from. */
final class MixedCard {

    static final int WIDTH = 360;

    private static final LocalDateTime BEGINS = LocalDateTime.of(2027, 1, 14, 16, 40);

    private final Card card = new Card(Coast.evening(), WIDTH, Work.alone());

    Card card() {
        return card;
    }

    /** Exposes and writes the frames, several at once. */
    void write(Path folder, List<Shot> shots) {
        IntStream.range(0, shots.size()).parallel().forEach(i -> {
            Shot shot = shots.get(i);
            PictureFacts facts = new PictureFacts(
                    OptionalDouble.of(shot.exposureSeconds()),
                    OptionalDouble.of(shot.fNumber()),
                    OptionalDouble.of(shot.isoSpeed()),
                    OptionalDouble.of(shot.composition().focalMillimetres()),
                    Optional.of(BEGINS.plusNanos(Math.round(shot.opensSeconds() * 1e9))),
                    1,
                    List.of(),
                    "invented");
            try {
                JpegWriter.write(
                        folder.resolve(shot.name() + ".jpg"),
                        CodedPicture.srgb8(WIDTH, card.height(), card.srgb8(shot, Work.alone())),
                        facts);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }
}
