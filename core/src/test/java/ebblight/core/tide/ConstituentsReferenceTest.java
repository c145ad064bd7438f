package ebblight.core.tide;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import com.grack.nanojson.JsonParser;
import com.grack.nanojson.JsonParserException;
import ebblight.core.Oracles;
import ebblight.core.numeric.Epoch;
import java.io.IOException;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

/**
 * Speeds, arguments and node factors against the yearly tables of Debian's xtide-data ({@code tcd_constituents.csv}) and
 * against an independent program after SP 98 ({@code node_factors.json}).
 */
class ConstituentsReferenceTest {

    /** Rows of the table that mean another constituent by the name, or one with node terms that SP 98 does not have. */
    private static final Set<String> OTHER =
            Set.of("M1", "TAU1", "BET1", "ALP1", "H1", "H2", "ETA2", "OQ2", "MP1", "SO1");

    private static double midYear(int year) {
        return (newYear(year) + newYear(year + 1)) / 2;
    }

    private static double newYear(int year) {
        return Epoch.seconds(LocalDate.of(year, 1, 1).atStartOfDay().toInstant(ZoneOffset.UTC));
    }

    private static double apart(double a, double b) {
        double d = MeanLongitudes.wrap(a - b);
        return Math.min(d, 360 - d);
    }

    @Test
    void nodeFactorsAgreeWithTheIndependentProgram() throws IOException, JsonParserException {
        JsonObject years =
                JsonParser.object().from(Oracles.text("node_factors.json")).getObject("years");
        int compared = 0;
        for (String year : years.keySet()) {
            NodeFactors nodes = NodeFactors.at(midYear(Integer.parseInt(year)));
            MeanLongitudes start = MeanLongitudes.at(newYear(Integer.parseInt(year)));
            for (String name : years.getObject(year).keySet()) {
                if (name.startsWith("_")) {
                    continue; // angles of the moon's path, no constituent
                }
                JsonArray row = years.getObject(year).getArray(name);
                Constituent constituent = Constituents.named(name).orElseThrow();
                assertThat(nodes.factor(constituent)).as(year + name).isCloseTo(row.getDouble(1), within(0.0005));
                double argument = constituent.argumentDegrees(start) + nodes.phaseDegrees(constituent);
                // the hour of mid-year shows where the moon's perigee turns the phase fast
                assertThat(apart(argument, row.getDouble(0)))
                        .as(year + name)
                        .isLessThan(name.equals("M1") ? 0.4 : 0.03);
                compared++;
            }
        }
        assertThat(compared).isGreaterThan(200);
    }

    @Test
    void everyKnownNameOfTheDebianTableHasItsSpeedArgumentAndFactor() throws IOException {
        List<String> compared = new ArrayList<>();
        for (String[] row : Oracles.rows("tcd_constituents.csv")) {
            Optional<Constituent> known = Constituents.named(row[0]);
            if (known.isEmpty()) {
                continue;
            }
            Constituent constituent = known.get();
            boolean other = OTHER.contains(row[0]);
            if (!row[0].equals("M1")) {
                assertThat(constituent.degreesPerHour()).as(row[0]).isCloseTo(Double.parseDouble(row[1]), within(2e-6));
            }
            for (int year = 2015; year <= 2035; year++) {
                NodeFactors nodes = NodeFactors.at(midYear(year));
                double argument =
                        constituent.argumentDegrees(MeanLongitudes.at(newYear(year))) + nodes.phaseDegrees(constituent);
                int column = 2 + 2 * (year - 2015);
                assertThat(apart(argument, Double.parseDouble(row[column])))
                        .as(row[0] + year)
                        .isLessThan(other ? 21 : 0.1);
                if (!other) {
                    assertThat(nodes.factor(constituent))
                            .as(row[0] + year)
                            .isCloseTo(Double.parseDouble(row[column + 1]), within(0.001));
                }
            }
            compared.add(row[0]);
        }
        assertThat(compared).hasSizeGreaterThan(100).contains("2MLS4", "MSK6", "M2(KS)2", "LDA2", "RHO1");
    }

    @Test
    void allSpellingsOfAConstituentMeanTheSame() {
        String[][] spellings = {
            {"LAM2", "LAMBDA2", "lambda2"},
            {"RHO", "RHO1", "rho1"},
            {"MF", "Mf"},
            {"SSA", "Ssa"},
            {"NU2", "nu2"},
            {"EPS2", "EP2", "eps2"},
            {"SIGMA1", "sigma1", "SGM"}
        };
        for (String[] same : spellings) {
            Set<Constituent> found = new HashSet<>();
            for (String name : same) {
                found.add(Constituents.named(name).orElseThrow());
            }
            assertThat(found).as(same[0]).hasSize(1);
        }
        assertThat(Constituents.named("3L2")).isEmpty();
        assertThat(Constituents.named("nonsense")).isEmpty();
    }
}
