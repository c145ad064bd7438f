package ebblight.engine;

import com.grack.nanojson.JsonArray;
import com.grack.nanojson.JsonObject;
import ebblight.core.numeric.Epoch;
import ebblight.core.sky.CameraView;
import ebblight.core.sky.GlitterPath;
import ebblight.core.sky.Horizontal;
import ebblight.core.sky.Sky;
import ebblight.core.sky.Standing;
import ebblight.core.sky.ViewPath;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;

/** How sun and moon stand to a view, as part of {@code sky/1}. */
final class ViewAnswer {

    private static final double PATH_STEP_SECONDS = 600;

    /** Wind over open water that is likely when nobody says: 2 to 10 m/s. */
    private static final double[] LIKELY_WIND = {2, 10};

    private ViewAnswer() {}

    /** Sun and moon where they enter the picture while the shutter is open: rows of {@code body} and {@code time}. */
    static JsonArray entering(CameraView view, Sky sky, double skyline, double open, double closed) {
        JsonArray rows = new JsonArray();
        putEntering(rows, "sun", ViewPath.visits(view, sky::sun, Sky.SUN_KILOMETRES, skyline, open, closed), open);
        putEntering(rows, "moon", ViewPath.visits(view, sky::moon, Sky.MOON_KILOMETRES, skyline, open, closed), open);
        return rows;
    }

    private static void putEntering(JsonArray rows, String body, List<ViewPath.Visit> visits, double open) {
        for (ViewPath.Visit visit : visits) {
            if (Epoch.seconds(visit.enters()) > open) {
                JsonObject row = new JsonObject();
                row.put("body", body);
                row.put("time", Instants.write(visit.enters()));
                rows.add(row);
            }
        }
    }

    static JsonObject of(
            CameraView view,
            Sky exact,
            Sky sky,
            double skyline,
            double at,
            double from,
            double to,
            OptionalDouble wind) {
        JsonObject all = new JsonObject();
        all.put("azimuth", view.azimuthDegrees());
        all.put("altitude", view.altitudeDegrees());
        all.put("focalMillimetres", view.focalMillimetres());
        all.put("sensorMillimetres", Json.array(view.widthMillimetres(), view.heightMillimetres()));
        all.put("skylineDegrees", skyline);
        all.put("sun", body(view, exact.sun(at), sky::sun, Sky.SUN_KILOMETRES, skyline, from, to));
        all.put("moon", body(view, exact.moon(at), sky::moon, Sky.MOON_KILOMETRES, skyline, from, to));
        all.put("glitter", glitter(exact.sun(at), wind));
        return all;
    }

    private static JsonObject body(
            CameraView view,
            Horizontal now,
            DoubleFunction<Horizontal> body,
            double radius,
            double skyline,
            double from,
            double to) {
        JsonObject one = new JsonObject();
        double altitude = now.apparentAltitudeDegrees();
        double semidiameter = Sky.semidiameterDegrees(radius, now.kilometres());
        Standing standing = Standing.of(view, now.azimuthDegrees(), altitude, semidiameter, skyline);
        one.put("standing", standing.word());
        one.put("offAxisDegrees", view.offAxisDegrees(now.azimuthDegrees(), altitude));
        putSpot(one, view.spot(now.azimuthDegrees(), altitude));
        JsonArray visits = new JsonArray();
        for (ViewPath.Visit visit : ViewPath.visits(view, body, radius, skyline, from, to)) {
            JsonObject each = new JsonObject();
            each.put("enters", Instants.write(visit.enters()));
            each.put("leaves", Instants.write(visit.leaves()));
            visits.add(each);
        }
        one.put("inFrame", visits);
        JsonArray path = new JsonArray();
        for (ViewPath.Point point : ViewPath.points(view, body, radius, skyline, from, to, PATH_STEP_SECONDS)) {
            if (point.standing() == Standing.INSIDE || point.standing() == Standing.FLARE) {
                JsonObject each = new JsonObject();
                each.put("time", Instants.write(point.time()));
                putSpot(each, point.spot());
                each.put("standing", point.standing().word());
                path.add(each);
            }
        }
        one.put("path", path);
        return one;
    }

    private static void putSpot(JsonObject one, CameraView.Spot spot) {
        one.put("xMillimetres", spot.inFront() ? Json.number(spot.xMillimetres()) : null);
        one.put("yMillimetres", spot.inFront() ? Json.number(spot.yMillimetres()) : null);
    }

    private static JsonArray glitter(Horizontal sun, OptionalDouble wind) {
        JsonArray paths = new JsonArray();
        double altitude = sun.apparentAltitudeDegrees();
        if (altitude <= 0 || altitude >= 90) {
            return paths;
        }
        double[] winds = wind.isPresent() ? new double[] {wind.getAsDouble()} : LIKELY_WIND;
        for (double metresPerSecond : winds) {
            GlitterPath path = Checked.of(
                    "windMetresPerSecond", () -> GlitterPath.of(sun.azimuthDegrees(), altitude, metresPerSecond));
            JsonObject one = new JsonObject();
            one.put("windMetresPerSecond", metresPerSecond);
            one.put("azimuth", path.azimuthDegrees());
            one.put("widthDegrees", path.widthDegrees());
            one.put("nearDegrees", path.nearDegrees());
            one.put("farDegrees", path.farDegrees());
            paths.add(one);
        }
        return paths;
    }
}
