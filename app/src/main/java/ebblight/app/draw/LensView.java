package ebblight.app.draw;

import com.grack.nanojson.JsonObject;
import ebblight.app.ask.Asked;
import ebblight.app.draw.Drawing.Dot;
import ebblight.app.draw.Drawing.Hold;
import ebblight.app.draw.Drawing.Lettering;
import ebblight.core.sky.CameraView;
import ebblight.core.sky.Standing;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What stands before the lens on a day: the picture's frame, the horizon with its hours, the sun's path as wide as its
 * disc, the moon as it is lit.
 *
 * @param day what is drawn
 * @param view of the lens
 * @param width of the drawing
 * @param small size of the small words
 */
record LensView(DayPlan day, CameraView view, double width, double small) {

    /** So much of the world beside the frame is drawn. */
    private static final double AROUND = 1.3;

    private static final double SUN_DEGREES = 0.533;
    private static final double TALLEST = 0.9;

    double height() {
        return Math.min(width * TALLEST, scale() * view.heightMillimetres() * AROUND + small + 26);
    }

    /** Drawing units a millimetre on the sensor. */
    double scale() {
        double across = width / (view.widthMillimetres() * AROUND);
        double up = (width * TALLEST - small - 26) / (view.heightMillimetres() * AROUND);
        return Math.min(across, up);
    }

    double middleX() {
        return width / 2;
    }

    double middleY() {
        return small + 18 + scale() * view.heightMillimetres() * AROUND / 2 - 6;
    }

    private Optional<Dot> dot(double azimuth, double altitude) {
        CameraView.Spot spot = view.spot(azimuth, altitude);
        if (!spot.inFront() || Math.abs(spot.xMillimetres()) > 20 * view.widthMillimetres()) {
            return Optional.empty();
        }
        return Optional.of(
                new Dot(middleX() + scale() * spot.xMillimetres(), middleY() - scale() * spot.yMillimetres()));
    }

    void draw(Drawing to) {
        double head = small + 12;
        double height = height();
        to.rect(0, 0, width, height, Ink.SHEET);
        double w = scale() * view.widthMillimetres();
        double h = scale() * view.heightMillimetres();
        to.rect(middleX() - w / 2, middleY() - h / 2, w, h, Ink.VEIL);
        to.within(0, head, width, height - head, () -> inside(to));
        double flare = scale()
                * (view.focalMillimetres()
                                * Math.tan(Math.atan(view.widthMillimetres() / 2 / view.focalMillimetres())
                                        + Math.toRadians(Standing.FLARE_DEGREES))
                        - view.widthMillimetres() / 2);
        if (flare < (width - w) / 2 - 2) {
            to.frame(middleX() - w / 2 - flare, middleY() - h / 2 - 2, w + 2 * flare, h + 4, Ink.INK, 1.3, 2, 5);
        }
        to.frame(middleX() - w / 2, middleY() - h / 2, w, h, Ink.INK, 3.5);
        Lettering strong = Lettering.of(small, Ink.INK).strong();
        to.text(8, small + 3, strong, title(to, strong));
        words(to, middleX() - w / 2 + 8, middleY() + h / 2 - 9);
    }

    private String title(Drawing to, Lettering type) {
        String lens = number(view.focalMillimetres()) + " mm, bearing " + number(view.azimuthDegrees()) + "°";
        String tilt = view.altitudeDegrees() == 0
                ? ""
                : ", tilt " + (view.altitudeDegrees() > 0 ? "+" : "") + number(view.altitudeDegrees()) + "°";
        return fitting(to, type, width - 16, "Through the lens: " + lens + tilt, lens + tilt, lens);
    }

    /** The first of some words that is no wider than the room there is; the last when none fits. */
    private static String fitting(Drawing to, Lettering type, double room, String... words) {
        for (String each : words) {
            if (to.width(type, each) <= room) {
                return each;
            }
        }
        return words[words.length - 1];
    }

    private static String number(double value) {
        return HourAxis.number(value, value == Math.rint(value) ? 0 : 1);
    }

    private void inside(Drawing to) {
        horizon(to);
        sun(to);
        moon(to);
    }

    /** The line between sky and ground, water under it, bearings below. */
    private void horizon(Drawing to) {
        List<Dot> line = new ArrayList<>();
        for (double turn = -85; turn <= 85; turn += 1) {
            dot(view.azimuthDegrees() + turn, 0).ifPresent(line::add);
        }
        if (line.size() < 2) {
            return;
        }
        double y = dot(view.azimuthDegrees(), 0).map(Dot::y).orElse(middleY());
        double bottom = middleY() + scale() * view.heightMillimetres() / 2;
        for (int i = 1; i < 9; i++) {
            double at = y + 10 + 4 * i + i * i * 1.6;
            if (at < bottom - 4 && day.tide().isPresent()) {
                List<Dot> wave = new ArrayList<>();
                double half = scale() * view.widthMillimetres() / 2 - 4;
                for (double x = middleX() - half; x <= middleX() + half; x += 3) {
                    wave.add(new Dot(x, at + (0.6 + 0.3 * i) * Math.sin(x / (3 + 1.2 * i) + i)));
                }
                to.line(wave, Ink.SEA, 0.8);
            }
        }
        to.line(line, Ink.INK, 2);
        double step = view.focalMillimetres() > 120 ? 2 : view.focalMillimetres() > 50 ? 5 : 10;
        double first = Math.ceil((view.azimuthDegrees() - 80) / step) * step;
        double last = -1e9;
        for (double azimuth = first; azimuth < view.azimuthDegrees() + 80; azimuth += step) {
            Optional<Dot> at = dot(azimuth, 0);
            if (at.isPresent()
                    && at.get().x() > last + 40
                    && at.get().x() > 14
                    && at.get().x() < width - 14) {
                last = at.get().x();
                to.line(at.get().x(), height() - small - 9, at.get().x(), height() - small - 4, Ink.INK, 1);
                to.text(
                        at.get().x(),
                        height() - 4,
                        Lettering.of(small - 1, Ink.INK).held(Hold.MIDDLE),
                        number((azimuth + 360) % 360) + "°");
            }
        }
    }

    private void sun(Drawing to) {
        List<Dot> band = new ArrayList<>();
        for (JsonObject row : day.hours()) {
            JsonObject at = row.getObject("sun");
            Optional<Dot> dot = dot(at.getDouble("azimuth"), at.getDouble("altitude"));
            if (dot.isPresent() && at.getDouble("altitude") > -SUN_DEGREES / 2) {
                band.add(dot.get());
            } else {
                band(to, band);
                band.clear();
            }
        }
        band(to, band);
        double last = -1e9;
        for (JsonObject row : day.hours()) {
            Instant time = DayPlan.instant(row, "time");
            JsonObject at = row.getObject("sun");
            if (at.getDouble("altitude") < 0.3 || !day.zone().hour(time).endsWith(":00")) {
                continue;
            }
            Optional<Dot> dot = dot(at.getDouble("azimuth"), at.getDouble("altitude"));
            Optional<Dot> foot = dot(at.getDouble("azimuth"), 0);
            if (dot.isPresent() && foot.isPresent()) {
                to.line(
                        dot.get().x(),
                        dot.get().y() - 9,
                        dot.get().x(),
                        dot.get().y() + 3,
                        Ink.INK,
                        2.5);
                to.line(
                        dot.get().x(),
                        dot.get().y() + 5,
                        foot.get().x(),
                        foot.get().y(),
                        Ink.INK,
                        1,
                        1,
                        4);
                if (foot.get().x() > last + 26) {
                    last = foot.get().x();
                    to.line(
                            foot.get().x(),
                            foot.get().y(),
                            foot.get().x(),
                            foot.get().y() + 6,
                            Ink.INK,
                            2);
                    to.text(
                            foot.get().x(),
                            foot.get().y() + 8 + small,
                            Lettering.of(small, Ink.INK)
                                    .strong()
                                    .held(Hold.MIDDLE)
                                    .haloed(),
                            day.zone().hour(time).replaceAll("^0|:00$", ""));
                }
            }
        }
    }

    private void band(Drawing to, List<Dot> band) {
        if (band.size() > 1) {
            double wide = Math.max(2.5, scale() * view.focalMillimetres() * Math.toRadians(SUN_DEGREES));
            to.line(List.copyOf(band), Ink.VEIL, wide + 5);
            to.line(List.copyOf(band), Ink.INK, wide);
        }
    }

    private void moon(Drawing to) {
        JsonObject moon = day.sky().getObject("moon");
        boolean waxing = moon.getDouble("phase") < 180;
        for (JsonObject row : day.hours()) {
            JsonObject at = row.getObject("moon");
            Instant time = DayPlan.instant(row, "time");
            Optional<Dot> dot = dot(at.getDouble("azimuth"), at.getDouble("altitude"));
            if (dot.isEmpty()
                    || at.getDouble("altitude") < 0.5
                    || !day.zone().hour(time).endsWith(":00")) {
                continue;
            }
            to.circle(dot.get().x(), dot.get().y(), 8.5, Ink.VEIL);
            SkyRows.phase(to, dot.get().x(), dot.get().y(), 7, moon.getDouble("fraction"), waxing);
            to.text(
                    dot.get().x() + 11,
                    dot.get().y() + 5,
                    Lettering.of(small - 1, Ink.INK).haloed(),
                    day.zone().hour(time).replaceAll("^0|:00$", ""));
        }
    }

    /** When the sun is in the picture. */
    private void words(Drawing to, double x, double y) {
        List<JsonObject> visits =
                Asked.rows(day.sky().getObject("view").getObject("sun").getArray("inFrame"));
        Lettering type = Lettering.of(small, Ink.INK).strong();
        double room = scale() * view.widthMillimetres() - 5;
        String words = fitting(to, type, room - 13, "the sun stays out of the picture", "no sun in the picture");
        if (!visits.isEmpty()) {
            JsonObject last = visits.get(visits.size() - 1);
            String hours = day.zone().hour(DayPlan.instant(last, "enters")) + " to "
                    + day.zone().hour(DayPlan.instant(last, "leaves"));
            words = fitting(to, type, room - 13, "sun in the picture " + hours, "sun " + hours);
        }
        double wide = to.width(type, words) + 13;
        to.rect(x - 6, y - small - 1, Math.min(wide, room), small + 7, Ink.VEIL);
        to.text(x, y, type, words);
    }
}
