package ebblight.app.pocket;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;

/** The mark as pixels, for home screens that take no SVG; the drawing is that of mark.svg. */
final class PocketIcon {

    private static final double SIDE = 32;
    private static final double[] SWING = {3, 16, 6, 7, 9.5, 25, 13, 8, 16.5, 23, 20, 11, 23, 19, 26, 15, 29, 16.5};

    private PocketIcon() {}

    static byte[] png(int size) throws IOException {
        BufferedImage image = new BufferedImage(size, size, BufferedImage.TYPE_INT_RGB);
        Graphics2D pen = image.createGraphics();
        pen.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        pen.setColor(new Color(0x0d1618));
        pen.fillRect(0, 0, size, size);
        pen.scale(size / SIDE, size / SIDE);
        pen.setColor(new Color(0xcfe04a));
        pen.setStroke(new BasicStroke(2.6f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_BEVEL));
        Path2D line = new Path2D.Double();
        line.moveTo(SWING[0], SWING[1]);
        for (int i = 2; i < SWING.length; i += 2) {
            line.lineTo(SWING[i], SWING[i + 1]);
        }
        pen.draw(line);
        pen.dispose();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        ImageIO.write(image, "png", bytes);
        return bytes.toByteArray();
    }
}
