package ebblight.engine;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;

/** Reads and writes instants in documents: ISO 8601 with Z or an offset. */
final class Instants {

    private static final String EXPECTED = "expected an instant such as 2027-01-10T16:30:00Z or 2027-01-10T17:30+01:00";

    private Instants() {}

    /** The instant in a field of a request. */
    static Instant read(Fields fields, String name) {
        return parse(fields.path(name), fields.text(name));
    }

    static Instant parse(String field, String typed) {
        TextReader rest = new TextReader(typed);
        int year = rest.digits(4, 4);
        int month = rest.one("-").digits(2, 2);
        int day = rest.one("-").digits(2, 2);
        int hour = rest.one("Tt ").digits(2, 2);
        int minute = rest.one(":").digits(2, 2);
        int second = 0;
        int billionths = 0;
        if (rest.next(":")) {
            second = rest.digits(2, 2);
            billionths = rest.next(".") ? rest.billionths() : 0;
        }
        try {
            ZoneOffset offset = offset(rest);
            if (!rest.readWhole()) {
                throw new RequestException(field, "\"" + typed + "\" cannot be read; " + EXPECTED);
            }
            return LocalDateTime.of(year, month, day, hour, minute, second, billionths)
                    .toInstant(offset);
        } catch (DateTimeException e) {
            throw new RequestException(field, "\"" + typed + "\" does not exist (" + e.getMessage() + "); " + EXPECTED);
        }
    }

    /** The offset {@code Z}, {@code +02:00} or {@code -03}. */
    static ZoneOffset offset(String typed) {
        TextReader rest = new TextReader(typed);
        ZoneOffset offset = offset(rest);
        if (!rest.readWhole()) {
            throw new IllegalArgumentException("\"" + typed + "\" is no offset; expected Z or one such as +01:00");
        }
        return offset;
    }

    private static ZoneOffset offset(TextReader rest) {
        if (rest.next("Zz")) {
            return ZoneOffset.UTC;
        }
        int sign = rest.next("-") ? -1 : 1;
        if (sign > 0) {
            rest.one("+");
        }
        int hours = rest.digits(2, 2);
        int minutes = rest.next(":") || rest.more() ? rest.digits(2, 2) : 0;
        return ZoneOffset.ofHoursMinutes(sign * hours, sign * minutes);
    }

    /** The instant to the nearest second, with Z. */
    static String write(Instant instant) {
        return Instant.ofEpochSecond(Math.floorDiv(instant.toEpochMilli() + 500, 1000L))
                .toString();
    }
}
