package ebblight.app.draw;

import com.grack.nanojson.JsonObject;
import ebblight.app.draw.Drawing.Hold;
import ebblight.app.draw.Drawing.Lettering;
import java.time.Instant;

/**
 * The hours of one day on one axis: sun, moon, tide, light in steps of a stop; the windows run through all of them.
 *
 * @param tall how high the rows are drawn, 1 on a screen
 */
record DayStrip(HourAxis axis, double tall) {

    private static final double GAP = 6;
    private static final double LEAST_ROW = 34;
    private static final double TIDE = 104;
    private static final double LIGHT = 96;
    private static final double NARROW_LEFT = 3.7;
    private static final double WIDE_LEFT = 7.4;

    /** A strip whose margin has room for the names of the rows. */
    static DayStrip of(DayPlan day, double width, double small) {
        double left = (width < HourAxis.NARROWER_THAN ? NARROW_LEFT : WIDE_LEFT) * small;
        return new DayStrip(new HourAxis(day, left, width, small), 1);
    }

    /** Rows of sun and moon have room for two lines of words beside them. */
    private SkyRows sky() {
        return new SkyRows(axis, Math.max(LEAST_ROW, 2 * axis.small() + 8));
    }

    private TideRow tide() {
        return new TideRow(axis, tall * TIDE);
    }

    private LightRow light() {
        return new LightRow(axis, tall * LIGHT);
    }

    private boolean hasTide() {
        return axis.day().tide().isPresent();
    }

    double height() {
        return head() + rows() + 6;
    }

    private double head() {
        return axis.small() + 12;
    }

    private double rows() {
        return 2 * (sky().height() + GAP) + (hasTide() ? tide().height() + GAP : 0) + light().height();
    }

    void draw(Drawing to, double top) {
        hours(to, top);
        double first = top + head();
        double end = first + rows();
        double moon = first + sky().height() + GAP;
        double water = moon + sky().height() + GAP;
        double light = end - light().height();
        ground(to, first, sky().height());
        ground(to, moon, sky().height());
        ground(to, light, light().height());
        sky().ground(to, first);
        if (hasTide()) {
            ground(to, water, tide().height());
        }
        for (JsonObject window : axis.day().windows()) {
            double a = axis.x(DayPlan.instant(window, "start"));
            to.rect(a, first - 3, end(window) - a, end - first + 6, Ink.LICHEN);
        }
        sky().sun(to, first);
        sky().moon(to, moon);
        if (hasTide()) {
            tide().draw(to, water, axis.day().tide().get());
        }
        light().draw(to, light);
        for (JsonObject window : axis.day().windows()) {
            edges(to, window, first - 4, end + 4);
        }
    }

    private void ground(Drawing to, double y, double height) {
        to.rect(axis.left(), y, axis.width() - axis.left(), height, Ink.SHEET);
    }

    /** Where a window ends; never so near its start that it could not be seen. */
    private double end(JsonObject window) {
        return Math.max(axis.x(DayPlan.instant(window, "start")) + 3, axis.x(DayPlan.instant(window, "end")));
    }

    private void edges(Drawing to, JsonObject window, double top, double bottom) {
        double a = axis.x(DayPlan.instant(window, "start"));
        double b = end(window);
        for (double edge : new double[] {a, b}) {
            to.line(edge, top, edge, bottom, Ink.LANE_INK, 2.5);
        }
        for (double cap : new double[] {top, bottom}) {
            to.line(a - 1.2, cap, b + 1.2, cap, Ink.LANE_INK, 4);
        }
    }

    private void hours(Drawing to, double top) {
        int step = axis.narrow() ? 6 : 3;
        Lettering type = Lettering.of(axis.small(), Ink.INK).strong().held(Hold.MIDDLE);
        for (int hour = step; hour < 24; hour += step) {
            Instant at = axis.day().zone().at(axis.day().day(), hour);
            to.text(axis.x(at), top + axis.small() + 2, type, Integer.toString(hour));
            to.line(axis.x(at), top + head() - 5, axis.x(at), top + head(), Ink.INK, 1.5);
        }
    }
}
