package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.numeric.Epoch;
import ebblight.core.numeric.Rounding;
import ebblight.core.numeric.Work;
import ebblight.core.sky.Place;
import ebblight.core.tide.SpringsAndNeaps;
import ebblight.core.tide.Station;
import ebblight.core.tide.TideCurve;
import ebblight.core.tide.TideExtreme;
import ebblight.core.tide.TideSpans;
import ebblight.core.tide.TideTable;
import ebblight.core.tide.WaterGuard;
import java.util.Optional;

/** Answers {@code tide/1}: heights, high and low waters, springs and neaps, and by when to be off the rock. */
final class TideAnswerer implements Engine.Answerer {

    private static final double LONGEST_SECONDS = 400 * 86_400;
    private static final int MOST_ROWS = 60_000;

    /** What weather does to the water on most days, either way, in metres; storms do more. Common practice. */
    private static final double WEATHER_METRES = 0.3;

    /** Half a cosine between waters against a harmonic prediction: about a twentieth of the range. */
    private static final double COSINE_SHARE = 0.05;

    private static final double FAR_KILOMETRES = 40;

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields fields = new Fields(json, "");
        double from = Epoch.seconds(Instants.read(fields, "from"));
        double to = Epoch.seconds(Instants.read(fields, "to"));
        if (!(to > from && to - from <= LONGEST_SECONDS)) {
            throw new RequestException("to", "must come after from, at most 400 days later");
        }
        TideFields tide = TideFields.read(fields, from, to);
        TideCurve curve = tide.curve();
        double start = from;
        double end = to;
        JsonArray warnings = new JsonArray();
        if (curve instanceof TideTable table) {
            start = Math.max(from, Epoch.seconds(table.extremes().get(0).time()));
            end = Math.min(
                    to,
                    Epoch.seconds(
                            table.extremes().get(table.extremes().size() - 1).time()));
        }
        warnOfEnds(curve, from, to, warnings);
        JsonObject answer = new JsonObject();
        answer.put("from", Instants.write(Epoch.instant(from)));
        answer.put("to", Instants.write(Epoch.instant(to)));
        putStation(answer, fields, tide.station(), warnings);
        answer.put("extremes", start < end ? extremes(curve, start, end) : new JsonArray());
        answer.put("heights", heights(fields, curve, from, to));
        answer.put("springs", springs(tide.station(), from, to));
        answer.put("levelRangeMetres", levelRange(tide, start, end));
        if (fields.has("between")) {
            answer.put("spans", spans(fields.part("between"), curve, start, end));
        }
        if (fields.has("guard")) {
            answer.put("guard", GuardAnswer.of(fields.part("guard"), curve));
        }
        answer.put("warnings", warnings);
        JsonArray cautions = new JsonArray();
        cautions.add(WaterGuard.CAUTION);
        answer.put("cautions", cautions);
        return answer;
    }

    /** A table that ends within the span leaves the rest of it without water: said, so that nobody takes it for dry land. */
    static void warnOfEnds(TideCurve curve, double from, double to, JsonArray warnings) {
        if (curve instanceof TideTable table && !(table.knows(from) && table.knows(to))) {
            warnings.add("the table of waters runs from "
                    + Instants.write(table.extremes().get(0).time()) + " to "
                    + Instants.write(
                            table.extremes().get(table.extremes().size() - 1).time())
                    + "; outside of it the water is not known");
        }
    }

    static void putStation(JsonObject answer, Fields fields, Optional<Station> known, JsonArray warnings) {
        if (known.isEmpty()) {
            answer.put("station", null);
            answer.put("datum", fields.text("datum", "the datum of the table"));
            answer.put("leftOut", new JsonArray());
            return;
        }
        Station station = known.get();
        JsonObject described = StationFields.describe(station);
        if (fields.has("at")) {
            Place place = PlaceFields.place(fields);
            double kilometres = place.kilometresTo(station.place());
            described.put("distanceKilometres", kilometres);
            if (kilometres > FAR_KILOMETRES) {
                warnings.add("the tide station, " + station.name() + ", is " + Rounding.up(kilometres)
                        + " km away: hours and heights at your place may be quite different; use a local table");
            }
        }
        answer.put("station", described);
        answer.put("datum", station.datum());
        JsonArray leftOut = new JsonArray();
        double metres = 0;
        for (Station.Harmonic harmonic : station.unknown()) {
            JsonObject one = new JsonObject();
            one.put("name", harmonic.name());
            one.put("amplitudeMetres", harmonic.amplitudeMetres());
            leftOut.add(one);
            metres += harmonic.amplitudeMetres();
        }
        answer.put("leftOut", leftOut);
        if (metres >= 0.01) {
            warnings.add("left out because no list that was read tells their phase: "
                    + String.join(
                            ", ",
                            station.unknown().stream()
                                    .map(Station.Harmonic::name)
                                    .toList())
                    + ", together at most " + Rounding.up(100 * metres) + " cm");
        }
        if (station.datum().equals("MSL")) {
            warnings.add("heights are above mean sea level, not above a chart datum");
        }
    }

    private static JsonArray extremes(TideCurve curve, double from, double to) {
        JsonArray rows = new JsonArray();
        for (TideExtreme extreme : TideExtreme.between(curve, from, to)) {
            JsonObject row = new JsonObject();
            row.put("time", Instants.write(extreme.time()));
            row.put("heightMetres", extreme.heightMetres());
            row.put("kind", extreme.kind().word());
            rows.add(row);
        }
        return rows;
    }

    private static JsonArray heights(Fields fields, TideCurve curve, double from, double to) {
        JsonArray rows = new JsonArray();
        if (!fields.has("everySeconds")) {
            return rows;
        }
        double step = fields.number("everySeconds");
        if (!(step >= 1 && (to - from) / step <= MOST_ROWS)) {
            throw new RequestException(
                    "everySeconds", "must be at least 1 s and give at most " + MOST_ROWS + " rows, was " + step);
        }
        for (int i = 0; from + i * step <= to; i++) {
            double t = from + i * step;
            JsonObject row = new JsonObject();
            row.put("time", Instants.write(Epoch.instant(t)));
            boolean known = curve.knows(t);
            row.put("heightMetres", known ? Json.number(curve.heightMetres(t)) : null);
            row.put("risingMetresPerHour", known ? Json.number(curve.risingMetresPerHour(t)) : null);
            rows.add(row);
        }
        return rows;
    }

    private static JsonArray springs(Optional<Station> station, double from, double to) {
        JsonArray rows = new JsonArray();
        if (station.isPresent()) {
            for (SpringsAndNeaps.Turn turn : SpringsAndNeaps.between(station.get(), from, to)) {
                JsonObject row = new JsonObject();
                row.put("time", Instants.write(turn.time()));
                row.put("kind", turn.springs() ? "springs" : "neaps");
                rows.add(row);
            }
        }
        return rows;
    }

    private static double levelRange(TideFields tide, double from, double to) {
        if (tide.station().isPresent()) {
            double leftOut = 0;
            for (Station.Harmonic harmonic : tide.station().get().unknown()) {
                leftOut += harmonic.amplitudeMetres();
            }
            return WEATHER_METRES + leftOut;
        }
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (TideExtreme extreme : TideExtreme.between(tide.curve(), from, Math.max(from, to))) {
            low = Math.min(low, extreme.heightMetres());
            high = Math.max(high, extreme.heightMetres());
        }
        return WEATHER_METRES + (high > low ? COSINE_SHARE * (high - low) : 0);
    }

    private static JsonArray spans(Fields fields, TideCurve curve, double from, double to) {
        double[] metres = fields.numbers("metres");
        if (metres.length != 2 || !(metres[0] < metres[1])) {
            throw new RequestException(fields.path("metres"), "must be a lower and a higher height, such as [1, 2.5]");
        }
        TideSpans.Direction direction =
                Checked.of(fields.path("direction"), () -> TideSpans.Direction.of(fields.text("direction", "any")));
        JsonArray rows = new JsonArray();
        if (from < to) {
            for (TideSpans.Span span : TideSpans.between(curve, from, to, metres[0], metres[1], direction)) {
                JsonObject row = new JsonObject();
                row.put("from", Instants.write(span.from()));
                row.put("to", Instants.write(span.to()));
                rows.add(row);
            }
        }
        return rows;
    }
}
