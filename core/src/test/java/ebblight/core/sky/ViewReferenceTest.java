package ebblight.core.sky;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Sun and moon in the picture: pinhole projection worked by hand and sky geometry. */
class ViewReferenceTest {

    private static CameraView wide(double azimuth, double altitude) {
        return new CameraView(azimuth, altitude, 24, 36, 24);
    }

    @Test
    void directionsFallWhereThePinholePutsThem() {
        // x = f (v·right)/(v·forward), y = f (v·up)/(v·forward): 24 mm on 36 × 24 mm, values worked outside
        CameraView.Spot near = wide(270, 5).spot(275, 2);
        assertThat(near.xMillimetres()).isCloseTo(2.101, within(1e-3));
        assertThat(near.yMillimetres()).isCloseTo(-1.255, within(1e-3));
        assertThat(wide(270, 5).offAxisDegrees(275, 2)).isCloseTo(5.822, within(1e-3));
        assertThat(wide(270, 0).spot(306, 0).xMillimetres()).isCloseTo(17.437, within(1e-3));
        assertThat(wide(270, 0).spot(307, 0).xMillimetres()).isCloseTo(18.085, within(1e-3));
        assertThat(wide(270, 20).spot(270, 48).yMillimetres()).isCloseTo(12.761, within(1e-3));
        assertThat(wide(270, 0).spot(90, 0).inFront()).isFalse();
    }

    @Test
    void partOfTheDiscIsEnoughToBeInThePicture() {
        double half = 0.27;
        assertThat(Standing.of(wide(270, 0), 306, 0.5, half, 0)).isEqualTo(Standing.INSIDE);
        // the edge lies at atan(18/24) = 36.870°: at 307° the middle is out by 0.13°, the limb still in
        assertThat(Standing.of(wide(270, 0), 307, 0.5, half, 0)).isEqualTo(Standing.INSIDE);
        assertThat(Standing.of(wide(270, 0), 307.2, 0.5, half, 0)).isEqualTo(Standing.FLARE);
        assertThat(Standing.of(wide(270, 20), 270, 48, half, 0)).isEqualTo(Standing.FLARE);
        assertThat(Standing.of(wide(270, 0), 340, 10, half, 0)).isEqualTo(Standing.SIDE);
        assertThat(Standing.of(wide(270, 0), 90, 10, half, 0)).isEqualTo(Standing.BEHIND);
        assertThat(Standing.of(wide(270, 0), 270, -1, half, 0)).isEqualTo(Standing.DOWN);
        assertThat(Standing.of(wide(270, 0), 270, 4, half, 5)).isEqualTo(Standing.DOWN);
        assertThat(wide(270, 0).outsideDegrees(307, 0)).isCloseTo(37 - 36.870, within(1e-3));
    }

    @Test
    void theSunEntersAndLeavesThePicture() {
        // at the equator on the equinox the sun sinks along azimuth 270 at 15° an hour: a view 53.13° high, level,
        // holds
        // it from altitude 26.57° + 0.27° to sunset
        Sky sky = new Sky(Place.of(0, 0), Ephemeris.computed());
        double noon = Epoch.seconds(Instant.parse("2026-03-20T12:00:00Z"));
        List<ViewPath.Visit> visits =
                ViewPath.visits(wide(270, 0), sky::sun, Sky.SUN_KILOMETRES, 0, noon, noon + 43_200);
        assertThat(visits).hasSize(1);
        double enters = Epoch.seconds(visits.get(0).enters());
        double leaves = Epoch.seconds(visits.get(0).leaves());
        assertThat(sky.sun(enters).apparentAltitudeDegrees()).isCloseTo(26.565 + 0.268, within(0.01));
        assertThat((leaves - enters) / 3600).isCloseTo((26.84 + 0.83) / 15, within(0.02));
        SkyEvents events =
                SkyEvents.between(sky, Instant.parse("2026-03-20T12:00:00Z"), Instant.parse("2026-03-21T00:00:00Z"));
        assertThat(leaves)
                .isCloseTo(Epoch.seconds(events.instant(SkyEvent.SUNSET).orElseThrow()), within(30.0));
        assertThat(ViewPath.visits(wide(90, 0), sky::sun, Sky.SUN_KILOMETRES, 0, noon, noon + 43_200))
                .isEmpty();
    }

    @Test
    void theGlitterPathIsAsWideAsMirrorsMakeIt() {
        // Minnaert: facets of slope α spread the image by 4 α sin h across, for small slopes seen along the surface
        GlitterPath path = GlitterPath.of(250, 10, 5);
        double slope = Math.sqrt(Math.log(2) * (0.003 + 0.00512 * 5));
        double across = path.widthDegrees() * Math.cos(Math.toRadians(10));
        assertThat(across).isCloseTo(Math.toDegrees(4 * slope * Math.sin(Math.toRadians(10))), within(0.1));
        assertThat(path.nearDegrees() - 10).isCloseTo(Math.toDegrees(2 * Math.atan(slope)), within(1e-9));
        assertThat(path.farDegrees()).isZero();
        assertThat(GlitterPath.of(250, 10, 10).widthDegrees()).isGreaterThan(path.widthDegrees());
    }
}
