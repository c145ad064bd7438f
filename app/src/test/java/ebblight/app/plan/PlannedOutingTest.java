package ebblight.app.plan;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlannedOutingTest {

    @ParameterizedTest
    @CsvSource({
        "exposure: must be an object, plan.exposure: must",
        "guard.feetMetres: is missing, plan.guard.feetMetres: is",
        "at: must be a place, place.at: must",
        "sunAltitude[1]: must be a number, views.hour.sunAltitude[1]: must",
        "zone: is not known, 'outing.json, zone: is'",
    })
    void whatIsWrongIsSaidOfThePlaceInTheFile(String problem, String said) {
        assertThat(PlannedOuting.said(problem)).startsWith("outing.json, ").contains(said);
    }
}
