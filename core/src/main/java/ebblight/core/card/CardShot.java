package ebblight.core.card;

/**
 * A frame of one view by its numbers; what is not known is not a number.
 *
 * @param opensSeconds when the shutter opened, on any clock
 * @param openSeconds how long it was open
 * @param exposureValue100 of its settings, at ISO 100
 * @param levelStops how bright the still parts came out against the other frames of the view
 */
public record CardShot(double opensSeconds, double openSeconds, double exposureValue100, double levelStops) {

    /** When half of its time had passed. */
    double middleSeconds() {
        return opensSeconds + openHalf();
    }

    private double openHalf() {
        return Double.isNaN(openSeconds) ? 0 : openSeconds / 2;
    }

    double closesSeconds() {
        return opensSeconds + 2 * openHalf();
    }

    /** Light that came through to the sensor, in stops: what stands in the file with the settings taken off. */
    double lightStops() {
        return levelStops + exposureValue100;
    }
}
