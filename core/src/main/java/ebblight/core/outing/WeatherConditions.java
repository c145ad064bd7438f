package ebblight.core.outing;

import ebblight.core.exposure.Numbers;

/** Wishes about air and sea where a forecast tells them; where it does not, nothing is asked. */
final class WeatherConditions {

    private WeatherConditions() {}

    static Condition of(Weather weather, Weather.Kind kind, Range range) {
        return new Forecast(weather, kind, range);
    }

    private record Forecast(Weather weather, Weather.Kind kind, Range range) implements Condition {

        private static final double UNKNOWN_MARGIN = 0;
        private static final double FULL_TURN_DEGREES = 360;

        @Override
        public String word() {
            return kind.word();
        }

        @Override
        public String unit() {
            return kind.unit();
        }

        @Override
        public double margin(double epochSeconds) {
            double value = weather.value(kind, epochSeconds);
            if (Double.isNaN(value)) {
                return UNKNOWN_MARGIN;
            }
            return kind.direction()
                    ? Math.max(range.margin(value), range.margin(value + FULL_TURN_DEGREES))
                    : range.margin(value);
        }

        /** A margin of 0, or the edge of what is known, is looked at every minute. */
        @Override
        public int look(double epochSeconds, double margin) {
            if (kind.direction() || margin == UNKNOWN_MARGIN) {
                return 1;
            }
            int minutes = Looking.again(margin, weather.fastestPerMinute(kind), 0);
            return (int) Math.max(1, Math.min(minutes, weather.minutesKnown(epochSeconds)));
        }

        @Override
        public String words(double fromEpochSeconds, double toEpochSeconds) {
            double value = weather.value(kind, (fromEpochSeconds + toEpochSeconds) / 2);
            return Double.isNaN(value)
                    ? kind.plainWord() + " not forecast"
                    : kind.plainWord() + " " + Numbers.shortest(value, kind == Weather.Kind.CLOUD ? 2 : 1)
                            + (kind.unit().isEmpty() ? "" : " " + kind.unit());
        }
    }
}
