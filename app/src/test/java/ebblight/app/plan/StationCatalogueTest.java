package ebblight.app.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ebblight.app.ask.UsageException;
import ebblight.core.sky.Place;
import ebblight.core.tide.Station;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The stations that come with the program. */
class StationCatalogueTest {

    private static final int STATIONS = 3602 - 51;

    /** Reference stations of the source whose terms allow it, 3602, less 51 whose phases count the local clock. */
    @Test
    void allStationsAreThereAndNoneMayNotBe() throws IOException {
        StationCatalogue catalogue = StationCatalogue.read();
        assertThat(catalogue.size()).isEqualTo(STATIONS);
        Set<String> ids = new HashSet<>();
        Set<String> licences = new HashSet<>();
        for (StationCatalogue.Entry entry : catalogue.nearest(Place.of(0, 0), 4000)) {
            Station station = entry.station();
            ids.add(station.id());
            licences.add(station.licence());
            assertThat(station.harmonics()).as(station.id()).isNotEmpty();
            assertThat(station.datum()).as(station.id()).isNotBlank();
        }
        assertThat(ids).hasSize(STATIONS);
        assertThat(licences).containsExactlyInAnyOrder("public domain", "CC BY 4.0");
    }

    @Test
    void aNameIsFoundWithoutItsAccentsAndCapitals() throws IOException {
        StationCatalogue catalogue = StationCatalogue.read();
        assertThat(catalogue.search("ålesund")).isNotEmpty().isEqualTo(catalogue.search("ALESUND"));
        assertThat(catalogue.one("--station", "noaa/8443970").name()).contains("Boston");
        assertThatThrownBy(() -> catalogue.one("--station", "nowhere at all"))
                .isInstanceOf(UsageException.class)
                .hasMessageContaining("--station")
                .hasMessageContaining("nowhere at all");
        assertThatThrownBy(() -> catalogue.one("--station", "bay"))
                .isInstanceOf(UsageException.class)
                .hasMessageContaining("give one of these ids");
    }

    /** Where these ports lie: any atlas. Names of the source stood at each other's places. */
    @Test
    void aPortLiesWhereItsNameSays() throws IOException {
        StationCatalogue catalogue = StationCatalogue.read();
        Object[][] atlas = {
            {"Brighton", Place.of(50.82, -0.14)},
            {"Hastings Pier", Place.of(50.85, 0.57)},
            {"Scarborough", Place.of(54.28, -0.40)},
            {"Severn Bridge", Place.of(51.61, -2.64)},
            {"Port Isaac", Place.of(50.59, -4.83)},
            {"West Bay Harbour", Place.of(50.71, -2.76)},
            {"Teignmouth Pier", Place.of(50.55, -3.49)}
        };
        for (Object[] port : atlas) {
            Place at = catalogue.one("--station", (String) port[0]).place();
            assertThat(at.kilometresTo((Place) port[1])).as((String) port[0]).isLessThan(10);
        }
    }

    /**
     * Neighbours on open water have their high water within the hour: where M2's Greenwich phases stand further apart
     * than 70°, one of the two clocks is wrong.
     */
    @Test
    void neighboursHaveTheirHighWaterTogether() throws IOException {
        List<Station> tidal = StationCatalogue.read().nearest(Place.of(0, 0), 4000).stream()
                .map(StationCatalogue.Entry::station)
                .filter(s -> metres(s) > 0.4)
                .toList();
        List<String> apart = new ArrayList<>();
        for (Station one : tidal) {
            double least = 180;
            for (Station other : tidal) {
                if (!other.equals(one) && one.place().kilometresTo(other.place()) < 8) {
                    double turn = Math.abs(phase(one) - phase(other)) % 360;
                    least = Math.min(least, Math.min(turn, 360 - turn));
                }
            }
            if (least > 70 && least < 180) {
                apart.add(one.name());
            }
        }
        assertThat(apart).isEmpty();
    }

    private static Station.Harmonic lunar(Station station) {
        return station.harmonics().stream()
                .filter(h -> h.name().equals("M2"))
                .findFirst()
                .orElse(new Station.Harmonic("M2", 0, 0));
    }

    private static double metres(Station station) {
        return lunar(station).amplitudeMetres();
    }

    private static double phase(Station station) {
        return lunar(station).phaseDegrees();
    }

    /** Over the date line and at the poles a distance is a distance. */
    @Test
    void theNearestIsNearestAcrossTheDateLine() throws IOException {
        StationCatalogue catalogue = StationCatalogue.read();
        Place east = Place.of(-17, 179.99);
        Place west = Place.of(-17, -179.99);
        assertThat(catalogue.nearest(east, 1).get(0).id())
                .isEqualTo(catalogue.nearest(west, 1).get(0).id());
        assertThat(east.kilometresTo(west)).isLessThan(3);
    }
}
