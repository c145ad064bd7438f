package ebblight.engine;

import ebblight.core.exposure.ShutterTime;
import java.util.Optional;

/**
 * The picture that is wished for, in {@code exposure}: {@code time}, or {@code from} and {@code to}; and
 * {@code busySeconds} from one frame to the next.
 *
 * @param fromSeconds shortest shutter time wished
 * @param toSeconds longest
 * @param busySeconds between closing the shutter and opening it again
 */
record FrameFields(double fromSeconds, double toSeconds, double busySeconds) {

    /** Saving, looking, and the next press of the key: common practice. */
    private static final double BUSY_SECONDS = 5;

    static Optional<FrameFields> read(Fields fields) {
        if (!fields.has("exposure")) {
            return Optional.empty();
        }
        Fields exposure = fields.part("exposure");
        boolean one = exposure.has("time");
        double from = seconds(exposure, one ? "time" : "from");
        double to = one ? from : seconds(exposure, "to");
        double busy = exposure.number("busySeconds", BUSY_SECONDS);
        if (from > to) {
            throw new RequestException(exposure.path("to"), "must not be shorter than from");
        }
        if (!(busy >= 0 && busy <= 7200)) {
            throw new RequestException(exposure.path("busySeconds"), "must lie between 0 and 7200, was " + busy);
        }
        return Optional.of(new FrameFields(from, to, busy));
    }

    private static double seconds(Fields fields, String name) {
        return Checked.of(fields.path(name), () -> ShutterTime.parse(fields.text(name)));
    }

    /** How many frames of the longest time fit, the first opened at the start and the last closed at the end. */
    long fit(double windowSeconds) {
        return (long) Math.floor((windowSeconds + busySeconds) / (toSeconds + busySeconds) + 1e-9);
    }
}
