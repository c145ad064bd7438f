package ebblight.imaging;

import ebblight.core.numeric.Work;
import ebblight.imaging.grain.FrameGrain;
import ebblight.imaging.grain.Grain;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** One reading of the frames of a stack: each is brought to the first one's profile, place and exposure, and added. */
final class StackPass implements FrameVisitor, AutoCloseable {

    private final FrameSource source;
    private final StackOptions options;
    private final Work work;
    private final List<Skipped> misfits = new ArrayList<>();
    private final Shots shots = new Shots();
    private @Nullable Begun begun;
    private @Nullable FrameGrain noise;

    /** What the first frame decides. */
    private record Begun(
            int width, int height, IccProfile profile, Combination combination, Optional<FrameAlignment> alignment) {}

    StackPass(FrameSource source, StackOptions options, Work work) {
        this.source = source;
        this.options = options;
        this.work = work;
    }

    @Override
    public void take(List<Arrival> arrivals) {
        try {
            Begun now = begun;
            boolean beginning = now == null;
            if (now == null) {
                now = begin(arrivals.get(0).frame());
                begun = now;
            }
            add(now, arrivals, beginning);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Begun begin(DecodedFrame first) throws IOException {
        return new Begun(
                first.width(),
                first.height(),
                first.profile(),
                Combination.of(options.as(), first, source.mostFrames()),
                options.align().map(parts -> new FrameAlignment(first, parts)));
    }

    private void add(Begun now, List<Arrival> arrivals, boolean beginning) throws IOException {
        @Nullable DecodedFrame[] laid = new DecodedFrame[arrivals.size()];
        work.forEach(laid.length, k -> {
            DecodedFrame frame = arrivals.get(k).frame();
            DecodedFrame alike = frame.profile().sameAs(now.profile) ? frame : new ConvertedFrame(frame, now.profile);
            boolean asItIs = now.alignment.isEmpty() || (beginning && k == 0);
            laid[k] = asItIs ? alike : now.alignment.get().align(alike).orElse(null);
        });
        List<Combination.Part> parts = new ArrayList<>();
        for (int k = 0; k < laid.length; k++) {
            Arrival arrival = arrivals.get(k);
            DecodedFrame frame = laid[k];
            if (frame == null) {
                misfits.add(new Skipped(file(arrival.index()), "could not be laid over the first frame"));
            } else {
                measure(frame);
                parts.add(new Combination.Part(frame, shots.gain(arrival.exposureSeconds())));
                shots.add(arrival.seconds(), arrival.exposureSeconds());
            }
        }
        now.combination.add(parts, work);
    }

    private Path file(int index) {
        List<Path> files = source.files();
        return files.get(Math.min(index, files.size() - 1));
    }

    /** The picture, less what {@code darks} give without light. */
    StackResult result(Optional<Darks> darks) throws IOException {
        Begun all = begun;
        if (all == null) {
            throw new UnreadableInputException("no frame was left to stack");
        }
        int w = all.width;
        int h = all.height;
        if (darks.isPresent()) {
            darks.get().mustMatch(w, h);
        }
        IccProfile plain = all.profile.forWriting();
        IccProfile target = options.linear() ? plain.linear() : plain;
        CodeTable encode = CodeTable.of(target.curve());
        IntToDoubleFunction light = all.combination.light(work);
        short[] codes = new short[3 * w * h];
        work.forEach(h, y -> {
            for (int i = 3 * y * w; i < 3 * (y + 1) * w; i++) {
                double dark = darks.isPresent() ? darks.get().light(i) : 0;
                codes[i] = (short) WholeCode.nearest(encode.code16(light.applyAsDouble(i) - dark));
            }
        });
        List<Skipped> skipped = new ArrayList<>(source.skipped());
        skipped.addAll(misfits);
        return new StackResult(
                new CodedPicture(w, h, codes, target),
                shots.count(),
                List.copyOf(skipped),
                shots.totalSeconds(!source.pictures()),
                shots.gaps(),
                source.facts(),
                grain(),
                warnings());
    }

    private Optional<Grain> grain() {
        FrameGrain measured = noise;
        return measured == null || options.as() != StackOptions.As.MEAN
                ? Optional.empty()
                : measured.ofFrame().map(g -> g.ofMean(shots.count()));
    }

    /** Looks at the noise of a frame, as long as that tells something new. */
    private void measure(DecodedFrame frame) {
        FrameGrain measured = noise;
        if (measured == null) {
            measured = new FrameGrain(frame.width(), frame.height());
            noise = measured;
        }
        if (options.as() != StackOptions.As.MEAN || !measured.wanting()) {
            return;
        }
        double[] weights = frame.profile().toXyz();
        float[] linear = frame.profile().curve().table(frame.bits());
        int[][] row = frame.rowMemory();
        DecodedFrame.RowReader rows = frame.rows();
        measured.add((y, luminance) -> {
            rows.read(y, row[0], row[1], row[2]);
            for (int x = 0; x < luminance.length; x++) {
                double light = 0;
                for (int c = 0; c < 3; c++) {
                    light += row[c][x] == DecodedFrame.ABSENT ? 0 : weights[3 + c] * linear[row[c][x]];
                }
                luminance[x] = (float) light;
            }
        });
    }

    private List<String> warnings() {
        List<String> all = new ArrayList<>(source.warnings());
        if (shots.scaled()) {
            all.add("frames of different exposure times were scaled to that of the first");
        }
        if (shots.count() == 1) {
            all.add("only one frame went in: the result is that frame");
        }
        return List.copyOf(all);
    }

    @Override
    public void close() throws IOException {
        Begun all = begun;
        if (all != null) {
            all.combination.close();
            all.alignment.ifPresent(FrameAlignment::close);
        }
    }
}
