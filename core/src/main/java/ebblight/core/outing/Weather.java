package ebblight.core.outing;

import ebblight.core.light.CloudCover;
import ebblight.core.numeric.Epoch;
import ebblight.core.tide.Swell;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What a forecast says of air and sea: rows at instants, straight lines between them; directions hold until the next
 * row. Not known before the first row, after the last, and across gaps of more than 12 hours.
 */
public final class Weather {

    private static final double LONGEST_GAP_SECONDS = 12 * 3600;
    private static final double SWELL_STEP_SECONDS = 900;

    private final double[] seconds;
    private final Map<Kind, double[]> values = new EnumMap<>(Kind.class);

    /** What a forecast tells; the word is the column's name. */
    public enum Kind {
        /** Share of the sky under cloud, 0 to 1. */
        CLOUD("cloudCover", "", 0, 1, false),
        /** Wind. */
        WIND("windMetresPerSecond", "m/s", 0, 100, false),
        /** Where the wind comes from. */
        WIND_FROM("windFromDegrees", "°", 0, 360, true),
        /** Air pressure at the sea. */
        PRESSURE("pressureHectopascals", "hPa", 850, 1100, false),
        /** Significant height of the swell. */
        SWELL("swellMetres", "m", 0, 20, false),
        /** Time between its crests. */
        SWELL_PERIOD("swellSeconds", "s", 0, 30, false),
        /** Where it comes from. */
        SWELL_FROM("swellFromDegrees", "°", 0, 360, true);

        private final String word;
        private final String unit;
        private final double low;
        private final double high;
        private final boolean direction;

        Kind(String word, String unit, double low, double high, boolean direction) {
            this.word = word;
            this.unit = unit;
            this.low = low;
            this.high = high;
            this.direction = direction;
        }

        /** Name of the column and of the wish. */
        public String word() {
            return word;
        }

        /** Its name for a person: "swell period". */
        String plainWord() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }

        String unit() {
            return unit;
        }

        /** Degrees from north, clockwise: a range of them may run over north, as 300 to 420 does. */
        public boolean direction() {
            return direction;
        }

        void check(double value) {
            if (!(Double.isNaN(value) || (value >= low && value <= high))) {
                throw new IllegalArgumentException(word + " lies between " + low + " and " + high + ", was " + value);
            }
        }
    }

    /** A row of a forecast; what it does not tell is left out. */
    public record Row(Instant time, Map<Kind, Double> values) {
        public Row {
            values = Map.copyOf(values);
            values.forEach(Kind::check);
        }
    }

    /** A forecast of at least one row, in order of time. */
    public Weather(List<Row> rows) {
        if (rows.isEmpty()) {
            throw new IllegalArgumentException("a forecast has at least one row");
        }
        seconds = new double[rows.size()];
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = Epoch.seconds(rows.get(i).time());
            if (i > 0 && seconds[i] <= seconds[i - 1]) {
                throw new IllegalArgumentException("the rows of a forecast come in order of time, "
                        + rows.get(i).time() + " does not");
            }
        }
        for (Kind kind : Kind.values()) {
            double[] column = new double[seconds.length];
            boolean any = false;
            for (int i = 0; i < column.length; i++) {
                column[i] = rows.get(i).values().getOrDefault(kind, Double.NaN);
                any |= !Double.isNaN(column[i]);
            }
            if (any) {
                values.put(kind, column);
            }
        }
    }

    /** Whether any row tells this. */
    boolean tells(Kind kind) {
        return values.containsKey(kind);
    }

    private int row(double epochSeconds) {
        int row = 0;
        int end = seconds.length;
        while (end - row > 1) {
            int middle = (row + end) / 2;
            if (seconds[middle] <= epochSeconds) {
                row = middle;
            } else {
                end = middle;
            }
        }
        return row;
    }

    /** The value at an instant; not a number where it is not known. */
    double value(Kind kind, double epochSeconds) {
        double[] column = values.get(kind);
        if (column == null || epochSeconds < seconds[0] || epochSeconds > seconds[seconds.length - 1]) {
            return Double.NaN;
        }
        int i = row(epochSeconds);
        if (epochSeconds == seconds[i]) {
            return column[i];
        }
        double gap = seconds[i + 1] - seconds[i];
        if (gap > LONGEST_GAP_SECONDS) {
            return Double.NaN;
        }
        return kind.direction()
                ? column[i]
                : column[i] + (column[i + 1] - column[i]) * (epochSeconds - seconds[i]) / gap;
    }

    /** Whole minutes until the next row, where something may begin or cease to be known. */
    double minutesKnown(double epochSeconds) {
        int next = epochSeconds < seconds[0] ? 0 : row(epochSeconds) + 1;
        return next < seconds.length ? Math.ceil((seconds[next] - epochSeconds) / 60) : 1;
    }

    /** A bound on how fast it changes in a minute. */
    double fastestPerMinute(Kind kind) {
        double[] column = values.get(kind);
        double fastest = 1e-9;
        for (int i = 1; column != null && i < column.length; i++) {
            double slope = 60 * Math.abs(column[i] - column[i - 1]) / (seconds[i] - seconds[i - 1]);
            if (slope > fastest) {
                fastest = slope;
            }
        }
        return fastest;
    }

    /**
     * The swell that runs up highest between two instants, where both its height and its period are told; empty where
     * they are not, or where the sea is flat.
     */
    public Optional<Swell> highestSwell(double fromEpochSeconds, double toEpochSeconds) {
        Optional<Swell> highest = Optional.empty();
        for (double t = fromEpochSeconds; t <= toEpochSeconds; t += SWELL_STEP_SECONDS) {
            double height = value(Kind.SWELL, t);
            double period = value(Kind.SWELL_PERIOD, t);
            if (height > 0 && period >= Swell.SHORTEST_SECONDS) {
                Swell swell = new Swell(height, period);
                if (highest.isEmpty() || swell.runUpMetres() > highest.get().runUpMetres()) {
                    highest = Optional.of(swell);
                }
            }
        }
        return highest;
    }

    /** What its clouds take from the light; {@code otherwise} where it does not tell. */
    public CloudCover cloud(CloudCover otherwise) {
        return tells(Kind.CLOUD) ? new ForecastCloud(this, otherwise) : otherwise;
    }

    /**
     * Stops by cover: none up to a quarter, 1 at half, 1.6 at seven eighths (average cloud), 3.3 when all is covered
     * (dark stratus); after the divisors of USNO Circular 171, straight lines between.
     */
    private record ForecastCloud(Weather weather, CloudCover otherwise) implements CloudCover {

        private static final double[] COVER = {0, 0.25, 0.5, 0.875, 1};
        private static final double[] STOPS = {0, 0, 1, 1.585, 3.322};
        private static final double STEEPEST = (3.322 - 1.585) / 0.125;

        @Override
        public double stops(double epochSeconds) {
            double cover = weather.value(Kind.CLOUD, epochSeconds);
            if (Double.isNaN(cover)) {
                return otherwise.stops(epochSeconds);
            }
            int i = 0;
            while (i + 2 < COVER.length && cover > COVER[i + 1]) {
                i++;
            }
            return STOPS[i] + (STOPS[i + 1] - STOPS[i]) * (cover - COVER[i]) / (COVER[i + 1] - COVER[i]);
        }

        /** Where the forecast begins and ends the cover may jump: no bound that helps. */
        @Override
        public double fastestStopsPerMinute() {
            return STOPS[STOPS.length - 1] + STEEPEST * weather.fastestPerMinute(Kind.CLOUD);
        }

        @Override
        public String word() {
            return "as forecast";
        }
    }
}
