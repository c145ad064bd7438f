package ebblight.imaging;

import ebblight.core.numeric.Work;
import ebblight.imaging.raw.RawDeveloper;
import ebblight.imaging.raw.RawException;
import ebblight.imaging.raw.RawMosaic;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The mean of RAW frames of one camera before demosaicing: the mean is written as a mosaic of its own, which is then
 * developed once. Noise is gone before edges are guessed from it, and only one frame has to be developed.
 */
public final class MosaicStack {

    private static final double SAME_STOPS = 0.15;

    private final Work work;
    private final List<Skipped> skipped = new ArrayList<>();
    private final Shots shots = new Shots();
    private @Nullable RawMosaic first;
    private FrameFacts facts = FrameFacts.none();
    private int[] sums = new int[0];

    private MosaicStack(Work work) {
        this.work = work;
    }

    /** Where the mean of the mosaics of {@code result} lies. */
    public static Path beside(Path result) {
        return result.resolveSibling(result.getFileName() + ".dng");
    }

    /**
     * Stacks RAW pictures.
     *
     * @param mean file that takes the mean of the mosaics
     * @param linear whether the result is written as linear light
     */
    public static StackResult stack(FrameSource source, Path mean, boolean linear, Work work) throws IOException {
        if (!(source instanceof PictureFrames frames)
                || !frames.files().stream().allMatch(PictureReader::isRaw)) {
            throw new UnreadableInputException("--mosaic: only RAW files have one; stack without it");
        }
        mustBeOurs(mean);
        MosaicStack stack = new MosaicStack(work);
        stack.skipped.addAll(frames.skipped());
        for (int k = 0; k < frames.files().size(); k++) {
            work.check();
            work.progress((double) k / frames.files().size(), "adding mosaics");
            stack.add(frames.files().get(k), frames.facts(k), frames.seconds(k));
        }
        RawMosaic begun = stack.first;
        if (begun == null) {
            throw PictureFrames.noneLeft(stack.skipped);
        }
        DngWriter.write(mean, stack.mean(begun), stack.facts, stack.shots.count());
        StackOptions options = new StackOptions(StackOptions.As.MEAN, Optional.empty(), Optional.empty(), linear);
        StackResult developed = Stacker.stack(Inputs.open(List.of(mean), 0, false, RawAs.DEVELOPED), options, work);
        return new StackResult(
                developed.picture(),
                stack.shots.count(),
                List.copyOf(stack.skipped),
                stack.shots.totalSeconds(false),
                stack.shots.gaps(),
                stack.facts,
                Optional.empty(),
                stack.shots.count() == 1 ? List.of("only one frame went in: the result is that frame") : List.of());
    }

    /** What lies there may only be a mean that was written here before. */
    private static void mustBeOurs(Path mean) throws IOException {
        if (Files.exists(mean)) {
            byte[] head;
            try (InputStream in = Files.newInputStream(mean)) {
                head = in.readNBytes(4096);
            }
            if (!new String(head, StandardCharsets.ISO_8859_1).contains(PictureFacts.SOFTWARE)) {
                throw new IOException(mean + ": is there already and was not written by a stack; choose another name");
            }
        }
    }

    private void add(Path file, FrameFacts frame, double seconds) {
        try {
            RawMosaic mosaic = RawDeveloper.shared().mosaic(ReadableFile.bytes(file));
            RawMosaic begun = first;
            if (begun == null) {
                begun = mosaic;
                first = mosaic;
                facts = frame;
                sums = new int[mosaic.samples().length];
            }
            String misfit = misfit(begun, mosaic, frame);
            if (!misfit.isEmpty()) {
                skipped.add(new Skipped(file, misfit));
                return;
            }
            short[] samples = mosaic.samples();
            RawMosaic like = begun;
            work.forEach(mosaic.height(), y -> {
                int w = mosaic.width();
                for (int x = 0; x < w; x++) {
                    int place = y % 2 * 2 + x % 2;
                    sums[y * w + x] += (samples[y * w + x] & 0xFFFF) + like.black()[place] - mosaic.black()[place];
                }
            });
            shots.add(seconds, frame.exposureSeconds());
        } catch (RawException e) {
            skipped.add(new Skipped(file, String.valueOf(e.getMessage())));
        } catch (UnreadableInputException e) {
            skipped.add(new Skipped(file, PictureFrames.reason(e, file)));
        }
    }

    private String misfit(RawMosaic begun, RawMosaic mosaic, FrameFacts frame) {
        if (!mosaic.camera().equals(begun.camera())) {
            return "comes from another camera than the first frame";
        }
        boolean alike = mosaic.width() == begun.width()
                && mosaic.height() == begun.height()
                && Arrays.equals(mosaic.colours(), begun.colours())
                && mosaic.flip() == begun.flip();
        if (!alike) {
            return "is of another size or was held otherwise than the first frame";
        }
        boolean timed =
                frame.exposureSeconds().isPresent() && facts.exposureSeconds().isPresent();
        double stops = timed
                ? Math.log(frame.exposureSeconds().getAsDouble()
                                / facts.exposureSeconds().getAsDouble())
                        / Math.log(2)
                : 0;
        return Math.abs(stops) > SAME_STOPS ? "has another exposure time than the first frame" : "";
    }

    /** The mean in as many steps as 16 bits hold. */
    private RawMosaic mean(RawMosaic begun) {
        int scale = Math.max(1, 65535 / Math.max(1, begun.white()));
        int frames = shots.count();
        short[] samples = new short[sums.length];
        for (int i = 0; i < samples.length; i++) {
            double mean = (double) sums[i] * scale / frames;
            samples[i] = (short) Math.max(0, Math.min(65535, Math.round(mean)));
        }
        int[] black = Arrays.stream(begun.black()).map(b -> b * scale).toArray();
        return new RawMosaic(
                begun.width(),
                begun.height(),
                begun.colours(),
                black,
                begun.white() * scale,
                begun.flip(),
                begun.cameraGains(),
                begun.daylightGains(),
                begun.toSrgb(),
                begun.camera(),
                samples);
    }
}
