package ebblight.engine;

import com.grack.nanojson.JsonObject;
import ebblight.core.exposure.DatedReading;
import ebblight.core.exposure.MeterReading;
import ebblight.core.numeric.Work;
import java.util.ArrayList;
import java.util.List;

/**
 * Answers {@code light/1}: the light at the moment the shutter opens, carried forward from the last of some dated
 * readings at a typed rate, or at the rate that the last two tell.
 */
final class LightAnswerer implements Engine.Answerer {

    @Override
    public JsonObject answer(JsonObject json, Blobs blobs, Work work) {
        Fields request = new Fields(json, "");
        List<DatedReading> readings = new ArrayList<>();
        for (Fields row : request.parts("readings")) {
            MeterReading meter = Checked.of(row.path("meter"), () -> MeterReading.parse(row.text("meter")));
            readings.add(Checked.of(row.path("atSeconds"), () -> new DatedReading(meter, row.number("atSeconds"))));
        }
        if (readings.isEmpty()) {
            throw new RequestException("readings", "give at least one, taken without filters");
        }
        DatedReading last = readings.get(readings.size() - 1);
        double openAt = request.number("openAtSeconds", last.atSeconds());
        String from = "none";
        DatedReading.Rate rate = new DatedReading.Rate(0, 0);
        if (request.has("stopsPerMinute")) {
            rate = new DatedReading.Rate(request.number("stopsPerMinute", 0, -5, 5), 0);
            from = "typed";
        } else if (readings.size() > 1) {
            DatedReading before = readings.get(readings.size() - 2);
            rate = Checked.of("readings", () -> before.rateTo(last));
            from = "readings";
        }
        JsonObject answer = new JsonObject();
        answer.put("exposureValue100", last.exposureValueAt(openAt, rate.stopsPerMinute()));
        answer.put("meteredValue100", last.reading().exposureValue100());
        answer.put("stopsPerMinute", rate.stopsPerMinute());
        answer.put("rangeStopsPerMinute", rate.rangeStopsPerMinute());
        answer.put("rateFrom", from);
        answer.put("ageMinutes", (openAt - last.atSeconds()) / 60);
        answer.put("staleAfterMinutes", last.staleAfterMinutes());
        answer.put("stale", last.staleAt(openAt));
        return answer;
    }
}
