package ebblight.imaging;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoField;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** When a single picture was taken: from Exif, or from a file name that is a date and time to a part of a second. */
final class FrameTimes {

    private static final Pattern NAME = Pattern.compile("(\\d{4})(\\d{2})(\\d{2})_(\\d{2})(\\d{2})(\\d{2})_(\\d{1,6})");

    private FrameTimes() {}

    /** Seconds whose differences count: from 1970 on the local clock; empty when neither tells. */
    static OptionalDouble seconds(Path file, FrameFacts facts) {
        return facts.taken()
                .or(() -> fromName(file))
                .map(t -> OptionalDouble.of(seconds(t)))
                .orElseGet(OptionalDouble::empty);
    }

    private static double seconds(LocalDateTime time) {
        return time.toEpochSecond(ZoneOffset.UTC) + time.get(ChronoField.NANO_OF_SECOND) * 1e-9;
    }

    private static Optional<LocalDateTime> fromName(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        Matcher m = NAME.matcher(dot < 0 ? name : name.substring(0, dot));
        return m.matches() ? MatchedTime.of(m, m.group(7)) : Optional.empty();
    }
}
