package ebblight.imaging;

import ebblight.core.numeric.RgbPicture;
import ebblight.core.numeric.Work;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;

/** One reading of a source in which some of its frames, put back in place, are made into one. */
final class FramePass implements FrameVisitor, AutoCloseable {

    private final FrameSource source;
    private final Take take;
    private final Placed placed;
    private final Work work;
    private final Shots shots = new Shots();
    private @Nullable Begun begun;
    private double start = Double.NaN;
    private boolean done;

    private record Begun(int width, int height, IccProfile profile, Combination combination) {}

    /**
     * Which frames are taken, and how they become one.
     *
     * @param fromSeconds frames that begin earlier than this after the first one are left out
     * @param untilSeconds those that begin then or later are left out
     * @param index the only frame that is taken, by its number in the source; −1 for all
     */
    record Take(StackOptions.As as, double fromSeconds, double untilSeconds, int index) {

        static Take until(double seconds) {
            return new Take(StackOptions.As.MEAN, 0, seconds, -1);
        }
    }

    private FramePass(FrameSource source, Take take, Placed placed, Work work) {
        this.source = source;
        this.take = take;
        this.placed = placed;
        this.work = work;
    }

    /** Reads {@code source} once. */
    static FramePass read(FrameSource source, Take take, Placed placed, Work work) throws IOException {
        FramePass pass = new FramePass(source, take, placed, work);
        try {
            source.visit(pass, work);
            return pass;
        } catch (UncheckedIOException e) {
            pass.close();
            throw e.getCause();
        }
    }

    @Override
    public boolean wants(double seconds) {
        start = Double.isNaN(start) ? seconds : start;
        done |= seconds - start >= take.untilSeconds;
        // Of frames without times nothing is earlier than another.
        return !done && !(seconds - start < take.fromSeconds);
    }

    @Override
    public boolean enough() {
        return done;
    }

    @Override
    public void take(List<Arrival> arrivals) {
        try {
            List<Combination.Part> parts = new ArrayList<>();
            for (Arrival arrival : arrivals) {
                if (take.index < 0 || take.index == arrival.index()) {
                    parts.add(part(arrival));
                    done |= take.index >= 0;
                }
            }
            Begun now = begun;
            if (now != null && !parts.isEmpty()) {
                now.combination.add(parts, work);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Combination.Part part(Arrival arrival) throws IOException {
        DecodedFrame frame = arrival.frame();
        Begun now = begun;
        if (now == null) {
            now = new Begun(
                    frame.width(),
                    frame.height(),
                    frame.profile(),
                    Combination.of(take.as, frame, source.mostFrames()));
            begun = now;
        }
        DecodedFrame alike = frame.profile().sameAs(now.profile) ? frame : new ConvertedFrame(frame, now.profile);
        double gain = shots.gain(arrival.exposureSeconds());
        shots.add(arrival.seconds(), arrival.exposureSeconds());
        return new Combination.Part(placed.frame(alike, arrival.index()), gain);
    }

    private Begun result() throws UnreadableInputException {
        Begun all = begun;
        if (all == null) {
            throw new UnreadableInputException(source.files().get(0) + ": no frame of it was left to use");
        }
        return all;
    }

    int width() throws UnreadableInputException {
        return result().width;
    }

    int height() throws UnreadableInputException {
        return result().height;
    }

    IccProfile profile() throws UnreadableInputException {
        return result().profile;
    }

    Shots shots() {
        return shots;
    }

    /** Linear light of every sample, 0 to 1; not a number where no frame saw anything. */
    IntToDoubleFunction light() throws IOException {
        return result().combination.light(work);
    }

    /** The same in the primaries of {@code other}. */
    IntToDoubleFunction light(IccProfile other) throws IOException {
        IntToDoubleFunction own = light();
        if (profile().sameAs(other)) {
            return own;
        }
        double[] m = profile().to(other);
        return i -> {
            int first = i - i % 3;
            int row = 3 * (i % 3);
            return m[row] * own.applyAsDouble(first)
                    + m[row + 1] * own.applyAsDouble(first + 1)
                    + m[row + 2] * own.applyAsDouble(first + 2);
        };
    }

    /** Square root of the luminance of every pixel: steps in it look about equally strong in shadows and lights. */
    float[] lightness() throws IOException {
        Begun all = result();
        IntToDoubleFunction from = light();
        double[] m = all.profile.to(IccProfile.srgb());
        double[] weight = new double[3];
        for (int c = 0; c < 3; c++) {
            weight[c] = 0.2126 * m[c] + 0.7152 * m[3 + c] + 0.0722 * m[6 + c];
        }
        int w = all.width;
        float[] out = new float[w * all.height];
        work.forEach(all.height, y -> {
            for (int p = y * w; p < (y + 1) * w; p++) {
                double luminance = weight[0] * from.applyAsDouble(3 * p)
                        + weight[1] * from.applyAsDouble(3 * p + 1)
                        + weight[2] * from.applyAsDouble(3 * p + 2);
                out[p] = (float) Math.sqrt(Math.max(0, luminance));
            }
        });
        return out;
    }

    /** The result in linear sRGB light. */
    RgbPicture srgb() throws IOException {
        Begun all = result();
        IntToDoubleFunction from = light();
        double[] m = all.profile.to(IccProfile.srgb());
        int w = all.width;
        RgbPicture out = RgbPicture.black(w, all.height);
        work.forEach(all.height, y -> {
            for (int p = y * w; p < (y + 1) * w; p++) {
                double r = from.applyAsDouble(3 * p);
                double g = from.applyAsDouble(3 * p + 1);
                double b = from.applyAsDouble(3 * p + 2);
                for (int c = 0; c < 3; c++) {
                    out.plane(c)[p] = (float) (m[3 * c] * r + m[3 * c + 1] * g + m[3 * c + 2] * b);
                }
            }
        });
        return out;
    }

    @Override
    public void close() throws IOException {
        Begun all = begun;
        if (all != null) {
            all.combination.close();
        }
    }
}
