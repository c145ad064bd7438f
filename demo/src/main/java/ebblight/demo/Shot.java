package ebblight.demo;

import java.util.Optional;

/**
 * One frame of the card: how the camera was set and what is to be known of it.
 *
 * @param name of the file without its ending
 * @param composition which view it shows
 * @param opensSeconds when the shutter opens, after the start of the evening
 * @param exposureSeconds how long it stays open
 * @param fNumber aperture
 * @param isoSpeed speed of the sensor
 * @param filter what was screwed on
 * @param note why it is on the card
 */
public record Shot(
        String name,
        Composition composition,
        double opensSeconds,
        double exposureSeconds,
        double fNumber,
        double isoSpeed,
        Optional<Filter> filter,
        Note note) {

    /** The same settings under another name at another time. */
    Shot at(String newName, double newOpensSeconds) {
        return new Shot(newName, composition, newOpensSeconds, exposureSeconds, fNumber, isoSpeed, filter, note);
    }

    /** What the camera was pointed at. */
    public enum Composition {
        /** The whole cove, 28 mm. */
        COVE(28),
        /** The arch alone, 60 mm. */
        ARCH(60),
        /** The posts before the far shore, 50 mm. */
        POSTS(50),
        /** Nothing: the cap was on. */
        CAP(60);

        private final double focalMillimetres;

        Composition(double focalMillimetres) {
            this.focalMillimetres = focalMillimetres;
        }

        /** Focal length on a sensor 36 mm wide. */
        public double focalMillimetres() {
            return focalMillimetres;
        }
    }

    /** What a frame is on the card for. */
    public enum Note {
        /** Set as it should be. */
        GOOD,
        /** The tripod was touched while the shutter was open. */
        SHAKEN,
        /** ISO 1600 was left on from the frame before. */
        MIS_SET,
        /** One of a burst to be stacked. */
        BURST,
        /** No light: what the sensor makes by itself. */
        DARK
    }
}
