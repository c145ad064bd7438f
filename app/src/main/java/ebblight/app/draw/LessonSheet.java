package ebblight.app.draw;

import ebblight.app.draw.Drawing.Lettering;
import java.io.IOException;
import java.util.List;

/** Plan against result on one page, with and without side by side; or without the answer, to be found by a class. */
public final class LessonSheet {

    private static final double EDGE = 36;
    private static final double GAP = 12;
    private static final double COLUMN = 22;
    private static final double PICTURES = 262;
    private static final double NAMES = 84;
    private static final double LEADING = 14;

    private LessonSheet() {}

    /**
     * One line of the page.
     *
     * @param answer whether it tells what the class is to find
     */
    public record Row(String name, String words, boolean answer) {}

    /**
     * A picture of the page.
     *
     * @param caption under it
     */
    public record Pictured(byte[] jpeg, String caption) {}

    /**
     * The page.
     *
     * @param hidden whether answers are left open, with a line to write on
     */
    public static byte[] pdf(String title, List<Pictured> pictures, List<Row> plan, List<Row> made, boolean hidden)
            throws IOException {
        try (PdfPages pages = new PdfPages()) {
            PdfDrawing to = pages.page(false);
            double width = PdfPages.LONG - 2 * EDGE;
            to.text(EDGE, EDGE + 16, Lettering.of(20, Ink.INK).strong(), title);
            to.line(EDGE, EDGE + 26, PdfPages.LONG - EDGE, EDGE + 26, Ink.INK, 1.5);
            double y = EDGE + 38;
            double wide = (width - (pictures.size() - 1) * GAP) / pictures.size();
            double lowest = y;
            for (int k = 0; k < pictures.size(); k++) {
                double x = EDGE + k * (wide + GAP);
                PdfPages.Box box = pages.jpeg(pictures.get(k).jpeg, new PdfPages.Box(x, y, wide, PICTURES));
                lowest = Math.max(lowest, box.y() + box.height());
            }
            for (int k = 0; k < pictures.size(); k++) {
                double x = EDGE + k * (wide + GAP);
                if (hidden) {
                    to.text(x, lowest + 16, Lettering.of(10.5, Ink.INK), "open for");
                    to.line(x + 46, lowest + 18, x + Math.min(wide, 150), lowest + 18, Ink.INK_2, 0.6);
                } else {
                    to.text(x, lowest + 16, Lettering.of(10.5, Ink.INK), pictures.get(k).caption);
                }
            }
            double half = (width - COLUMN) / 2;
            rows(to, EDGE, lowest + 46, half, "Planned", plan, hidden);
            rows(to, EDGE + half + COLUMN, lowest + 46, half, "Made", made, hidden);
            to.text(
                    EDGE,
                    PdfPages.SHORT - EDGE,
                    Lettering.of(8.5, Ink.INK_2),
                    "Predictions of tide leave out weather, surge and waves. Never turn your back on the sea.");
            return pages.bytes(title);
        }
    }

    private static void rows(
            PdfDrawing to, double left, double top, double width, String heading, List<Row> rows, boolean hidden) {
        double y = top;
        to.text(left, y, Lettering.of(13, Ink.INK).strong(), heading);
        y += 4;
        double x = left + NAMES;
        for (Row row : rows) {
            boolean open = hidden && row.answer;
            y += open ? 1.6 * LEADING : LEADING + 2;
            to.text(left, y, Lettering.of(10, Ink.INK_2), row.name);
            if (open) {
                to.line(x, y + 2, left + width, y + 2, Ink.INK_2, 0.6);
                continue;
            }
            List<String> lines = to.broken(Lettering.of(10, Ink.INK), row.words, width - NAMES);
            for (int k = 0; k < lines.size(); k++) {
                y += k == 0 ? 0 : LEADING;
                to.text(x, y, Lettering.of(10, Ink.INK), lines.get(k));
            }
        }
    }
}
