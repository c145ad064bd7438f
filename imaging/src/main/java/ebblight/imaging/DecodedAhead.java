package ebblight.imaging;

import ebblight.core.numeric.Work;
import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avformat;
import org.bytedeco.ffmpeg.global.avutil;
import org.jspecify.annotations.Nullable;

/** Decodes a clip on a thread of its own, a few frames ahead of who takes them. For one taker. */
final class DecodedAhead implements AutoCloseable {

    /** Enough to keep the decoder busy while a batch is worked on, few enough for the memory. */
    private static final int AHEAD = 8;

    private final OpenClip clip;
    private final BlockingQueue<Decoded> ready = new ArrayBlockingQueue<>(AHEAD);
    private final Thread decoder = new Thread(this::run, "decoder");
    private volatile boolean unwanted;
    private volatile @Nullable Throwable failure;
    /** Counted by the decoder, and as the taker knows it. */
    private int broken;

    private int brokenUntilTaken;

    /** A frame, none at the end, and how many pieces before it could not be decoded. */
    private record Decoded(Optional<AVFrame> frame, int brokenBefore) {}

    DecodedAhead(OpenClip clip) {
        this.clip = clip;
        decoder.setDaemon(true);
        decoder.start();
    }

    /** The next frame, which the taker frees; empty at the end of the clip. */
    Optional<AVFrame> next() {
        try {
            Decoded next = ready.take();
            Throwable why = failure;
            if (why != null) {
                throw new IllegalStateException(why);
            }
            brokenUntilTaken = next.brokenBefore;
            return next.frame;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Work.Cancelled();
        }
    }

    /** How many pieces before the frame taken last could not be decoded. */
    int brokenPieces() {
        return brokenUntilTaken;
    }

    private void run() {
        AVPacket packet = avcodec.av_packet_alloc();
        try {
            while (!unwanted && avformat.av_read_frame(clip.format(), packet) >= 0) {
                if (packet.stream_index() == clip.stream()) {
                    send(packet);
                }
                avcodec.av_packet_unref(packet);
            }
            if (!unwanted) {
                send(null);
            }
            ready.put(new Decoded(Optional.empty(), broken));
        } catch (InterruptedException e) {
            // nobody wants the rest
        } catch (RuntimeException | Error e) {
            failure = e;
            ready.clear();
            ready.add(new Decoded(Optional.empty(), broken));
        } finally {
            avcodec.av_packet_free(packet);
        }
    }

    private void send(@Nullable AVPacket packet) throws InterruptedException {
        if (avcodec.avcodec_send_packet(clip.codec(), packet) < 0 && packet != null) {
            broken++;
        }
        while (!unwanted) {
            AVFrame frame = avutil.av_frame_alloc();
            int result = avcodec.avcodec_receive_frame(clip.codec(), frame);
            if (result < 0) {
                avutil.av_frame_free(frame);
                boolean needsMore = result == avutil.AVERROR_EAGAIN() || result == avutil.AVERROR_EOF;
                broken += needsMore ? 0 : 1;
                return;
            }
            try {
                ready.put(new Decoded(Optional.of(frame), broken));
            } catch (InterruptedException e) {
                avutil.av_frame_free(frame);
                throw e;
            }
        }
    }

    /** Stops decoding and frees what was not taken. */
    @Override
    public void close() {
        unwanted = true;
        decoder.interrupt();
        boolean interrupted = false;
        while (decoder.isAlive()) {
            try {
                decoder.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        ready.forEach(next -> next.frame.ifPresent(avutil::av_frame_free));
        ready.clear();
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }
}
