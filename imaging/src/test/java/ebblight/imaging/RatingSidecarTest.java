package ebblight.imaging;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.drew.metadata.Metadata;
import com.drew.metadata.xmp.XmpDirectory;
import com.drew.metadata.xmp.XmpReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Ratings beside pictures, read back by the XMP reader of metadata-extractor, which is not ours. */
class RatingSidecarTest {

    private static final String OTHERS = "<?xpacket begin='\uFEFF' id='W5M0MpCehiHzreSzNTczkc9d'?>\n"
            + "<!-- written by hand -->\n<x:xmpmeta xmlns:x='adobe:ns:meta/'>\n"
            + " <rdf:RDF xmlns:rdf='http://www.w3.org/1999/02/22-rdf-syntax-ns#'>\n"
            + "  <rdf:Description rdf:about='' xmlns:dc='http://purl.org/dc/elements/1.1/' dc:format='image/jpeg'"
            + " xmlns:own='https://example.org/own/' own:place='c&amp;d'>\n"
            + "   <dc:subject><rdf:Bag><rdf:li>sea</rdf:li><rdf:li>évening</rdf:li></rdf:Bag></dc:subject>\n"
            + "  </rdf:Description>\n </rdf:RDF>\n</x:xmpmeta>\n<?xpacket end='w'?>";

    @TempDir
    @SuppressWarnings("NullAway.Init") // set by JUnit
    Path folder;

    private Map<String, String> read(Path sidecar) throws Exception {
        Metadata metadata = new Metadata();
        new XmpReader().extract(Files.readAllBytes(sidecar), metadata, null);
        return metadata.getFirstDirectoryOfType(XmpDirectory.class).getXmpProperties();
    }

    @Test
    void aNewSidecarHoldsTheRating() throws Exception {
        Path picture = folder.resolve("TLG_0101.jpg");
        assertThat(RatingSidecar.rate(picture, 5)).isEqualTo(RatingSidecar.Outcome.WRITTEN);
        assertThat(read(folder.resolve("TLG_0101.xmp"))).containsEntry("xmp:Rating", "5");
    }

    @Test
    void whatASidecarHoldsStays() throws Exception {
        Path picture = folder.resolve("TLG_0102.jpg");
        Path sidecar = Files.writeString(folder.resolve("TLG_0102.xmp"), OTHERS);
        Map<String, String> before = read(sidecar);
        assertThat(RatingSidecar.rate(picture, 4)).isEqualTo(RatingSidecar.Outcome.ADDED);
        Map<String, String> after = read(sidecar);
        assertThat(after).containsEntry("xmp:Rating", "4").containsAllEntriesOf(before);
        assertThat(after).containsEntry("own:place", "c&d").containsEntry("dc:subject[2]", "évening");
        assertThat(Files.readString(sidecar)).contains("written by hand").contains("xpacket end");
    }

    @Test
    void aRatingThatIsThereStays() throws Exception {
        Path picture = folder.resolve("TLG_0103.jpg");
        RatingSidecar.rate(picture, 2);
        byte[] before = Files.readAllBytes(folder.resolve("TLG_0103.xmp"));
        assertThat(RatingSidecar.rate(picture, 5)).isEqualTo(RatingSidecar.Outcome.THERE);
        assertThat(Files.readAllBytes(folder.resolve("TLG_0103.xmp"))).isEqualTo(before);
    }

    @Test
    void whatIsNoXmpIsLeftAsItIs() throws Exception {
        Path sidecar = Files.writeString(folder.resolve("TLG_0104.xmp"), "no markup");
        assertThatThrownBy(() -> RatingSidecar.rate(folder.resolve("TLG_0104.jpg"), 5))
                .isInstanceOf(UnreadableInputException.class)
                .hasMessageContaining("TLG_0104.xmp");
        assertThat(Files.readString(sidecar)).isEqualTo("no markup");
    }
}
