package ebblight.imaging;

import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_frame;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_packet;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EAGAIN;
import static org.bytedeco.ffmpeg.global.avutil.AV_NOPTS_VALUE;

import ebblight.core.numeric.Work;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.zip.CRC32;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.global.avcodec;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;

/** Frames of a clip, decoded by FFmpeg one after the other. */
final class ClipFrames implements FrameSource {

    private final Path file;
    private final double framesPerSecond;
    private final List<String> warnings = new ArrayList<>();
    private final FrameFacts facts;
    private final int mostFrames;

    private ClipFrames(Path file, double framesPerSecond, FrameFacts facts, int mostFrames) {
        this.file = file;
        this.framesPerSecond = framesPerSecond;
        this.facts = facts;
        this.mostFrames = mostFrames;
    }

    /**
     * Opens a clip.
     *
     * @param framesPerSecond rate to use instead of the clip's own times; 0 for its own
     */
    static ClipFrames of(Path file, double framesPerSecond) throws IOException {
        ReadableFile.check(file);
        try (OpenClip clip = OpenClip.of(file)) {
            return new ClipFrames(file, framesPerSecond, FrameFacts.none(), clip.countPackets());
        }
    }

    @Override
    public List<Path> files() {
        return List.of(file);
    }

    @Override
    public int mostFrames() {
        return mostFrames;
    }

    @Override
    public FrameFacts facts() {
        return facts;
    }

    @Override
    public List<Skipped> skipped() {
        return List.of();
    }

    @Override
    public List<String> warnings() {
        return List.copyOf(warnings);
    }

    @Override
    public boolean pictures() {
        return false;
    }

    @Override
    public void visit(FrameVisitor visitor, Work work) throws IOException {
        warnings.clear();
        try (OpenClip clip = OpenClip.of(file)) {
            new Pass(clip, visitor, work).run();
        }
    }

    /** Whether a frame is worth converting can be asked before it is converted. */
    interface Chooser extends FrameVisitor {
        /** True when the frame at this instant is wanted. */
        boolean wants(double seconds);
    }

    private final class Pass {
        private final OpenClip clip;
        private final FrameVisitor visitor;
        private final Work work;
        private final CRC32 crc = new CRC32();
        private byte[] row = new byte[0];
        private long previousCrc = -1;
        private int index;
        private int broken;
        private double lastSeconds = Double.NEGATIVE_INFINITY;
        private boolean wantsMore = true;

        Pass(OpenClip clip, FrameVisitor visitor, Work work) {
            this.clip = clip;
            this.visitor = visitor;
            this.work = work;
        }

        void run() throws IOException {
            clip.warning().ifPresent(warnings::add);
            AVPacket packet = avcodec.av_packet_alloc();
            AVFrame frame = avutil.av_frame_alloc();
            try {
                while (wantsMore && av_read_frame(clip.format(), packet) >= 0) {
                    if (packet.stream_index() == clip.stream()) {
                        if (avcodec_send_packet(clip.codec(), packet) < 0) {
                            broken++;
                        }
                        receive(frame);
                    }
                    avcodec.av_packet_unref(packet);
                }
                if (wantsMore) {
                    avcodec_send_packet(clip.codec(), null);
                    receive(frame);
                }
            } finally {
                avutil.av_frame_free(frame);
                avcodec.av_packet_free(packet);
            }
            if (index == 0) {
                throw new UnreadableInputException(file, "is a clip of which not one frame can be decoded");
            }
            if (broken > 0) {
                warnings.add(file.getFileName() + ": " + broken
                        + " pieces of the clip could not be decoded; it may have been cut off");
            }
        }

        private void receive(AVFrame frame) throws IOException {
            while (wantsMore) {
                int result = avcodec_receive_frame(clip.codec(), frame);
                if (result == AVERROR_EAGAIN() || result == avutil.AVERROR_EOF) {
                    return;
                }
                if (result < 0) {
                    broken++;
                    return;
                }
                work.check();
                if (index % 16 == 0) {
                    work.progress((double) index / Math.max(1, mostFrames), "reading frames");
                }
                take(frame);
                index++;
            }
        }

        private void take(AVFrame frame) throws IOException {
            double seconds = seconds(frame);
            long now = fingerprint(frame);
            if (now == previousCrc) {
                return;
            }
            previousCrc = now;
            if (!(seconds > lastSeconds)) {
                seconds = lastSeconds + clip.nominalSpacing();
            }
            lastSeconds = seconds;
            if (visitor instanceof Chooser chooser && !chooser.wants(seconds)) {
                return;
            }
            wantsMore = visitor.frame(index, seconds, OptionalDouble.empty(), clip.converted(frame));
        }

        private double seconds(AVFrame frame) {
            if (framesPerSecond > 0) {
                return index / framesPerSecond;
            }
            long stamp = frame.best_effort_timestamp();
            return stamp == AV_NOPTS_VALUE ? index * clip.nominalSpacing() : stamp * clip.tick();
        }

        /** Checksum of the luminance plane: equal only for byte-identical repeats. */
        private long fingerprint(AVFrame frame) {
            int length = Math.abs(frame.linesize(0));
            if (row.length != length) {
                row = new byte[length];
            }
            crc.reset();
            BytePointer plane = frame.data(0);
            for (int y = 0; y < frame.height(); y++) {
                plane.position((long) y * frame.linesize(0));
                plane.get(row, 0, length);
                crc.update(row, 0, length);
            }
            plane.position(0);
            return crc.getValue();
        }
    }
}
