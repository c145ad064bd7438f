package ebblight.core.tide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import ebblight.core.Oracles;
import ebblight.core.numeric.Epoch;
import ebblight.core.sky.Place;
import java.io.IOException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Predictions against other programs fed with the same constants ({@code tide_oracle.json}: an independent program after
 * SP 98, and one from the npm registry) and against printed rows.
 */
class TideReferenceTest {

    private static final List<String> WITHOUT = List.of("M1", "M3");

    private static JsonObject oracle() throws IOException, JsonParserException {
        return JsonParser.object().from(Oracles.text("tide_oracle.json"));
    }

    private static Station station(JsonObject json, double meanMetres, List<String> without) {
        List<Station.Harmonic> harmonics = new ArrayList<>();
        for (Object each : json.getArray("constituents")) {
            JsonObject one = (JsonObject) each;
            if (!without.contains(one.getString("name"))) {
                harmonics.add(new Station.Harmonic(
                        one.getString("name"), one.getDouble("amplitude"), one.getDouble("phase")));
            }
        }
        return new Station(
                json.getString("id"),
                json.getString("name"),
                json.getString("country"),
                Place.of(json.getDouble("latitude"), json.getDouble("longitude")),
                "MSL",
                meanMetres,
                harmonics,
                "oracle",
                "as stated in the file");
    }

    private record Worst(double metres, double minutes, double range) {}

    private static Worst compare(TideCurve curve, JsonObject prediction) {
        double metres = 0;
        double low = 99;
        double high = -99;
        for (Object each : prediction.getArray("hourly")) {
            JsonArray row = (JsonArray) each;
            Instant at = Instant.parse(row.getString(0).replace("Z", ":00Z"));
            metres = Math.max(metres, Math.abs(curve.heightMetres(Epoch.seconds(at)) - row.getDouble(1)));
            low = Math.min(low, row.getDouble(1));
            high = Math.max(high, row.getDouble(1));
        }
        double start = day(prediction.getString("start"));
        double end = day(prediction.getString("end"));
        List<TideExtreme> ours = TideExtreme.between(curve, start - 7200, end + 7200);
        double minutes = 0;
        for (Object each : prediction.getArray("extremes")) {
            JsonArray row = (JsonArray) each;
            TideExtreme.Kind kind = row.getString(2).equals("H") ? TideExtreme.Kind.HIGH : TideExtreme.Kind.LOW;
            double at = Epoch.seconds(Instant.parse(row.getString(0)));
            double nearest = ours.stream()
                    .filter(e -> e.kind() == kind)
                    .map(e -> Math.abs(Epoch.seconds(e.time()) - at))
                    .min(Comparator.naturalOrder())
                    .orElseThrow();
            // at a stand the hour means nothing: the level does
            double level = curve.heightMetres(at) - row.getDouble(1);
            metres = Math.max(metres, Math.abs(level));
            minutes = Math.max(minutes, stand(curve, at) ? 0 : nearest / 60);
        }
        return new Worst(metres, minutes, high - low);
    }

    /** Whether the water stands: less than 2 cm of change within an hour either way. */
    private static boolean stand(TideCurve curve, double at) {
        double level = curve.heightMetres(at);
        return Math.abs(curve.heightMetres(at - 3600) - level) < 0.02
                && Math.abs(curve.heightMetres(at + 3600) - level) < 0.02;
    }

    private static double day(String date) {
        return Epoch.seconds(LocalDate.parse(date).atStartOfDay().toInstant(ZoneOffset.UTC));
    }

    @Test
    void withoutM1AndM3BothOtherProgramsAreMatchedTightly() throws IOException, JsonParserException {
        int compared = 0;
        for (Object each : oracle().getArray("stations")) {
            JsonObject json = (JsonObject) each;
            boolean diurnal = json.getDouble("formFactor") > 3;
            for (Object one : json.getArray("predictions")) {
                JsonObject prediction = (JsonObject) one;
                if (prediction.getString("engine").endsWith("-noM1M3")) {
                    double start = day(prediction.getString("start"));
                    Worst worst = compare(station(json, 0, WITHOUT).curve(start, start + 4 * 86_400), prediction);
                    String what = json.getString("name") + " " + prediction.getString("engine") + " " + worst;
                    assertThat(worst.metres()).as(what).isLessThan(0.005);
                    assertThat(worst.minutes()).as(what).isLessThan(diurnal ? 1.5 : 0.3);
                    compared++;
                }
            }
        }
        assertThat(compared).isEqualTo(36);
    }

    @Test
    void withAllConstituentsTheIndependentProgramIsMatched() throws IOException, JsonParserException {
        int compared = 0;
        for (Object each : oracle().getArray("stations")) {
            JsonObject json = (JsonObject) each;
            double form = json.getDouble("formFactor");
            for (Object one : json.getArray("predictions")) {
                JsonObject prediction = (JsonObject) one;
                if (prediction.getString("engine").equals("schureman-sp98")) {
                    double start = day(prediction.getString("start"));
                    Worst worst = compare(station(json, 0, List.of()).curve(start, start + 4 * 86_400), prediction);
                    String what = json.getString("name") + " " + worst;
                    assertThat(worst.metres()).as(what).isLessThan(0.01 * worst.range());
                    if (form < 3) {
                        assertThat(worst.minutes()).as(what).isLessThan(form < 0.25 ? 2 : 10);
                    }
                    compared++;
                }
            }
        }
        assertThat(compared).isEqualTo(18);
    }

    @Test
    void printedRowsOfBostonAreMet() throws IOException, JsonParserException {
        JsonObject oracle = oracle();
        JsonObject boston = (JsonObject) oracle.getArray("stations").get(0);
        double meanMetres = boston.getObject("datums").getDouble("MSL")
                - boston.getObject("datums").getDouble("MLLW");
        JsonObject published = (JsonObject) oracle.getArray("published_checks").get(0);
        double start = day("2004-04-19");
        HarmonicTide curve = station(boston, meanMetres, List.of()).curve(start, start + 2 * 86_400);
        List<TideExtreme> ours = TideExtreme.between(curve, start, start + 2 * 86_400);
        for (Object each : published.getArray("rows")) {
            JsonArray row = (JsonArray) each;
            Instant at = Instant.parse(row.getString(0) + ":00Z").plusSeconds(5 * 3600);
            TideExtreme nearest = ours.stream()
                    .min(Comparator.comparing(e -> Math.abs(Epoch.seconds(e.time()) - Epoch.seconds(at))))
                    .orElseThrow();
            assertThat(Epoch.seconds(nearest.time())).isCloseTo(Epoch.seconds(at), within(300.0));
            assertThat(nearest.heightMetres() / 0.3048).isCloseTo(row.getDouble(2), within(0.3));
            assertThat(nearest.kind())
                    .isEqualTo(row.getString(1).equals("H") ? TideExtreme.Kind.HIGH : TideExtreme.Kind.LOW);
        }
    }

    @Test
    void heightsAndRatesDoNotJumpAtMidnight() throws IOException, JsonParserException {
        JsonObject saintMalo = (JsonObject) oracle().getArray("stations").get(3);
        double start = day("2026-03-01");
        HarmonicTide curve = station(saintMalo, 0, List.of()).curve(start, start + 40 * 86_400);
        for (double midnight = start + 86_400; midnight < start + 40 * 86_400; midnight += 86_400) {
            double jump = curve.heightMetres(midnight) - curve.heightMetres(midnight - 1e-3);
            assertThat(Math.abs(jump)).isLessThan(0.0015);
            assertThat(Math.abs(curve.risingMetresPerHour(midnight))).isLessThan(curve.fastestMetresPerHour());
        }
        // outside of the days at hand it is the same curve
        HarmonicTide narrow = station(saintMalo, 0, List.of()).curve(start, start);
        assertThat(narrow.heightMetres(start + 20.3 * 86_400)).isEqualTo(curve.heightMetres(start + 20.3 * 86_400));
    }
}
