package ebblight.app.draw;

import ebblight.app.draw.Drawing.Lettering;
import java.io.IOException;
import java.util.List;

/** Many pictures on few pages, each with its name and how it was taken. */
public final class ContactSheet {

    private static final double EDGE = 36;
    private static final int COLUMNS = 3;
    private static final int ROWS = 5;
    private static final double GAP = 14;
    private static final double WORDS = 26;
    private static final double HEAD = 28;

    private ContactSheet() {}

    /**
     * One picture of the sheet.
     *
     * @param jpeg small picture; empty where it could not be read
     * @param taken exposure in words, or why there is no picture
     */
    public record Entry(String name, String taken, byte[] jpeg) {}

    public static byte[] pdf(String title, List<Entry> entries) throws IOException {
        int perPage = COLUMNS * ROWS;
        int count = (entries.size() + perPage - 1) / perPage;
        double wide = (PdfPages.SHORT - 2 * EDGE - (COLUMNS - 1) * GAP) / COLUMNS;
        double high = (PdfPages.LONG - 2 * EDGE - HEAD - (ROWS - 1) * GAP) / ROWS;
        try (PdfPages pages = new PdfPages()) {
            for (int p = 0; p < count; p++) {
                PdfDrawing to = pages.page(true);
                to.text(EDGE, EDGE + 10, Lettering.of(12, Ink.INK).strong(), title);
                to.text(
                        PdfPages.SHORT - EDGE,
                        EDGE + 10,
                        Lettering.of(9.5, Ink.INK_2).held(Drawing.Hold.END),
                        entries.size() + " pictures, page " + (p + 1) + " of " + count);
                for (int i = p * perPage; i < Math.min(entries.size(), (p + 1) * perPage); i++) {
                    int cell = i - p * perPage;
                    int row = cell / COLUMNS;
                    double x = EDGE + cell % COLUMNS * (wide + GAP);
                    double y = EDGE + HEAD + row * (high + GAP);
                    entry(pages, to, entries.get(i), x, y, wide, high);
                }
            }
            return pages.bytes(title);
        }
    }

    private static void entry(PdfPages pages, PdfDrawing to, Entry entry, double x, double y, double wide, double high)
            throws IOException {
        double tall = high - WORDS;
        if (entry.jpeg.length > 0) {
            pages.jpeg(entry.jpeg, new PdfPages.Box(x, y, wide, tall));
        } else {
            to.frame(x, y, wide, tall, Ink.INK_3, 0.5, 3, 3);
        }
        to.text(x, y + tall + 11, Lettering.of(9, Ink.INK).strong(), entry.name);
        List<String> lines = to.broken(Lettering.of(8.5, Ink.INK_2), entry.taken, wide);
        to.text(x, y + tall + 22, Lettering.of(8.5, Ink.INK_2), lines.get(0));
    }
}
