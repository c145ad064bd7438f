package ebblight.imaging;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** An XMP packet (ISO 16684-1): what a picture was made from. */
final class XmpPacket {

    private static final int MOST_SOURCES = 1000;

    private XmpPacket() {}

    static byte[] of(PictureFacts facts) {
        return of(facts, PictureNotes.NONE);
    }

    static byte[] of(PictureFacts facts, PictureNotes notes) {
        StringBuilder s = new StringBuilder();
        s.append("<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n");
        s.append("<x:xmpmeta xmlns:x=\"adobe:ns:meta/\"><rdf:RDF"
                + " xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\"><rdf:Description rdf:about=\"\""
                + " xmlns:dc=\"http://purl.org/dc/elements/1.1/\" xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\""
                + " xmlns:xmpRights=\"http://ns.adobe.com/xap/1.0/rights/\""
                + " xmlns:xmpMM=\"http://ns.adobe.com/xap/1.0/mm/\""
                + " xmlns:stRef=\"http://ns.adobe.com/xap/1.0/sType/ResourceRef#\""
                + " xmlns:ebblight=\"https://ebblight.invalid/ns/1.0/\"");
        s.append(" xmp:CreatorTool=\"").append(PictureFacts.SOFTWARE).append('"');
        s.append(notes.copyright().isEmpty() ? "" : " xmpRights:Marked=\"True\"");
        s.append(" ebblight:frameCount=\"").append(facts.frames()).append('"');
        facts.exposureSeconds().ifPresent(t -> s.append(" ebblight:totalSeconds=\"")
                .append(String.format(Locale.ROOT, "%.6f", t))
                .append('"'));
        notes.grain().ifPresent(g -> s.append(" ebblight:noiseSlope=\"")
                .append(g.slope())
                .append("\" ebblight:noiseFloor=\"")
                .append(g.floor())
                .append('"'));
        s.append(">\n");
        list(s, "description", "Alt", List.of(notes.caption().isEmpty() ? facts.description() : notes.caption()));
        list(s, "title", "Alt", List.of(notes.title()));
        list(s, "creator", "Seq", List.of(notes.creator()));
        list(s, "rights", "Alt", List.of(notes.copyright()));
        list(s, "subject", "Bag", notes.keywords());
        if (!facts.sources().isEmpty()) {
            s.append("<xmpMM:Ingredients><rdf:Bag>");
            facts.sources().stream().limit(MOST_SOURCES).forEach(file -> s.append(
                            "<rdf:li rdf:parseType=\"Resource\"><stRef:filePath>")
                    .append(escaped(String.valueOf(file.getFileName())))
                    .append("</stRef:filePath></rdf:li>"));
            s.append("</rdf:Bag></xmpMM:Ingredients>\n");
        }
        s.append("</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"w\"?>");
        return s.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void list(StringBuilder s, String name, String kind, List<String> texts) {
        if (texts.stream().allMatch(String::isEmpty)) {
            return;
        }
        s.append("<dc:").append(name).append("><rdf:").append(kind).append('>');
        for (String text : texts) {
            s.append(kind.equals("Alt") ? "<rdf:li xml:lang=\"x-default\">" : "<rdf:li>")
                    .append(escaped(text))
                    .append("</rdf:li>");
        }
        s.append("</rdf:").append(kind).append("></dc:").append(name).append(">\n");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
