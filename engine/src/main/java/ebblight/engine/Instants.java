package ebblight.engine;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads and writes instants in documents: ISO 8601 with Z or an offset. */
final class Instants {

    private static final Pattern FORM = Pattern.compile("(\\d{4})-(\\d{2})-(\\d{2})[Tt"
            + " ](\\d{2}):(\\d{2})(?::(\\d{2})(?:\\.(\\d{1,9}))?)?(Z|z|[+-]\\d{2}(?::?\\d{2})?)");

    private static final Pattern OFFSET = Pattern.compile("Z|z|[+-]\\d{2}(:?\\d{2})?");

    private static final String EXPECTED = "expected an instant such as 2027-01-10T16:30:00Z or 2027-01-10T17:30+01:00";

    private Instants() {}

    /** The instant in a field of a request. */
    static Instant read(Fields fields, String name) {
        return parse(fields.path(name), fields.text(name));
    }

    static Instant parse(String field, String typed) {
        Matcher m = FORM.matcher(typed.trim());
        if (!m.matches()) {
            throw new RequestException(field, "\"" + typed + "\" cannot be read; " + EXPECTED);
        }
        try {
            return LocalDateTime.of(
                            Integer.parseInt(m.group(1)),
                            Integer.parseInt(m.group(2)),
                            Integer.parseInt(m.group(3)),
                            Integer.parseInt(m.group(4)),
                            Integer.parseInt(m.group(5)),
                            m.group(6) == null ? 0 : Integer.parseInt(m.group(6)),
                            m.group(7) == null ? 0 : Integer.parseInt((m.group(7) + "00000000").substring(0, 9)))
                    .toInstant(offset(m.group(8)));
        } catch (DateTimeException e) {
            throw new RequestException(field, "\"" + typed + "\" does not exist (" + e.getMessage() + "); " + EXPECTED);
        }
    }

    /** The offset in a table, refused when it has another form. */
    static ZoneOffset checkedOffset(String typed) {
        if (!OFFSET.matcher(typed).matches()) {
            throw new IllegalArgumentException("\"" + typed + "\" is no offset; expected Z or one such as +01:00");
        }
        return offset(typed);
    }

    /** The offset {@code Z}, {@code +02:00} or {@code -03}. */
    static ZoneOffset offset(String typed) {
        if (typed.equals("Z") || typed.equals("z")) {
            return ZoneOffset.UTC;
        }
        String digits = typed.substring(1).replace(":", "");
        int sign = typed.charAt(0) == '-' ? -1 : 1;
        int hours = Integer.parseInt(digits.substring(0, 2));
        int minutes = digits.length() > 2 ? Integer.parseInt(digits.substring(2)) : 0;
        return ZoneOffset.ofHoursMinutes(sign * hours, sign * minutes);
    }

    /** The instant to the nearest second, with Z. */
    static String write(Instant instant) {
        return Instant.ofEpochSecond(Math.floorDiv(instant.toEpochMilli() + 500, 1000L))
                .toString();
    }
}
