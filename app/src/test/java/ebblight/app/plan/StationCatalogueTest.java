package ebblight.app.plan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import ebblight.app.ask.UsageException;
import ebblight.core.sky.Place;
import ebblight.core.tide.Station;
import java.io.IOException;
import java.util.HashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The stations that come with the program. */
class StationCatalogueTest {

    /** Reference stations of the source whose terms allow it: 3602, counted in it by its own script. */
    @Test
    void allStationsAreThereAndNoneMayNotBe() throws IOException {
        StationCatalogue catalogue = StationCatalogue.read();
        assertThat(catalogue.size()).isEqualTo(3602);
        Set<String> ids = new HashSet<>();
        Set<String> licences = new HashSet<>();
        for (StationCatalogue.Entry entry : catalogue.nearest(Place.of(0, 0), 4000)) {
            Station station = entry.station();
            ids.add(station.id());
            licences.add(station.licence());
            assertThat(station.harmonics()).as(station.id()).isNotEmpty();
            assertThat(station.datum()).as(station.id()).isNotBlank();
        }
        assertThat(ids).hasSize(3602);
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
