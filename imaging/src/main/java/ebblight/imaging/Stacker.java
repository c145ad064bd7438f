package ebblight.imaging;

import ebblight.core.numeric.Powers;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * Makes one picture from many frames in linear light of the first frame's primaries. The memory does not grow with the
 * number of frames, and the result is the same bits for any number of threads: light is summed in whole numbers.
 */
public final class Stacker {

    /** Exposures that differ less than this count as the same. */
    private static final double SAME_STOPS = 0.05;

    private Stacker() {}

    /** Stacks all frames of {@code source}. */
    public static StackResult stack(FrameSource source, StackOptions options, Work work) throws IOException {
        Optional<Darks> darks = options.darks().isPresent()
                ? Optional.of(Darks.read(options.darks().get(), work))
                : Optional.empty();
        try (Pass pass = new Pass(source, options, work)) {
            try {
                source.visit(pass, work);
            } catch (UncheckedIOException e) {
                throw e.getCause();
            }
            return pass.result(darks);
        }
    }

    private static final class Pass implements FrameVisitor, AutoCloseable {
        private final FrameSource source;
        private final StackOptions options;
        private final Work work;
        private final List<Skipped> misfits = new ArrayList<>();
        private final List<double[]> shots = new ArrayList<>();
        private @Nullable DecodedFrame first;
        private @Nullable Accumulator accumulator;
        private @Nullable MedianStore store;
        private @Nullable FrameAlignment alignment;
        private double firstExposure = Double.NaN;
        private double seconds;
        private boolean secondsKnown = true;
        private boolean scaled;
        private int frames;
        private double firstTime = Double.NaN;
        private double lastTime = Double.NaN;

        Pass(FrameSource source, StackOptions options, Work work) {
            this.source = source;
            this.options = options;
            this.work = work;
        }

        @Override
        public boolean frame(int index, double at, OptionalDouble exposure, DecodedFrame decoded) {
            try {
                take(index, at, exposure, decoded);
                return true;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        private void take(int index, double at, OptionalDouble exposure, DecodedFrame decoded) throws IOException {
            DecodedFrame frame = decoded;
            DecodedFrame reference = first;
            if (reference == null) {
                begin(frame, exposure);
            } else {
                if (!frame.profile().sameAs(reference.profile())) {
                    frame = frame.in(reference.profile());
                }
                if (alignment != null) {
                    Optional<DecodedFrame> laid = alignment.align(frame, work);
                    if (laid.isEmpty()) {
                        misfits.add(new Skipped(file(index), "could not be laid over the first frame"));
                        return;
                    }
                    frame = laid.get();
                }
            }
            double gain = gain(exposure);
            if (store != null) {
                store.add(frame, gain);
            } else if (accumulator != null) {
                accumulator.add(frame, gain, work);
            }
            frames++;
            seconds += exposure.orElse(0);
            secondsKnown &= exposure.isPresent();
            firstTime = frames == 1 ? at : firstTime;
            lastTime = at;
            shots.add(new double[] {at, exposure.orElse(Double.NaN)});
        }

        private void begin(DecodedFrame frame, OptionalDouble exposure) throws IOException {
            // Only size and profile are kept: the frame's own memory can go.
            first = DecodedFrame.of8(frame.width(), frame.height(), new byte[0], frame.profile());
            firstExposure = exposure.orElse(Double.NaN);
            if (options.as() == StackOptions.As.MEDIAN) {
                store = MedianStore.open(frame.samples(), source.mostFrames());
            } else {
                accumulator = new Accumulator(frame.samples(), options.as(), source.mostFrames());
            }
            if (options.align().isPresent()) {
                alignment = new FrameAlignment(frame, options.align().get());
            }
        }

        private double gain(OptionalDouble exposure) {
            if (exposure.isEmpty() || Double.isNaN(firstExposure)) {
                return 1;
            }
            double stops = Powers.log2(firstExposure / exposure.getAsDouble());
            if (Math.abs(stops) < SAME_STOPS) {
                return 1;
            }
            scaled = true;
            return firstExposure / exposure.getAsDouble();
        }

        private Path file(int index) {
            List<Path> files = source.files();
            return files.get(Math.min(index, files.size() - 1));
        }

        StackResult result(Optional<Darks> darks) throws IOException {
            DecodedFrame reference = first;
            if (reference == null) {
                throw new UnreadableInputException("no frame was left to stack");
            }
            IccProfile source16 = reference.profile();
            IccProfile target = options.linear() ? source16.forWriting().linear() : source16.forWriting();
            int w = reference.width();
            int h = reference.height();
            short[] codes = new short[3 * w * h];
            CodeTable encode = CodeTable.of(target.curve());
            if (darks.isPresent()) {
                darks.get().mustMatch(w, h);
            }
            if (store != null) {
                short[] median = store.median(source16, work);
                float[] linear = source16.curve().table(16);
                work.forEach(h, y -> {
                    for (int i = 3 * y * w; i < 3 * (y + 1) * w; i++) {
                        codes[i] = code(linear[median[i] & 0xFFFF], i, darks, encode);
                    }
                });
            } else if (accumulator != null) {
                Accumulator sums = accumulator;
                work.forEach(h, y -> {
                    for (int i = 3 * y * w; i < 3 * (y + 1) * w; i++) {
                        codes[i] = code(sums.light(i), i, darks, encode);
                    }
                });
            }
            List<Skipped> skipped = new ArrayList<>(source.skipped());
            skipped.addAll(misfits);
            return new StackResult(
                    new CodedPicture(w, h, codes, target),
                    frames,
                    List.copyOf(skipped),
                    totalSeconds(),
                    gaps(),
                    source.facts(),
                    warnings());
        }

        private static short code(double light, int i, Optional<Darks> darks, CodeTable encode) {
            double clean = darks.isPresent() ? light - darks.get().light(i) : light;
            return (short) Math.round(encode.code16(clean));
        }

        /** Sum of the exposures; of a clip, whose frames have none, the time it spans. */
        private OptionalDouble totalSeconds() {
            if (secondsKnown) {
                return OptionalDouble.of(seconds);
            }
            if (source.pictures() || frames < 2 || !(lastTime > firstTime)) {
                return OptionalDouble.empty();
            }
            return OptionalDouble.of((lastTime - firstTime) * frames / (frames - 1));
        }

        private Optional<StackResult.Gaps> gaps() {
            if (!secondsKnown || shots.size() < 2 || Double.isNaN(firstTime)) {
                return Optional.empty();
            }
            int count = 0;
            double sum = 0;
            double longest = 0;
            for (int k = 1; k < shots.size(); k++) {
                double gap = shots.get(k)[0] - shots.get(k - 1)[0] - shots.get(k - 1)[1];
                if (gap > 0) {
                    count++;
                    sum += gap;
                    longest = Math.max(longest, gap);
                }
            }
            return Optional.of(new StackResult.Gaps(count, sum, longest));
        }

        private List<String> warnings() {
            List<String> all = new ArrayList<>(source.warnings());
            if (scaled) {
                all.add("frames of different exposure times were scaled to that of the first");
            }
            if (frames == 1) {
                all.add("only one frame went in: the result is that frame");
            }
            return List.copyOf(all);
        }

        @Override
        public void close() throws IOException {
            if (store != null) {
                store.close();
            }
            if (alignment != null) {
                alignment.close();
            }
        }
    }
}
