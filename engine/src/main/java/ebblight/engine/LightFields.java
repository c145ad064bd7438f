package ebblight.engine;

import ebblight.core.exposure.MeterReading;
import ebblight.core.light.Cloud;
import ebblight.core.light.CloudCover;
import ebblight.core.light.LightModel;
import ebblight.core.numeric.Epoch;
import ebblight.core.sky.Sky;

/**
 * Reads what is known of the light: {@code cloud} where no row of {@code weather} tells a cover, and {@code meter} with
 * the instant it was read.
 */
final class LightFields {

    private LightFields() {}

    private static CloudCover cloud(Fields fields) {
        Cloud otherwise = Checked.of(fields.path("cloud"), () -> Cloud.of(fields.text("cloud", Cloud.CLEAR.word())));
        return HourFields.weather(fields).map(w -> w.cloud(otherwise)).orElse(otherwise);
    }

    static LightModel model(Fields fields, Sky sky) {
        LightModel model = LightModel.of(sky, cloud(fields));
        if (!fields.has("meter")) {
            return model;
        }
        Fields meter = fields.part("meter");
        MeterReading reading = Checked.of(meter.path("reading"), () -> MeterReading.parse(meter.text("reading")));
        double at = Epoch.seconds(Instants.read(meter, "time"));
        return Checked.of(meter.path("reading"), () -> model.withReading(at, reading.exposureValue100()));
    }
}
