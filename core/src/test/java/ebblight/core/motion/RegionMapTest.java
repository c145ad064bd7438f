package ebblight.core.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Pictures drawn as text: the drawing is the truth. */
class RegionMapTest {

    private static final String[] COAST = {
        "cccccccc", //
        "cccccccc",
        "cccccccc",
        "~~~##~~~",
        "~~~##~~~",
        "~~~##~~~",
    };

    /** Of 48 squares 24 are cloud, 9 water on either side, 6 rock. */
    @Test
    void partsAreTheAreasLargestFirst() {
        RegionMap map = Drawing.map(4, COAST);
        assertThat(map.parts())
                .extracting(RegionMap.Part::id)
                .containsExactly("drifting-1", "flowing-1", "flowing-2", "fixed-1");
        assertThat(map.parts())
                .extracting(RegionMap.Part::areaFraction)
                .containsExactly(24 / 48.0, 9 / 48.0, 9 / 48.0, 6 / 48.0);
        assertThat(map.parts()).allSatisfy(part -> assertThat(part.confidence()).isEqualTo(1));
        int w = map.width();
        assertThat(map.partAt(0)).isZero();
        assertThat(map.partAt(20 * w)).isEqualTo(1);
        assertThat(map.partAt(20 * w + w - 1)).isEqualTo(2);
        assertThat(map.partAt(20 * w + w / 2)).isEqualTo(3);
        float[] rock = map.mask(3);
        float sum = 0;
        for (float r : rock) {
            sum += r;
        }
        assertThat(sum).isEqualTo(6 * 16);
        assertThat(rock[20 * w + w / 2]).isEqualTo(1);
    }

    /** A quarter of the pixels won by 0.6, the others by 1: 0.9 in the mean. */
    @Test
    void confidenceIsTheMeanShare() {
        SoftRegions sure = Drawing.regions(10, "~~", "~~");
        for (int p = 0; p < 100; p++) {
            sure.share(Kind.FLOWING)[p] = 0.6f;
            sure.share(Kind.FIXED)[p] = 0.4f;
        }
        assertThat(RegionMap.of(sure).parts().get(0).confidence()).isCloseTo(0.9, within(1e-6));
        assertThat(sure.part(Kind.FLOWING)).isCloseTo(0.9, within(1e-6));
    }

    /** Of 1600 pixels an island of 4 is too small for a part. */
    @Test
    void anIslandBelongsToItsKindOrToWhatSurroundsIt() {
        SoftRegions soft = Drawing.regions(20, "c#", "c~");
        put(soft, 5, 5, Kind.FLOWING); // in the cloud; there is water elsewhere
        put(soft, 30, 5, Kind.SWAYING); // on the rock; nothing else sways
        RegionMap map = RegionMap.of(soft);
        assertThat(map.parts())
                .extracting(RegionMap.Part::kind)
                .containsExactly(Kind.DRIFTING, Kind.FLOWING, Kind.FIXED);
        assertThat(map.parts().get(map.partAt(5 * 40 + 5)).kind()).isEqualTo(Kind.FLOWING);
        assertThat(map.parts().get(map.partAt(5 * 40 + 30)).kind()).isEqualTo(Kind.FIXED);
        assertThat(map.parts().get(1).areaFraction()).isEqualTo(404 / 1600.0);
    }

    /** Two pixels on an island of four on rock: given to the island first, and with it to the rock. */
    @Test
    void islandsOnIslandsGoToo() {
        SoftRegions soft = Drawing.regions(20, "##", "##");
        put(soft, 30, 5, Kind.SWAYING);
        for (Kind kind : Kind.values()) {
            soft.share(kind)[5 * 40 + 30] = kind == Kind.FLOWING ? 1 : 0;
        }
        RegionMap map = RegionMap.of(soft);
        assertThat(map.parts()).hasSize(1);
        assertThat(map.parts().get(0).areaFraction()).isEqualTo(1);
    }

    @Test
    void namesStayWithThePartsTheyWereGivenTo() {
        RegionMap before = Drawing.map(4, COAST);
        RegionMap after = Drawing.map(
                4,
                "cccccccc", //
                "cccccccc",
                "cccccccc",
                "~~###~~~",
                "#y###~~~",
                "yy###~~~");
        RegionMap named = after.named(before);
        // right water 9 of 9; rock 6 of 10 squares; left water 2 of 9, so it is another; the small rock is new
        assertThat(id(named, 31, 20)).isEqualTo("flowing-2");
        assertThat(id(named, 14, 20)).isEqualTo("fixed-1");
        assertThat(id(named, 0, 0)).isEqualTo("drifting-1");
        assertThat(id(named, 0, 12)).isEqualTo("flowing-3");
        assertThat(id(named, 0, 16)).isEqualTo("fixed-2");
        assertThat(id(named, 0, 23)).isEqualTo("swaying-1");
        assertThat(named.parts())
                .extracting(RegionMap.Part::areaFraction)
                .isEqualTo(
                        after.parts().stream().map(RegionMap.Part::areaFraction).toList());
        assertThat(after.named(Drawing.map(3, COAST))).isSameAs(after);
    }

    /** Steps along rows and columns to the nearest place of another part or outside, counted for every pixel. */
    @Test
    void aPartIsPointedAtInItsDepth() {
        RegionMap map = Drawing.map(
                3,
                "cccccccc", //
                "cccc#ccc",
                "~~####cc",
                "~~######",
                "~~~##~~~");
        int[][] places = PartPlaces.of(map);
        int[] deepest = new int[places.length];
        for (int p = 0; p < map.width() * map.height(); p++) {
            deepest[map.partAt(p)] = Math.max(deepest[map.partAt(p)], depth(map, p));
        }
        assertThat(places.length).isEqualTo(map.parts().size());
        for (int part = 0; part < places.length; part++) {
            int p = places[part][1] * map.width() + places[part][0];
            assertThat(map.partAt(p)).isEqualTo(part);
            assertThat(depth(map, p)).isEqualTo(deepest[part]);
        }
    }

    private static int depth(RegionMap map, int p) {
        int w = map.width();
        int h = map.height();
        int x = p % w;
        int y = p / w;
        int least = Math.min(Math.min(x, w - 1 - x), Math.min(y, h - 1 - y)) + 1;
        for (int q = 0; q < w * h; q++) {
            if (map.partAt(q) != map.partAt(p)) {
                least = Math.min(least, Math.abs(q % w - x) + Math.abs(q / w - y));
            }
        }
        return least;
    }

    private static String id(RegionMap map, int x, int y) {
        return map.parts().get(map.partAt(y * map.width() + x)).id();
    }

    private static void put(SoftRegions soft, int x, int y, Kind kind) {
        for (int j = 0; j < 2; j++) {
            for (int i = 0; i < 2; i++) {
                for (Kind other : Kind.values()) {
                    soft.share(other)[(y + j) * soft.width() + x + i] = other == kind ? 1 : 0;
                }
            }
        }
    }
}
