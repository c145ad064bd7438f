package ebblight.core.motion;

/** Where the pixels of the middle frame lie in a frame that was moved by a {@link Placement}. */
record Placing(double cosine, double sine, double offsetX, double offsetY) {

    static Placing of(Placement q, int width, int height) {
        double c = StrictMath.cos(q.angle());
        double s = StrictMath.sin(q.angle());
        double cx = (width - 1) / 2.0;
        double cy = (height - 1) / 2.0;
        return new Placing(c, s, q.dx() + cx - c * cx + s * cy, q.dy() + cy - s * cx - c * cy);
    }

    double x(double x, double y) {
        return cosine * x - sine * y + offsetX;
    }

    double y(double x, double y) {
        return sine * x + cosine * y + offsetY;
    }

    /** Column of the place of pixel {@code p} in a picture of {@code width}. */
    double xAt(int p, int width) {
        int row = p / width;
        return x(p - row * width, row);
    }

    double yAt(int p, int width) {
        int row = p / width;
        return y(p - row * width, row);
    }
}
