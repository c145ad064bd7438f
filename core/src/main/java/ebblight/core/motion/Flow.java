package ebblight.core.motion;

/**
 * A steady field of velocities, in pixels a second, that changes evenly across the picture: u = u₀ + uₓ X + u_y Y and
 * v = v₀ + vₓ X + v_y Y with X and Y counted from the centre in halves of the width.
 */
record Flow(double u0, double ux, double uy, double v0, double vx, double vy, int width, int height) {

    static Flow none(int width, int height) {
        return new Flow(0, 0, 0, 0, 0, 0, width, height);
    }

    double u(double x, double y) {
        double half = width / 2.0;
        return u0 + ux * (x - half) / half + uy * (y - height / 2.0) / half;
    }

    double v(double x, double y) {
        double half = width / 2.0;
        return v0 + vx * (x - half) / half + vy * (y - height / 2.0) / half;
    }

    double speed(double x, double y) {
        double u = u(x, y);
        double v = v(x, y);
        return Math.sqrt(u * u + v * v);
    }

    /** This field less another of the same size. */
    Flow minus(Flow other) {
        return new Flow(
                u0 - other.u0,
                ux - other.ux,
                uy - other.uy,
                v0 - other.v0,
                vx - other.vx,
                vy - other.vy,
                width,
                height);
    }

    /** The fastest speed at the picture's corners, in pixels a second. */
    double fastest() {
        return Math.max(
                Math.max(speed(0, 0), speed(width - 1.0, 0)),
                Math.max(speed(0, height - 1.0), speed(width - 1.0, height - 1.0)));
    }

    /**
     * The map that takes a place to where its air was {@code seconds} before: the exponential of the field, as {a, b,
     * c, d, e, f} with x' = a x + b y + c and y' = d x + e y + f.
     */
    double[] back(double seconds) {
        double half = width / 2.0;
        double[] m = {
            -seconds * ux / half, -seconds * uy / half, -seconds * u0,
            -seconds * vx / half, -seconds * vy / half, -seconds * v0
        };
        double largest = 0;
        for (double value : m) {
            largest = Math.max(largest, Math.abs(value));
        }
        int halvings = 0;
        while (largest > 1) {
            largest /= 2;
            halvings++;
        }
        for (int k = 0; k < m.length; k++) {
            for (int i = 0; i < halvings; i++) {
                m[k] /= 2;
            }
        }
        double[] sum = {1, 0, 0, 0, 1, 0};
        double[] term = {1, 0, 0, 0, 1, 0};
        for (int i = 1; i < 8; i++) {
            term = product(term, m, 0);
            for (int k = 0; k < term.length; k++) {
                term[k] /= i;
                sum[k] += term[k];
            }
        }
        for (int i = 0; i < halvings; i++) {
            sum = product(sum, sum, 1);
        }
        double cx = half;
        double cy = height / 2.0;
        return new double[] {
            sum[0], sum[1], sum[2] + cx - sum[0] * cx - sum[1] * cy,
            sum[3], sum[4], sum[5] + cy - sum[3] * cx - sum[4] * cy
        };
    }

    /** Product of two 3 × 3 matrices given by their upper two rows; the last row of {@code b} is (0, 0, {@code corner}). */
    private static double[] product(double[] a, double[] b, double corner) {
        return new double[] {
            a[0] * b[0] + a[1] * b[3],
            a[0] * b[1] + a[1] * b[4],
            a[0] * b[2] + a[1] * b[5] + a[2] * corner,
            a[3] * b[0] + a[4] * b[3],
            a[3] * b[1] + a[4] * b[4],
            a[3] * b[2] + a[4] * b[5] + a[5] * corner
        };
    }
}
