package ebblight.core.sky;

import ebblight.core.numeric.Crossings;
import ebblight.core.numeric.Epoch;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/** The way of sun or moon through the picture. */
public final class ViewPath {

    private static final double STEP_SECONDS = 120;
    private static final double TOLERANCE_SECONDS = 0.5;

    private ViewPath() {}

    /**
     * A time in which part of the disc is in the picture and above the skyline.
     *
     * @param enters when it comes in; the start of the search when it was in already
     * @param leaves when it goes; the end of the search when it is still in
     */
    public record Visit(Instant enters, Instant leaves) {}

    /** A point of the path: where the middle of the disc stands at an instant. */
    public record Point(Instant time, Horizontal body, CameraView.Spot spot, Standing standing) {}

    /** All visits of a body between two instants. */
    public static List<Visit> visits(
            CameraView view,
            DoubleFunction<Horizontal> body,
            double radiusKilometres,
            double skylineDegrees,
            double fromEpochSeconds,
            double toEpochSeconds) {
        List<Visit> visits = new ArrayList<>();
        boolean inside = depth(view, body.apply(fromEpochSeconds), radiusKilometres, skylineDegrees) >= 0;
        double since = fromEpochSeconds;
        for (Crossings.Crossing crossing : Crossings.of(
                t -> depth(view, body.apply(t), radiusKilometres, skylineDegrees),
                fromEpochSeconds,
                toEpochSeconds,
                STEP_SECONDS,
                TOLERANCE_SECONDS)) {
            if (crossing.rising()) {
                since = crossing.at();
            } else {
                visits.add(new Visit(Epoch.instant(since), Epoch.instant(crossing.at())));
            }
            inside = crossing.rising();
        }
        if (inside) {
            visits.add(new Visit(Epoch.instant(since), Epoch.instant(toEpochSeconds)));
        }
        return visits;
    }

    /** Degrees by which part of the disc is in the picture and above the skyline; negative outside. */
    private static double depth(CameraView view, Horizontal body, double radiusKilometres, double skylineDegrees) {
        double semidiameter = Sky.semidiameterDegrees(radiusKilometres, body.kilometres());
        double altitude = body.apparentAltitudeDegrees();
        double overSkyline = altitude + semidiameter - skylineDegrees;
        return Math.min(overSkyline, semidiameter - view.outsideDegrees(body.azimuthDegrees(), altitude));
    }

    /** Points of the path every {@code stepSeconds}. */
    public static List<Point> points(
            CameraView view,
            DoubleFunction<Horizontal> body,
            double radiusKilometres,
            double skylineDegrees,
            double fromEpochSeconds,
            double toEpochSeconds,
            double stepSeconds) {
        List<Point> points = new ArrayList<>();
        for (double t = fromEpochSeconds; t <= toEpochSeconds; t += stepSeconds) {
            Horizontal at = body.apply(t);
            double altitude = at.apparentAltitudeDegrees();
            points.add(new Point(
                    Epoch.instant(t),
                    at,
                    view.spot(at.azimuthDegrees(), altitude),
                    Standing.of(
                            view,
                            at.azimuthDegrees(),
                            altitude,
                            Sky.semidiameterDegrees(radiusKilometres, at.kilometres()),
                            skylineDegrees)));
        }
        return points;
    }
}
