package ebblight.core.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Depth of field, diffraction and field of view against handbook formulas (values computed with Python). */
class OpticsReferenceTest {

    @Test
    void hyperfocalDistances() {
        assertThat(DepthOfField.hyperfocalMetres(50, 8, 0.03)).isCloseTo(10.4667, within(1e-3));
        assertThat(DepthOfField.hyperfocalMetres(24, 8, 0.03)).isCloseTo(2.424, within(1e-3));
    }

    @Test
    void limitsOfSharpness() {
        DepthOfField d = DepthOfField.at(5, 35, 8, 0.03);
        assertThat(d.nearMetres()).isCloseTo(2.5346, within(1e-3));
        assertThat(d.farMetres()).isCloseTo(183.38, within(0.2));
        assertThat(DepthOfField.at(20, 24, 11, 0.03).farMetres()).isInfinite();
    }

    @Test
    void circleOfConfusionIsTheDiagonalOver1500() {
        assertThat(DepthOfField.circleMillimetres(36, 24)).isCloseTo(0.0288, within(1e-4));
    }

    @Test
    void diffractionAtF16() {
        assertThat(Diffraction.airyDiskMicrometres(16)).isCloseTo(21.47, within(0.01));
        assertThat(Diffraction.cutoffPerMillimetre(16)).isCloseTo(114, within(0.5));
        assertThat(Diffraction.contrast(0.25)).isCloseTo(0.685, within(1e-3));
        assertThat(Diffraction.contrast(0.75)).isCloseTo(0.144, within(1e-3));
    }

    @Test
    void fieldOfView() {
        assertThat(FieldOfView.degrees(24, 36)).isCloseTo(73.740, within(1e-3));
        assertThat(FieldOfView.degrees(200, 24)).isCloseTo(6.867, within(1e-3));
    }
}
