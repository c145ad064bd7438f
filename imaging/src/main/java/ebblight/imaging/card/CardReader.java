package ebblight.imaging.card;

import ebblight.core.numeric.Work;
import ebblight.imaging.OpenedPicture;
import ebblight.imaging.Skipped;
import ebblight.imaging.UnreadableInputException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** Reads a card: every picture once, opened read-only; what cannot be read is named with its reason. */
final class CardReader {

    private static final int LEAST_PIXELS = 48;

    /**
     * Frames of more pixels are looked at in half their width and height: what a print or a screen shows of sharpness is
     * there, and hot pixels bright enough to be seen; it costs less than half.
     */
    static final long MOST_PIXELS = 12_000_000;

    private final List<CardFrame> frames = new ArrayList<>();
    private final List<Skipped> skipped = new ArrayList<>();

    private record Arrived(@Nullable CardFrame frame, String digest, String reason) {}

    /** Reads the pictures in {@code folder} and below. */
    static CardReader read(Path folder, Work work) throws IOException {
        return read(folder, CardFiles.in(folder), work);
    }

    /** Reads what was found in {@code folder}. */
    static CardReader read(Path folder, CardFiles files, Work work) throws IOException {
        CardReader card = new CardReader();
        card.skipped.addAll(files.skipped());
        List<CardFiles.Shot> shots = files.shots();
        if (shots.isEmpty() && card.skipped.isEmpty()) {
            throw new UnreadableInputException(folder, "holds no picture (JPEG, PNG, TIFF or RAW)");
        }
        Arrived[] arrived = new Arrived[shots.size()];
        AtomicInteger done = new AtomicInteger();
        work.forEach(arrived.length, i -> {
            work.check();
            arrived[i] = arrive(shots.get(i));
            work.progress((double) done.incrementAndGet() / arrived.length, "reading the card");
        });
        card.take(shots, arrived);
        if (card.frames.isEmpty()) {
            throw none(folder, card.skipped);
        }
        card.frames.sort(Comparator.comparingDouble((CardFrame f) -> Double.isNaN(f.seconds()) ? 0 : f.seconds())
                .thenComparing(f -> f.file().toString()));
        return card;
    }

    private static Arrived arrive(CardFiles.Shot shot) {
        try (OpenedPicture picture = OpenedPicture.openSmaller(shot.file(), MOST_PIXELS)) {
            if (picture.width() < LEAST_PIXELS || picture.height() < LEAST_PIXELS) {
                String size = picture.width() + " × " + picture.height();
                return new Arrived(null, "", "is too small to judge (" + size + " pixels)");
            }
            LonePixels lone = new LonePixels(picture);
            CellPass pass = new CellPass(picture);
            Cells cells = pass.run(lone);
            CardFrame frame = new CardFrame(
                    shot.file(),
                    shot.companions(),
                    picture.facts(),
                    picture.width(),
                    picture.height(),
                    picture.takenSeconds().orElse(Double.NaN),
                    cells,
                    pass.clippedFraction(),
                    lone.found(),
                    SlateFinder.text(picture));
            return new Arrived(frame, Digest.of(picture.bytes()), "");
        } catch (UnreadableInputException e) {
            return new Arrived(null, "", OpenedPicture.reason(e, shot.file()));
        }
    }

    private void take(List<CardFiles.Shot> shots, Arrived[] arrived) {
        Map<String, Path> known = new HashMap<>();
        for (int i = 0; i < arrived.length; i++) {
            CardFrame frame = arrived[i].frame;
            Path file = shots.get(i).file();
            if (frame == null) {
                skipped.add(new Skipped(file, arrived[i].reason));
                continue;
            }
            Path first = known.putIfAbsent(arrived[i].digest, file);
            if (first == null) {
                frames.add(frame);
            } else {
                skipped.add(new Skipped(file, "is the same file as " + first.getFileName() + ", byte for byte"));
            }
        }
    }

    private static UnreadableInputException none(Path folder, List<Skipped> skipped) {
        StringBuilder text = new StringBuilder(folder + ": no picture in it can be read");
        skipped.stream().limit(3).forEach(s -> text.append("; ")
                .append(s.file().getFileName())
                .append(": ")
                .append(s.reason()));
        return new UnreadableInputException(text.toString());
    }

    /** What could be read, in order of time. */
    List<CardFrame> frames() {
        return List.copyOf(frames);
    }

    List<Skipped> skipped() {
        return List.copyOf(skipped);
    }
}
