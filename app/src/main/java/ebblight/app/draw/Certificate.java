package ebblight.app.draw;

import ebblight.app.draw.Drawing.Lettering;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** The certificate that goes with one print of an edition. */
public final class Certificate {

    private static final double EDGE = 25 * PdfPages.MILLIMETRE;
    private static final int GROUP = 8;

    private Certificate() {}

    /**
     * What the certificate says.
     *
     * @param number of this print, from 1
     * @param of prints in the edition
     * @param made paper and size and whatever else was entered: names and what stands for them
     * @param sha256 of the file that was printed, 64 hexadecimal digits
     */
    public record Says(String title, String creator, int number, int of, List<String[]> made, String sha256) {}

    /**
     * One page with a picture, to be signed by hand.
     *
     * @param jpeg small picture of the print
     */
    public static byte[] pdf(Says says, byte[] jpeg) throws IOException {
        try (PdfPages pages = new PdfPages()) {
            PdfDrawing to = pages.page(true);
            double width = PdfPages.SHORT - 2 * EDGE;
            PdfPages.Box box = pages.jpeg(jpeg, new PdfPages.Box(EDGE, EDGE, width, 300));
            to.frame(box.x(), box.y(), box.width(), box.height(), Ink.INK_3, 0.4);
            double y = EDGE + 300 + 48;
            for (String line : to.broken(Lettering.of(24, Ink.INK).strong(), says.title(), width)) {
                to.text(EDGE, y, Lettering.of(24, Ink.INK).strong(), line);
                y += 29;
            }
            if (!says.creator().isEmpty()) {
                to.text(EDGE, y - 3, Lettering.of(13, Ink.INK_2), says.creator());
                y += 18;
            }
            to.line(EDGE, y, PdfPages.SHORT - EDGE, y, Ink.INK, 1.5);
            y += 30;
            to.text(EDGE, y, Lettering.of(20, Ink.INK).strong(), says.number() + " of " + says.of());
            y += 26;
            for (String[] row : rows(says)) {
                to.text(EDGE, y, Lettering.of(10.5, Ink.INK_2), row[0]);
                to.text(EDGE + 92, y, Lettering.of(10.5, Ink.INK), row[1]);
                y += 17;
            }
            double foot = PdfPages.LONG - EDGE;
            to.text(
                    EDGE,
                    foot - 62,
                    Lettering.of(9, Ink.INK_2),
                    "The checksum is that of the file this print was made from"
                            + " (SHA-256). No other print of the edition bears this number.");
            to.line(EDGE, foot - 14, EDGE + 210, foot - 14, Ink.INK, 0.6);
            to.text(EDGE, foot - 2, Lettering.of(9, Ink.INK_2), "signature");
            to.line(EDGE + 240, foot - 14, PdfPages.SHORT - EDGE, foot - 14, Ink.INK, 0.6);
            to.text(EDGE + 240, foot - 2, Lettering.of(9, Ink.INK_2), "place and date");
            return pages.bytes("Certificate: " + says.title() + ", " + says.number() + " of " + says.of());
        }
    }

    private static List<String[]> rows(Says says) {
        List<String[]> rows = new ArrayList<>(says.made());
        for (int line = 0; line < 2; line++) {
            StringBuilder groups = new StringBuilder();
            for (int g = 0; g < 4; g++) {
                int at = (4 * line + g) * GROUP;
                groups.append(g == 0 ? "" : " ").append(says.sha256(), at, at + GROUP);
            }
            rows.add(new String[] {line == 0 ? "Checksum" : "", groups.toString()});
        }
        return rows;
    }
}
