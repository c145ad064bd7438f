package ebblight.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.xml.sax.InputSource;

/** The drawings of a day and the printed sheet. */
class SheetTest {

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private Said draw(String more, String... options) throws Exception {
        Path file = Files.writeString(
                folder.resolve("w.json"),
                """
                {"schema":"wishes/1","name":"Łódka <&> shore","at":"48.65,-2.03","zone":"Europe/Paris",
                 "from":"2027-03-20","to":"2027-04-03","sunAltitude":[-6,5],"ev100":[2,9],
                 "view":{"azimuth":290,"altitude":1,"focalMillimetres":35}%s}
                """
                        .formatted(more));
        String[] command = new String[options.length + 2];
        command[0] = "when";
        command[1] = file.toString();
        System.arraycopy(options, 0, command, 2, options.length);
        return Said.by(command);
    }

    private static int count(String text, String part) {
        return text.split(Pattern.quote(part), -1).length - 1;
    }

    @Test
    void theSheetIsOnePageWithAllThatMattersOnIt() throws Exception {
        Path sheet = folder.resolve("sheet.pdf");
        Said said = draw(
                ",\"station\":\"nearest\",\"guard\":{\"feetMetres\":7.5}",
                "--time",
                "30s",
                "--filters",
                "3,6,10",
                "--sheet",
                sheet.toString());
        assertThat(said.code()).as(said.err()).isZero();
        try (PDDocument document = Loader.loadPDF(sheet.toFile())) {
            assertThat(document.getNumberOfPages()).isEqualTo(1);
            assertThat(new PDFTextStripper().getText(document))
                    .contains("Lódka <&> shore", "sunrise", "LEAVE BY", "To pack", "at the tripod by", "above LAT")
                    .contains("Not for navigation", "turn your back", "optical finder", "Through the lens");
        }
    }

    @Test
    void theDrawingsAreWellFormedAndSayWhatTheyShow() throws Exception {
        Path strip = folder.resolve("strip.svg");
        Path lens = folder.resolve("lens.svg");
        assertThat(draw("", "--strip", strip.toString(), "--lens", lens.toString())
                        .code())
                .isZero();
        for (Path drawing : new Path[] {strip, lens}) {
            String text = Files.readString(drawing);
            DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(text)));
            assertThat(text).contains("<title>").doesNotContain("NaN").doesNotContain("var(--");
        }
        assertThat(Files.readString(lens)).contains("bearing 290°");
        // no station: no row of the tide
        assertThat(Files.readString(strip)).contains(">Light<").doesNotContain(">Tide<");
    }

    @Test
    void aDrawingOfTheTideCarriesTheCaution() throws Exception {
        Path strip = folder.resolve("strip.svg");
        draw(",\"station\":\"nearest\"", "--strip", strip.toString());
        assertThat(Files.readString(strip)).contains(">Tide<", "Not for navigation", "official tables");
    }

    /** 28 March 2027: the clock of the zone leaps from 2 to 3 (Directive 2000/84/EC); every hour still has its place. */
    @Test
    void aDayOfTwentyThreeHoursIsDrawnWhole() throws Exception {
        Path strip = folder.resolve("strip.svg");
        draw("", "--day", "2027-03-28", "--strip", strip.toString());
        String text = Files.readString(strip);
        for (int hour = 3; hour < 24; hour += 3) {
            assertThat(count(text, ">" + hour + "</text>")).as("hour " + hour).isEqualTo(1);
        }
    }

    @Test
    void thePolarNightIsDrawnToo() throws Exception {
        Path file = Files.writeString(
                folder.resolve("p.json"),
                """
                {"schema":"wishes/1","at":"78.2,15.6","zone":"Arctic/Longyearbyen","from":"2027-12-20",
                 "to":"2027-12-22","hours":["10:00","14:00"]}
                """);
        Path sheet = folder.resolve("p.pdf");
        Said said = Said.by("when", file.toString(), "--sheet", sheet.toString());
        assertThat(said.code()).as(said.err()).isZero();
        try (PDDocument document = Loader.loadPDF(sheet.toFile())) {
            assertThat(new PDFTextStripper().getText(document)).contains("the sun does not cross the horizon");
        }
    }

    @Test
    void whatCannotBeDrawnIsSaid() throws Exception {
        draw("", "--day", "2027-02-30", "--strip", folder.resolve("x.svg").toString())
                .refuses(2, "--day", "2027-02-30");
        draw("", "--sheet", folder.resolve("gone/x.pdf").toString()).refuses(3, "x.pdf");
        assertThat(Files.exists(folder.resolve("x.svg"))).isFalse();
    }
}
