package ebblight.app.draw;

import java.awt.Color;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.text.Normalizer;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.apache.pdfbox.pdmodel.graphics.state.PDExtendedGraphicsState;

/** Draws on a page of a PDF, its origin at the upper left. */
final class PdfDrawing implements Drawing {

    private static final PDFont PLAIN = new PDType1Font(Standard14Fonts.FontName.HELVETICA);
    private static final PDFont BOLD = new PDType1Font(Standard14Fonts.FontName.HELVETICA_BOLD);
    private static final double ARC = 0.5523;

    private final PDPageContentStream page;
    private final double pageHeight;

    PdfDrawing(PDPageContentStream page, double pageHeight) {
        this.page = page;
        this.pageHeight = pageHeight;
    }

    private interface Act {
        void run() throws IOException;
    }

    private static void act(Act act) {
        try {
            act.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private float up(double y) {
        return (float) (pageHeight - y);
    }

    private void stroke(Ink ink, double lineWidth, double... dash) throws IOException {
        page.setStrokingColor(new Color(ink.rgb()));
        page.setLineWidth((float) lineWidth);
        float[] pattern = new float[dash.length];
        for (int i = 0; i < dash.length; i++) {
            pattern[i] = (float) dash[i];
        }
        page.setLineDashPattern(pattern, 0);
    }

    private void fill(Ink ink, double opacity) throws IOException {
        page.setNonStrokingColor(new Color(ink.rgb()));
        PDExtendedGraphicsState state = new PDExtendedGraphicsState();
        state.setNonStrokingAlphaConstant((float) opacity);
        page.setGraphicsStateParameters(state);
    }

    private void path(List<Dot> dots) throws IOException {
        for (int i = 0; i < dots.size(); i++) {
            float x = (float) dots.get(i).x();
            if (i == 0) {
                page.moveTo(x, up(dots.get(i).y()));
            } else {
                page.lineTo(x, up(dots.get(i).y()));
            }
        }
    }

    @Override
    public void rect(double x, double y, double width, double height, Ink fill, double opacity) {
        act(() -> {
            fill(fill, opacity);
            page.addRect((float) x, up(y + height), (float) width, (float) height);
            page.fill();
        });
    }

    @Override
    public void frame(double x, double y, double width, double height, Ink stroke, double lineWidth, double... dash) {
        act(() -> {
            stroke(stroke, lineWidth, dash);
            page.addRect((float) x, up(y + height), (float) width, (float) height);
            page.stroke();
        });
    }

    @Override
    public void line(List<Dot> dots, Ink stroke, double lineWidth, double... dash) {
        act(() -> {
            stroke(stroke, lineWidth, dash);
            path(dots);
            page.stroke();
        });
    }

    @Override
    public void area(List<Dot> dots, Ink fill, double opacity) {
        act(() -> {
            fill(fill, opacity);
            path(dots);
            page.closePath();
            page.fill();
        });
    }

    @Override
    public void circle(double x, double y, double radius, Ink fill) {
        act(() -> {
            fill(fill, 1);
            float cx = (float) x;
            float cy = up(y);
            float r = (float) radius;
            float k = (float) (radius * ARC);
            page.moveTo(cx + r, cy);
            page.curveTo(cx + r, cy + k, cx + k, cy + r, cx, cy + r);
            page.curveTo(cx - k, cy + r, cx - r, cy + k, cx - r, cy);
            page.curveTo(cx - r, cy - k, cx - k, cy - r, cx, cy - r);
            page.curveTo(cx + k, cy - r, cx + r, cy - k, cx + r, cy);
            page.fill();
        });
    }

    @Override
    public void text(double x, double y, Lettering type, String words) {
        String text = printable(words);
        act(() -> {
            double width = width(type, text);
            double left =
                    switch (type.hold()) {
                        case START -> x;
                        case MIDDLE -> x - width / 2;
                        case END -> x - width;
                    };
            if (type.halo()) {
                rect(left - 1.5, y - 0.78 * type.size(), width + 3, type.size(), Ink.VEIL, 0.8);
            }
            fill(type.ink(), 1);
            page.beginText();
            page.setFont(type.bold() ? BOLD : PLAIN, (float) type.size());
            page.newLineAtOffset((float) left, up(y));
            page.showText(text);
            page.endText();
        });
    }

    @Override
    public double width(Lettering type, String words) {
        try {
            return (type.bold() ? BOLD : PLAIN).getStringWidth(printable(words)) / 1000 * type.size();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The standard faces know Latin letters only: others lose their accents, or become a mark. */
    static String printable(String words) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < words.length(); i++) {
            char c = unstruck(words.charAt(i));
            if (c == '−') {
                text.append('–');
            } else if (known(c)) {
                text.append(c);
            } else {
                String plain = Normalizer.normalize(String.valueOf(c), Normalizer.Form.NFD)
                        .replaceAll("\\p{M}", "");
                text.append(plain.length() == 1 && known(plain.charAt(0)) ? plain : "?");
            }
        }
        return text.toString();
    }

    /** Letters with a stroke have no accent that could be taken off. */
    private static char unstruck(char c) {
        int at = "łŁđĐħĦ".indexOf(c);
        return at < 0 ? c : "lLdDhH".charAt(at);
    }

    private static boolean known(char c) {
        return (c >= ' ' && c <= '~') || (c >= 0xa1 && c <= 0xff && c != 0xad) || "–—‘’“”…•€".indexOf(c) >= 0;
    }

    @Override
    public void within(double x, double y, double width, double height, Runnable inside) {
        act(() -> {
            page.saveGraphicsState();
            page.addRect((float) x, up(y + height), (float) width, (float) height);
            page.clip();
        });
        inside.run();
        act(page::restoreGraphicsState);
    }
}
