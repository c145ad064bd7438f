package ebblight.imaging.finish;

/** What the easel's blades leave of the levelled picture. */
public sealed interface Crop {

    /** All of it. */
    record Whole() implements Crop {}

    /** Blades at fractions 0 to 1 of width and height. */
    record Blades(double left, double top, double right, double bottom) implements Crop {
        public Blades {
            boolean inside = left >= 0 && top >= 0 && right <= 1 && bottom <= 1;
            if (!(inside && left < right && top < bottom)) {
                throw new IllegalArgumentException("blades must keep 0 ≤ left < right ≤ 1 and 0 ≤ top < bottom ≤ 1");
            }
        }
    }

    /**
     * Paper first: as much of the picture as the ratio of the paper within its border holds.
     *
     * @param borderCentimetres white on all four sides
     * @param x of the middle of what is kept, 0 to 1; moved inside where it would reach over the border
     */
    record Paper(double widthCentimetres, double heightCentimetres, double borderCentimetres, double x, double y)
            implements Crop {
        public Paper {
            if (!(widthCentimetres > 0
                    && heightCentimetres > 0
                    && widthCentimetres <= 1000
                    && heightCentimetres <= 1000)) {
                throw new IllegalArgumentException("paper must be above 0 and at most 1000 cm on both sides, was "
                        + widthCentimetres + " × " + heightCentimetres);
            }
            if (!(borderCentimetres >= 0 && 2 * borderCentimetres < Math.min(widthCentimetres, heightCentimetres))) {
                throw new IllegalArgumentException(
                        "the border must leave some of the paper, was " + borderCentimetres + " cm");
            }
            if (!(x >= 0 && x <= 1 && y >= 0 && y <= 1)) {
                throw new IllegalArgumentException("the middle must lie between 0 and 1, was " + x + ", " + y);
            }
        }

        public double pictureWidth() {
            return widthCentimetres - 2 * borderCentimetres;
        }

        public double pictureHeight() {
            return heightCentimetres - 2 * borderCentimetres;
        }
    }
}
