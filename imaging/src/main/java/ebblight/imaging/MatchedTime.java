package ebblight.imaging;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.util.Optional;
import java.util.regex.Matcher;

/** A date and time from a matched text: year, month, day, hour, minute and second are its first six groups. */
final class MatchedTime {

    private MatchedTime() {}

    /**
     * The time; empty where the text does not match or names no day of the calendar.
     *
     * @param part digits of the part of a second, "25" for a quarter; anything else counts as none
     */
    static Optional<LocalDateTime> of(Matcher m, String part) {
        if (!m.matches()) {
            return Optional.empty();
        }
        int[] fields = new int[6];
        for (int i = 0; i < fields.length; i++) {
            fields[i] = Integer.parseInt(m.group(i + 1));
        }
        int nanos = part.matches("\\d{1,9}") ? Integer.parseInt((part + "00000000").substring(0, 9)) : 0;
        try {
            return Optional.of(
                    LocalDateTime.of(fields[0], fields[1], fields[2], fields[3], fields[4], fields[5], nanos));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
