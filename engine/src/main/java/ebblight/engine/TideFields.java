package ebblight.engine;

import com.grack.nanojson.JsonArray;
import ebblight.core.tide.Station;
import ebblight.core.tide.TideCurve;
import ebblight.core.tide.TideExtreme;
import ebblight.core.tide.TideTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The water a request speaks of: a {@code station} with its constants, or a {@code table} of rows of time, height in
 * metres, and high or low.
 *
 * @param curve over the span that was asked
 * @param station when it is one
 */
record TideFields(TideCurve curve, Optional<Station> station) {

    private static final double MARGIN_SECONDS = 2 * 86_400;

    static boolean given(Fields fields) {
        return fields.has("station") || fields.has("table");
    }

    static TideFields read(Fields fields, double fromEpochSeconds, double toEpochSeconds) {
        if (fields.has("station") == fields.has("table")) {
            throw new RequestException(fields.path("station"), "give either a station or a table of waters");
        }
        if (fields.has("table")) {
            return new TideFields(table(fields), Optional.empty());
        }
        Station station = StationFields.read(fields.part("station"));
        return new TideFields(
                station.curve(fromEpochSeconds - MARGIN_SECONDS, toEpochSeconds + MARGIN_SECONDS),
                Optional.of(station));
    }

    private static TideTable table(Fields fields) {
        List<TideExtreme> waters = new ArrayList<>();
        JsonArray rows = fields.rows("table");
        for (int i = 0; i < rows.size(); i++) {
            String field = fields.path("table") + "[" + i + "]";
            if (!(rows.get(i) instanceof JsonArray row)
                    || row.size() != 3
                    || !row.isString(0)
                    || !row.isNumber(1)
                    || !row.isString(2)) {
                throw new RequestException(field, "must be time, height in metres, and high or low");
            }
            waters.add(new TideExtreme(
                    Instants.parse(field, row.getString(0)),
                    row.getDouble(1),
                    Checked.of(field, () -> TideExtreme.Kind.of(row.getString(2).trim()))));
        }
        return Checked.of(fields.path("table"), () -> new TideTable(waters));
    }
}
