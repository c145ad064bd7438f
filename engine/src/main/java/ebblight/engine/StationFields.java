package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.sky.Place;
import ebblight.core.tide.Station;
import java.util.ArrayList;
import java.util.List;

/** Tide stations in documents: {@code harmonics} are rows of name, amplitude in metres and phase in degrees. */
public final class StationFields {

    private StationFields() {}

    /** The station as an object that requests hold. */
    public static JsonObject write(Station station) {
        JsonObject one = describe(station);
        one.put("meanMetres", station.meanMetres());
        JsonArray rows = new JsonArray();
        for (Station.Harmonic harmonic : station.harmonics()) {
            JsonArray row = new JsonArray();
            row.add(harmonic.name());
            row.add(harmonic.amplitudeMetres());
            row.add(harmonic.phaseDegrees());
            rows.add(row);
        }
        one.put("harmonics", rows);
        return one;
    }

    /** What a person wants to know of a station. */
    static JsonObject describe(Station station) {
        JsonObject one = new JsonObject();
        one.put("id", station.id());
        one.put("name", station.name());
        one.put("country", station.country());
        one.put("latitude", station.place().latitudeDegrees());
        one.put("longitude", station.place().longitudeDegrees());
        one.put("datum", station.datum());
        one.put("source", station.source());
        one.put("licence", station.licence());
        return one;
    }

    static Station read(Fields fields) {
        List<Station.Harmonic> harmonics = new ArrayList<>();
        JsonArray rows = fields.rows("harmonics");
        for (int i = 0; i < rows.size(); i++) {
            String field = fields.path("harmonics") + "[" + i + "]";
            if (!(rows.get(i) instanceof JsonArray row)
                    || row.size() != 3
                    || !row.isString(0)
                    || !row.isNumber(1)
                    || !row.isNumber(2)) {
                throw new RequestException(field, "must be name, amplitude in metres and phase in degrees");
            }
            harmonics.add(Checked.of(
                    field, () -> new Station.Harmonic(row.getString(0), row.getDouble(1), row.getDouble(2))));
        }
        return Checked.of(
                fields.path("harmonics"),
                () -> new Station(
                        fields.text("id", ""),
                        fields.text("name", ""),
                        fields.text("country", ""),
                        Place.of(fields.number("latitude"), fields.number("longitude")),
                        fields.text("datum", "MSL"),
                        fields.number("meanMetres", 0),
                        harmonics,
                        fields.text("source", ""),
                        fields.text("licence", "")));
    }
}
