package ebblight.app.draw;

import java.util.ArrayList;
import java.util.List;

/** Something to draw on; x to the right, y down, in points or pixels. */
interface Drawing {

    /** Where a text is held. */
    enum Hold {
        START,
        MIDDLE,
        END
    }

    /** A place on the drawing. */
    record Dot(double x, double y) {}

    /**
     * How a text is set.
     *
     * @param halo whether what lies behind is kept off it
     */
    record Lettering(double size, boolean bold, Ink ink, Hold hold, boolean halo) {

        static Lettering of(double size, Ink ink) {
            return new Lettering(size, false, ink, Hold.START, false);
        }

        Lettering strong() {
            return new Lettering(size, true, ink, hold, halo);
        }

        Lettering held(Hold at) {
            return new Lettering(size, bold, ink, at, halo);
        }

        Lettering haloed() {
            return new Lettering(size, bold, ink, hold, true);
        }
    }

    void rect(double x, double y, double width, double height, Ink fill, double opacity);

    void frame(double x, double y, double width, double height, Ink stroke, double lineWidth, double... dash);

    void line(List<Dot> dots, Ink stroke, double lineWidth, double... dash);

    void area(List<Dot> dots, Ink fill, double opacity);

    void circle(double x, double y, double radius, Ink fill);

    void text(double x, double y, Lettering type, String words);

    /** What {@code inside} draws is cut at the rectangle. */
    void within(double x, double y, double width, double height, Runnable inside);

    default void line(double x0, double y0, double x1, double y1, Ink stroke, double lineWidth, double... dash) {
        line(List.of(new Dot(x0, y0), new Dot(x1, y1)), stroke, lineWidth, dash);
    }

    default void rect(double x, double y, double width, double height, Ink fill) {
        rect(x, y, width, height, fill, 1);
    }

    /** How wide a text is set; where the face is not known, about so: those in use differ by some percent. */
    default double width(Lettering type, String words) {
        return words.length() * type.size() * (type.bold() ? 0.57 : 0.53);
    }

    /** Words in lines no wider than {@code width}; a word that is wider stands alone. */
    default List<String> broken(Lettering type, String words, double width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : words.split(" ", -1)) {
            if (line.length() > 0 && width(type, line + " " + word) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.length() == 0 ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }
}
