package ebblight.core.exposure;

import ebblight.core.numeric.Powers;
import ebblight.core.optics.DepthOfField;
import ebblight.core.optics.Diffraction;
import ebblight.core.optics.FieldOfView;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What a setting costs, each thing in stops of a common scale and in words. The weights are our own judgement of how
 * much each would bother a landscape photographer; they only rank.
 */
final class Costs {

    private static final double WIDE_EQUIVALENT = 28;
    private static final double VIGNETTING_EQUIVALENT = 24;
    private static final double PER_FILTER = 0.4;

    private Costs() {}

    static List<Choice.Cost> of(
            SettingsRequest request,
            List<Filter> filters,
            double fNumber,
            double iso,
            double seconds,
            double openSeconds,
            boolean timed,
            Optional<DepthOfField> depth) {
        List<Choice.Cost> costs = new ArrayList<>();
        Camera camera = request.camera();
        distance(request, seconds, costs);
        diffraction(camera, fNumber, costs);
        sensitivity(camera, iso, costs);
        glass(camera, filters, costs);
        depth.ifPresent(d -> depth(request, d, costs));
        if (!timed) {
            costs.add(new Choice.Cost(0.1, "bulb: needs a remote release and a watch"));
        }
        if (camera.busySeconds(openSeconds) > openSeconds) {
            costs.add(new Choice.Cost(
                    0.1, "in-camera dark frame: busy for " + ShutterTime.words(camera.busySeconds(openSeconds))));
        }
        costs.sort(Comparator.comparingDouble((Choice.Cost c) -> -c.stops()));
        return costs;
    }

    private static void distance(SettingsRequest request, double seconds, List<Choice.Cost> costs) {
        double off = Powers.log2(seconds / request.aimSeconds());
        boolean range = request.toSeconds() > request.fromSeconds() * 1.01;
        double weight = range ? 0.3 : 1;
        // less would be told as no stops at all
        if (Math.abs(off) > (range ? 0.05 : 0.01)) {
            String words = range
                    ? Numbers.stops(Math.abs(off)) + " " + (off > 0 ? "longer" : "shorter")
                            + " than the middle of the wish"
                    : Numbers.shortest(Math.abs(off), 2) + " stop " + (off > 0 ? "longer" : "shorter") + " than asked";
            costs.add(new Choice.Cost(weight * Math.abs(off), words));
        }
    }

    private static void diffraction(Camera camera, double fNumber, List<Choice.Cost> costs) {
        double beyond = 2 * Powers.log2(fNumber / camera.sharpestTo());
        double before = 2 * Powers.log2(camera.sharpestFrom() / fNumber);
        if (beyond > 0.01) {
            costs.add(new Choice.Cost(
                    0.5 * beyond,
                    "diffraction: Airy disk " + Numbers.shortest(Diffraction.airyDiskMicrometres(fNumber), 0)
                            + " µm against a circle of confusion of "
                            + Numbers.shortest(1000 * camera.circleMillimetres(), 0) + " µm"));
        } else if (before > 0.01) {
            costs.add(new Choice.Cost(0.3 * before, "wide open: softer corners, less depth of field"));
        }
    }

    private static void sensitivity(Camera camera, double iso, List<Choice.Cost> costs) {
        double above = Powers.log2(iso / camera.baseIso());
        if (above > 0.01) {
            costs.add(new Choice.Cost(0.5 * above, Numbers.stops(above) + " above base ISO: more noise"));
        } else if (above < -0.01) {
            costs.add(new Choice.Cost(
                    -above, Numbers.stops(-above) + " below base ISO: that much less room for highlights"));
        }
    }

    private static void glass(Camera camera, List<Filter> filters, List<Choice.Cost> costs) {
        double equivalent = FieldOfView.equivalentMillimetres(
                camera.focalMillimetres(), camera.sensorWidthMillimetres(), camera.sensorHeightMillimetres());
        int neutral = 0;
        for (Filter filter : filters) {
            switch (filter.kind()) {
                case NEUTRAL -> neutral++;
                case VARIABLE ->
                    costs.add(new Choice.Cost(
                            equivalent < WIDE_EQUIVALENT ? 0.8 : 0.5,
                            "variable ND: meter through it, not by its marks; a dark cross near its end"
                                    + (equivalent < WIDE_EQUIVALENT ? " and on a lens this wide" : "")));
                case POLARISER ->
                    costs.add(new Choice.Cost(
                            equivalent < WIDE_EQUIVALENT ? 0.4 : 0.1,
                            "polariser: meter through it"
                                    + (equivalent < WIDE_EQUIVALENT ? "; uneven sky on a lens this wide" : "")));
                case GRADUATED -> costs.add(new Choice.Cost(0.1, "graduated filter: meter the foreground"));
            }
        }
        if (neutral > 0) {
            costs.add(new Choice.Cost(
                    PER_FILTER * neutral,
                    neutral == 1
                            ? "one filter: check its colour cast"
                            : neutral + " filters stacked: colour cast, flare"
                                    + (equivalent <= VIGNETTING_EQUIVALENT
                                            ? ", dark corners on a lens this wide"
                                            : "")));
        }
    }

    private static void depth(SettingsRequest request, DepthOfField depth, List<Choice.Cost> costs) {
        SettingsRequest.Depth wanted = request.depth().orElseThrow();
        boolean near = depth.nearMetres() <= wanted.nearestMetres() * 1.001;
        boolean far = depth.farMetres() >= wanted.farthestMetres() * 0.999;
        if (!near || !far) {
            costs.add(new Choice.Cost(
                    1,
                    "depth of field falls short: sharp from " + Numbers.shortest(depth.nearMetres(), 2) + " m to "
                            + (Double.isInfinite(depth.farMetres())
                                    ? "infinity"
                                    : Numbers.shortest(depth.farMetres(), 1) + " m")));
        }
    }
}
