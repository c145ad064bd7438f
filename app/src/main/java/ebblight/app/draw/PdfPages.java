package ebblight.app.draw;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.image.JPEGFactory;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.jspecify.annotations.Nullable;

/** Pages of a PDF, A4, origin at the upper left; the same bytes for the same content. */
final class PdfPages implements AutoCloseable {

    static final double SHORT = PDRectangle.A4.getWidth();
    static final double LONG = PDRectangle.A4.getHeight();
    static final double MILLIMETRE = 72 / 25.4;

    private final PDDocument document = new PDDocument();
    private @Nullable PDPageContentStream open;
    private double height;

    /** Begins a page, upright or lying. */
    PdfDrawing page(boolean upright) throws IOException {
        end();
        double width = upright ? SHORT : LONG;
        height = upright ? LONG : SHORT;
        PDPage page = new PDPage(new PDRectangle((float) width, (float) height));
        document.addPage(page);
        PDPageContentStream stream = new PDPageContentStream(document, page);
        open = stream;
        return new PdfDrawing(stream, height);
    }

    /** A picture inside a box, as large as its ratio lets it be, in the middle; returns where it lies. */
    Box jpeg(byte[] jpeg, Box within) throws IOException {
        PDPageContentStream stream = open;
        if (stream == null) {
            throw new IllegalStateException("no page was begun");
        }
        PDImageXObject image = JPEGFactory.createFromByteArray(document, jpeg);
        double scale = Math.min(within.width / image.getWidth(), within.height / image.getHeight());
        double w = scale * image.getWidth();
        double h = scale * image.getHeight();
        Box box = new Box(within.x + (within.width - w) / 2, within.y + (within.height - h) / 2, w, h);
        stream.drawImage(image, (float) box.x, (float) (height - box.y - h), (float) w, (float) h);
        return box;
    }

    /** A place on a page, in points. */
    record Box(double x, double y, double width, double height) {}

    private void end() throws IOException {
        PDPageContentStream last = open;
        if (last != null) {
            last.close();
            open = null;
        }
    }

    byte[] bytes(String title) throws IOException {
        end();
        document.getDocumentInformation().setTitle(title);
        document.setDocumentId(0L); // else it would be made from the time
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        document.save(bytes);
        return bytes.toByteArray();
    }

    @Override
    public void close() throws IOException {
        end();
        document.close();
    }
}
