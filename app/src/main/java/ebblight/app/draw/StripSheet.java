package ebblight.app.draw;

import ebblight.app.draw.Drawing.Lettering;
import java.io.IOException;
import java.util.List;
import java.util.Locale;

/** A test strip to print: the picture in pieces of growing contrast, the grade under each. */
public final class StripSheet {

    private static final double EDGE = 36;

    private StripSheet() {}

    /**
     * One lying page.
     *
     * @param jpeg the pieces side by side
     * @param grades of the pieces from the left
     * @param finish what else was done, in words
     */
    public static byte[] pdf(String title, byte[] jpeg, List<Double> grades, String finish) throws IOException {
        try (PdfPages pages = new PdfPages()) {
            PdfDrawing to = pages.page(false);
            double width = PdfPages.LONG - 2 * EDGE;
            to.text(EDGE, EDGE + 12, Lettering.of(14, Ink.INK).strong(), title);
            PdfPages.Box box =
                    pages.jpeg(jpeg, new PdfPages.Box(EDGE, EDGE + 26, width, PdfPages.SHORT - 2 * EDGE - 96));
            double y = box.y() + box.height() + 18;
            for (int k = 0; k < grades.size(); k++) {
                to.text(
                        box.x() + (k + 0.5) * box.width() / grades.size(),
                        y,
                        Lettering.of(13, Ink.INK).strong().held(Drawing.Hold.MIDDLE),
                        "grade " + String.format(Locale.ROOT, "%.1f", grades.get(k)));
            }
            y += 20;
            for (String line : to.broken(Lettering.of(9.5, Ink.INK_2), finish, width)) {
                to.text(EDGE, y, Lettering.of(9.5, Ink.INK_2), line);
                y += 13;
            }
            return pages.bytes(title);
        }
    }
}
