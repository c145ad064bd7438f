package ebblight.app.plan;

import com.grack.nanojson.JsonArray;
import ebblight.app.ask.UsageException;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.time.zone.ZoneOffsetTransition;
import java.util.Locale;

/** Time zones: known here by name, told to the engine as a table of offsets. */
public final class Zone {

    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("HH:mm", Locale.ENGLISH);
    private static final DateTimeFormatter DAY_AND_HOUR =
            DateTimeFormatter.ofPattern("EEE d MMM HH:mm", Locale.ENGLISH);

    private static final DateTimeFormatter WEEKDAY_AND_HOUR = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ENGLISH);

    private final ZoneId id;

    private Zone(ZoneId id) {
        this.id = id;
    }

    /** The zone of a name such as {@code Europe/Paris}, {@code +01:00} or {@code UTC}. */
    public static Zone of(String option, String typed) {
        try {
            return new Zone(ZoneId.of(typed.trim()));
        } catch (DateTimeException e) {
            throw new UsageException(
                    option + ": \"" + typed + "\" is no time zone; expected one such as Atlantic/Reykjavik or +01:00");
        }
    }

    public String name() {
        return id.getId();
    }

    /** The day typed as 2027-01-10. */
    public static LocalDate day(String option, String typed) {
        try {
            return LocalDate.parse(typed.trim());
        } catch (DateTimeParseException e) {
            throw new UsageException(
                    option + ": \"" + typed + "\" is no day of the calendar; expected one such as 2027-01-10");
        }
    }

    public Instant start(LocalDate day) {
        return day.atStartOfDay(id).toInstant();
    }

    /** The instant of a clock time; the later one's offset where the clock leaps over it. */
    public Instant instant(LocalDateTime clock) {
        return clock.atZone(id).toInstant();
    }

    /** An hour of a day's clock; the one after it where the clock leaps over it. */
    public Instant at(LocalDate day, int hour) {
        return day.atTime(hour, 0).atZone(id).toInstant();
    }

    /** The offsets between two instants as rows of instant and offset; the first row holds from the start. */
    public JsonArray offsets(Instant from, Instant to) {
        JsonArray rows = new JsonArray();
        rows.add(row(from, id.getRules().getOffset(from)));
        ZoneOffsetTransition next = id.getRules().nextTransition(from);
        while (next != null && next.getInstant().isBefore(to)) {
            rows.add(row(next.getInstant(), next.getOffsetAfter()));
            next = id.getRules().nextTransition(next.getInstant());
        }
        return rows;
    }

    private static JsonArray row(Instant from, ZoneOffset offset) {
        JsonArray row = new JsonArray();
        row.add(from.toString());
        row.add(offset.getId());
        return row;
    }

    /** Hour and minute here, rounded to the minute. */
    public String hour(Instant instant) {
        return HOUR.format(instant.plus(Duration.ofSeconds(30)).atZone(id));
    }

    /** Hour and minute here of something that must not come later: the minute that has begun. */
    public String deadline(Instant instant) {
        return HOUR.format(instant.atZone(id));
    }

    /** The same with the day of the week before it. */
    public String dayAndDeadline(Instant instant) {
        return WEEKDAY_AND_HOUR.format(instant.atZone(id));
    }

    /** Day, hour and minute here, rounded to the minute. */
    public String dayAndHour(Instant instant) {
        return DAY_AND_HOUR.format(instant.plus(Duration.ofSeconds(30)).atZone(id));
    }

    public LocalDate date(Instant instant) {
        return instant.atZone(id).toLocalDate();
    }
}
