package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avutil;

/** One reading of a clip from its first to its last frame. */
final class ClipPass implements AutoCloseable {

    /** Frames handed over at once: enough for all cores, few enough for the memory. */
    private static final int BATCH = 4;
    /** A clip that ends before this part of what its header says has lost its end. */
    private static final double WHOLE = 0.9;

    private final OpenClip clip;
    private final double framesPerSecond;
    private final int mostFrames;
    private final FrameVisitor visitor;
    private final Work work;
    private final VideoFallback fallback = new VideoFallback();
    private final DecodedAhead ahead;
    private final RepeatedFrames repeats = new RepeatedFrames();
    private final List<Waiting> waiting = new ArrayList<>();
    private int index;
    private int usable;
    private int brokenFrames;
    private int otherSizes;
    private double lastSeconds = Double.NEGATIVE_INFINITY;
    private double lastStampSeconds;

    /** A frame that waits for its batch to be full. */
    private record Waiting(int index, double seconds, AVFrame frame) {}

    ClipPass(OpenClip clip, double framesPerSecond, int mostFrames, FrameVisitor visitor, Work work) {
        this.clip = clip;
        this.framesPerSecond = framesPerSecond;
        this.mostFrames = mostFrames;
        this.visitor = visitor;
        this.work = work;
        this.ahead = new DecodedAhead(clip);
    }

    /** Reads the clip and returns how many frames were whole and of the clip's size. */
    int run() throws IOException {
        while (!visitor.enough()) {
            Optional<AVFrame> next = ahead.next();
            if (next.isEmpty()) {
                break;
            }
            work.check();
            if (index % (4 * BATCH) == 0) {
                work.progress((double) index / Math.max(1, mostFrames), "reading frames");
            }
            AVFrame decoded = next.get();
            try {
                take(decoded);
            } finally {
                avutil.av_frame_free(decoded);
            }
            index++;
        }
        handOver();
        return usable;
    }

    /** What was amiss, in words for a person. */
    List<String> warnings() {
        List<String> found = new ArrayList<>();
        double whole = clip.nominalSeconds();
        double read = lastStampSeconds + clip.nominalSpacingSeconds();
        if (!visitor.enough() && read < WHOLE * whole) {
            found.add(String.format(
                    Locale.ROOT,
                    "only %.1f of %.1f s can be read: the clip seems to be cut off; what is there was used",
                    read,
                    whole));
        }
        int broken = brokenFrames + ahead.brokenPieces();
        if (broken > 0) {
            found.add((broken == 1
                            ? "one piece of the clip is damaged and was"
                            : broken + " pieces of the clip are damaged and were")
                    + " left out");
        }
        if (otherSizes > 0) {
            found.add(otherSizes + " frames have another size than the others and were left out");
        }
        return found;
    }

    private void take(AVFrame decoded) throws IOException {
        double seconds = framesPerSecond > 0 ? index / framesPerSecond : stampSeconds(decoded);
        lastStampSeconds = Math.max(lastStampSeconds, stampSeconds(decoded));
        if ((decoded.flags() & AVFrame.AV_FRAME_FLAG_CORRUPT) != 0 || decoded.decode_error_flags() != 0) {
            brokenFrames++;
            return;
        }
        if (!clip.fits(decoded)) {
            otherSizes++;
            return;
        }
        usable++;
        if (repeats.isRepeat(decoded)) {
            return;
        }
        if (!(seconds > lastSeconds)) {
            seconds = lastSeconds + clip.nominalSpacingSeconds();
        }
        lastSeconds = seconds;
        if (!visitor.wants(seconds)) {
            return;
        }
        AVFrame kept = avutil.av_frame_alloc();
        waiting.add(new Waiting(index, seconds, kept));
        if (VideoPlane.reads(decoded)) {
            avutil.av_frame_move_ref(kept, decoded);
        } else {
            fallback.convert(decoded, kept);
        }
        if (waiting.size() == BATCH) {
            handOver();
        }
    }

    private void handOver() {
        if (waiting.isEmpty()) {
            return;
        }
        FrameVisitor.Arrival[] frames = new FrameVisitor.Arrival[waiting.size()];
        work.forEach(frames.length, k -> {
            Waiting each = waiting.get(k);
            VideoFrame frame = VideoFrame.of(each.frame, clip.quarterTurns());
            frames[k] = new FrameVisitor.Arrival(each.index, each.seconds, OptionalDouble.empty(), frame);
        });
        visitor.take(List.of(frames));
        release();
    }

    private double stampSeconds(AVFrame decoded) {
        long stamp = decoded.best_effort_timestamp();
        return stamp == avutil.AV_NOPTS_VALUE
                ? index * clip.nominalSpacingSeconds()
                : (stamp - clip.startStamp()) * clip.tickSeconds();
    }

    private void release() {
        for (Waiting each : waiting) {
            avutil.av_frame_free(each.frame);
        }
        waiting.clear();
    }

    @Override
    public void close() {
        release();
        ahead.close();
        repeats.close();
        fallback.close();
    }
}
