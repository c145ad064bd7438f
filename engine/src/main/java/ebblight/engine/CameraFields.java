package ebblight.engine;

import ebblight.core.exposure.Camera;
import ebblight.core.exposure.ThirdStops;

/** Reads {@code camera/1}: every field may be left out and then has the standard camera's value. */
final class CameraFields {

    private CameraFields() {}

    static Camera read(Fields f) {
        Camera s = Camera.standard();
        double lowest = f.number("lowestIso", s.lowestIso());
        return Checked.of(
                "camera",
                () -> new Camera(
                        ThirdStops.exactFNumber(f.number("widestFNumber", s.widestFNumber())),
                        ThirdStops.exactFNumber(f.number("narrowestFNumber", s.narrowestFNumber())),
                        ThirdStops.exactIso(lowest),
                        ThirdStops.exactIso(f.number("highestIso", s.highestIso())),
                        ThirdStops.exactIso(f.number("baseIso", Math.max(lowest, s.baseIso()))),
                        f.number("timedLimitSeconds", s.timedLimitSeconds()),
                        ThirdStops.exactFNumber(f.number("sharpestFrom", s.sharpestFrom())),
                        ThirdStops.exactFNumber(f.number("sharpestTo", s.sharpestTo())),
                        f.flag("darkFrame", s.darkFrame()),
                        f.number("sensorWidthMillimetres", s.sensorWidthMillimetres()),
                        f.number("sensorHeightMillimetres", s.sensorHeightMillimetres()),
                        f.number("focalMillimetres", s.focalMillimetres()),
                        f.flag("opticalFinder", s.opticalFinder())));
    }
}
