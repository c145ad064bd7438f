package ebblight.imaging;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/**
 * A rating beside a picture, as {@code xmp:Rating} in an XMP sidecar (ISO 16684-1, 8.4; from memory). What a sidecar
 * holds already stays.
 */
public final class RatingSidecar {

    private static final String RDF = "http://www.w3.org/1999/02/22-rdf-syntax-ns#";
    private static final String XMP = "http://ns.adobe.com/xap/1.0/";
    private static final String RATING = "Rating";

    private RatingSidecar() {}

    /** What became of a rating. */
    public enum Outcome {
        /** A new sidecar was written. */
        WRITTEN,
        /** It was added to a sidecar that was there. */
        ADDED,
        /** The sidecar holds a rating already; it was left as it is. */
        THERE
    }

    /** The sidecar of a picture: its name with {@code .xmp} for an ending. */
    public static Path beside(Path picture) {
        String name = picture.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return picture.resolveSibling((dot < 0 ? name : name.substring(0, dot)) + ".xmp");
    }

    /** The rating beside a picture, -1 (rejected) to 5; empty without a sidecar that holds one. */
    public static OptionalInt read(Path picture) {
        Path sidecar = beside(picture);
        if (!Files.isRegularFile(sidecar)) {
            return OptionalInt.empty();
        }
        try {
            NodeList descriptions =
                    parsed(sidecar, ReadableFile.bytes(sidecar)).getElementsByTagNameNS(RDF, "Description");
            for (int i = 0; i < descriptions.getLength(); i++) {
                Element each = (Element) descriptions.item(i);
                NodeList inside = each.getElementsByTagNameNS(XMP, RATING);
                String said = inside.getLength() > 0
                        ? inside.item(0).getTextContent().strip()
                        : each.getAttributeNS(XMP, RATING).strip();
                if (said.matches("-1|[0-5]")) {
                    return OptionalInt.of(Integer.parseInt(said));
                }
            }
        } catch (UnreadableInputException e) {
            return OptionalInt.empty();
        }
        return OptionalInt.empty();
    }

    /**
     * Rates a picture.
     *
     * @param stars 1 to 5
     * @throws UnreadableInputException when there is a sidecar that is no XMP; it stays untouched
     */
    public static Outcome rate(Path picture, int stars) throws IOException {
        Path sidecar = beside(picture);
        boolean there = Files.exists(sidecar);
        Document document = there ? parsed(sidecar, ReadableFile.bytes(sidecar)) : parsed(sidecar, fresh());
        NodeList descriptions = document.getElementsByTagNameNS(RDF, "Description");
        if (descriptions.getLength() == 0) {
            throw new UnreadableInputException(sidecar, "is no XMP (no rdf:Description in it); left as it is");
        }
        for (int i = 0; i < descriptions.getLength(); i++) {
            Element each = (Element) descriptions.item(i);
            if (each.hasAttributeNS(XMP, RATING)
                    || each.getElementsByTagNameNS(XMP, RATING).getLength() > 0) {
                return Outcome.THERE;
            }
        }
        Element first = (Element) descriptions.item(0);
        if (first.lookupPrefix(XMP) == null) {
            first.setAttributeNS(XMLConstants.XMLNS_ATTRIBUTE_NS_URI, "xmlns:xmp", XMP);
        }
        first.setAttributeNS(XMP, prefixOf(first) + ":" + RATING, Integer.toString(stars));
        OutputFile.write(sidecar, text(document).getBytes(StandardCharsets.UTF_8));
        return there ? Outcome.ADDED : Outcome.WRITTEN;
    }

    private static String prefixOf(Element element) {
        String prefix = element.lookupPrefix(XMP);
        return prefix == null ? "xmp" : prefix;
    }

    private static byte[] fresh() {
        return ("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
                        + "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF xmlns:rdf=\"" + RDF + "\">"
                        + "<rdf:Description rdf:about=\"\" xmlns:xmp=\"" + XMP + "\"/>"
                        + "</rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>\n")
                .getBytes(StandardCharsets.UTF_8);
    }

    private static Document parsed(Path sidecar, byte[] bytes) throws UnreadableInputException {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setNamespaceAware(true);
            // Nothing outside the file is read for its sake.
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            DocumentBuilder builder = factory.newDocumentBuilder();
            builder.setErrorHandler(null); // or it prints to standard error
            return builder.parse(new ByteArrayInputStream(bytes));
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new UnreadableInputException(sidecar, "is no XML that can be read; left as it is");
        }
    }

    private static String text(Document document) {
        try {
            TransformerFactory factory = TransformerFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            Transformer transformer = factory.newTransformer();
            transformer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, "yes");
            transformer.setOutputProperty(OutputKeys.ENCODING, "UTF-8");
            StringWriter out = new StringWriter();
            transformer.transform(new DOMSource(document), new StreamResult(out));
            return out.toString();
        } catch (TransformerException e) {
            throw new IllegalStateException("a document that was read cannot be written", e);
        }
    }
}
