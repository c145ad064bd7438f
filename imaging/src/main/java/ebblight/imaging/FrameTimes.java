package ebblight.imaging;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** When a single picture was taken: from Exif, or from a file name that is a date and time to a part of a second. */
final class FrameTimes {

    private static final Pattern NAME = Pattern.compile("(\\d{4})(\\d{2})(\\d{2})_(\\d{2})(\\d{2})(\\d{2})_(\\d{1,6})");

    private FrameTimes() {}

    /** Seconds whose differences count; empty when neither tells. */
    static OptionalDouble seconds(Path file, FrameFacts facts) {
        OptionalDouble exif = facts.localSeconds();
        return exif.isPresent() ? exif : fromName(file);
    }

    private static OptionalDouble fromName(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        Matcher m = NAME.matcher(dot < 0 ? name : name.substring(0, dot));
        if (!m.matches()) {
            return OptionalDouble.empty();
        }
        try {
            LocalDateTime time = LocalDateTime.of(
                    Integer.parseInt(m.group(1)),
                    Integer.parseInt(m.group(2)),
                    Integer.parseInt(m.group(3)),
                    Integer.parseInt(m.group(4)),
                    Integer.parseInt(m.group(5)),
                    Integer.parseInt(m.group(6)));
            return OptionalDouble.of(time.toEpochSecond(ZoneOffset.UTC) + Double.parseDouble("0." + m.group(7)));
        } catch (DateTimeException e) {
            return OptionalDouble.empty();
        }
    }
}
