package ebblight.app.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import ebblight.app.report.AxisModel.Left;
import ebblight.app.report.AxisModel.Part;
import ebblight.app.report.AxisModel.Reach;
import ebblight.app.report.AxisModel.Span;
import ebblight.app.report.AxisModel.Window;
import ebblight.app.report.AxisModel.Word;
import java.io.StringReader;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

/** The axis is a scale of stops: one stop is a factor of two in time, which is the definition. */
class TimeAxisTest {

    private static final List<AxisModel.Worth> WORTH =
            List.of(new AxisModel.Worth(0.125, 0.3, 0.6), new AxisModel.Worth(1024, 0.6, 0.9));

    private static final double INF = Double.POSITIVE_INFINITY;

    @Test
    void aStopIsAsWideAsTheNextButTheChosenOne() {
        AxisPlaces at = new AxisPlaces(model(80, 10, Optional.empty()), 1240, false);
        double stop = at.at(2) - at.at(1);
        assertThat(at.at(8) - at.at(4)).isCloseTo(stop, within(1e-9));
        assertThat(at.frameRight() - at.frameLeft() + 2 * AxisPlaces.CUT).isCloseTo(2 * stop, within(1e-9));
        assertThat(at.seconds(at.at(37))).isCloseTo(37, within(1e-9));
        assertThat(at.x(AxisPlaces.LAST_STOP + 0.5)).isCloseTo(1240, within(1e-9));
    }

    @Test
    void theLaneBeginsWhereTheWishesBeginToHold() throws Exception {
        AxisModel model = model(80, 10, Optional.empty());
        String svg = TimeAxis.svg(model, 1240, false, "t");
        wellFormed(svg);
        Matcher lane = Pattern.compile("<rect x=\"([0-9.]+)\"[^>]*fill=\"var\\(--lane\\)\"")
                .matcher(svg);
        assertThat(lane.find()).isTrue();
        assertThat(Double.parseDouble(lane.group(1)))
                .isCloseTo(new AxisPlaces(model, 1240, false).at(10), within(0.06));
        assertThat(svg).contains("1:20 min").contains("wish: softened").contains("f/9");
    }

    @Test
    void aClashIsHatchedBetweenTheTwoWishesAndSaysHowManyStops() throws Exception {
        AxisModel model = model(1.3, INF, Optional.of(new AxisModel.Clash("Cloud", "Water", 0.25, 16, 6)));
        for (boolean narrow : new boolean[] {false, true}) {
            String svg = TimeAxis.svg(model, narrow ? 358 : 1240, narrow, "t");
            wellFormed(svg);
            AxisPlaces at = new AxisPlaces(model, narrow ? 358 : 1240, narrow);
            Matcher hatch = Pattern.compile("<rect x=\"([0-9.]+)\" y=\"[0-9.]+\" width=\"([0-9.]+)\"[^>]*#t-hatch")
                    .matcher(svg);
            assertThat(hatch.find()).isTrue();
            assertThat(Double.parseDouble(hatch.group(1))).isCloseTo(at.at(0.25), within(0.06));
            assertThat(Double.parseDouble(hatch.group(2))).isCloseTo(at.at(16) - at.at(0.25), within(0.11));
            assertThat(svg).contains("Cloud and water").contains("6 stops apart");
        }
    }

    /** The block of a cell is as high as the share that changes: of the tall stop it must be twice that of the other. */
    @Test
    void theWorthOfATimeStandsUnderItsStop() throws Exception {
        String svg = TimeAxis.svg(model(80, 10, Optional.empty()), 1240, false, "t");
        wellFormed(svg);
        AxisPlaces at = new AxisPlaces(model(80, 10, Optional.empty()), 1240, false);
        assertThat(svg).contains(">Worth<");
        double few = blockHeight(svg, at.x(-3.5) + AxisPlaces.CUT + 4);
        double many = blockHeight(svg, at.x(9.5) + AxisPlaces.CUT + 4);
        assertThat(many).isCloseTo(2 * few, within(0.11));
        assertThat(TimeAxis.svg(model(80, 10, Optional.empty()), 358, true, "t"))
                .doesNotContain(">Worth<");
    }

    private static double blockHeight(String svg, double x) {
        Matcher block = Pattern.compile(String.format(
                        Locale.ROOT,
                        "<rect x=\"%.1f\" y=\"[0-9.]+\" width=\"[0-9.]+\" height=\"([0-9.]+)\" fill=\"var\\(--ink\\)\"",
                        x))
                .matcher(svg);
        assertThat(block.find()).isTrue();
        return Double.parseDouble(block.group(1));
    }

    private static void wellFormed(String svg) throws Exception {
        DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(svg)));
    }

    private static AxisModel model(double chosen, double from, Optional<AxisModel.Clash> clash) {
        List<Window> windows = clash.isPresent()
                ? List.of()
                : List.of(new Window(new Span(from, INF), Optional.of(new Span(3 * from, INF))));
        Part water = new Part(
                "flowing",
                "softened",
                List.of(new Span(10, INF)),
                List.of(new Span(30, INF)),
                List.of(new Word("as seen", new Span(0, 10)), new Word("softened", new Span(10, INF))),
                List.of(new Left(0.125, 0.4), new Left(960, 0.05)),
                "strip-flowing-1",
                1.5);
        return new AxisModel(
                chosen, List.of(water), windows, clash, List.of(new Reach(chosen, "10", "f/9")), WORTH, 541);
    }
}
