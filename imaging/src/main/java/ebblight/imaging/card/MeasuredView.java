package ebblight.imaging.card;

import ebblight.core.card.CardShot;
import ebblight.core.card.Measured;
import ebblight.core.card.Ranking;
import ebblight.core.card.Role;
import ebblight.core.card.Roles;
import ebblight.core.exposure.Exposure;
import ebblight.core.numeric.Quantiles;
import ebblight.imaging.FrameFacts;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The frames of one view, measured against each other. */
final class MeasuredView {

    /** Fine contrast of open water in a short frame, where no frame of the view is short: 10 % (MOTION, own clips). */
    private static final double ROUGH_LOG2 = -3.3;

    /** Where more than this is clipped, edges are those of the clipping. */
    private static final double MOST_CLIPPED = 0.2;

    private final List<CardFrame> frames;
    private final HotPixels hot;
    private final ViewParts parts;
    private final ViewLevels levels;

    MeasuredView(List<CardFrame> frames, HotPixels hot) {
        this.frames = frames;
        this.hot = hot;
        this.parts = ViewParts.of(frames);
        this.levels = new ViewLevels(frames, parts);
    }

    SortedCard.Group sorted() {
        Roles roles = Roles.of(shots());
        List<Measured> measured = measured(roles);
        List<Integer> order = Ranking.order(measured);
        List<SortedCard.Frame> sorted = new ArrayList<>();
        int burst = 0;
        for (int k = 0; k < frames.size(); k++) {
            CardFrame frame = frames.get(k);
            Measured m = measured.get(k);
            boolean inBurst = roles.role(k) == Role.BURST;
            burst += inBurst && roles.beginsBurst(k) ? 1 : 0;
            sorted.add(new SortedCard.Frame(
                    frame.file(),
                    frame.companions(),
                    frame.facts(),
                    order.indexOf(k) + 1,
                    kept(roles.role(k)) && Ranking.near(m, measured.get(order.get(0))),
                    roles.role(k),
                    roles.filterStops(k),
                    inBurst ? burst : 0,
                    Optional.of(m),
                    m.hotPixels(),
                    m.clippedFraction(),
                    Ranking.notes(m, measured),
                    frame.slateText()));
        }
        return new SortedCard.Group(SortedCard.Kind.VIEW, List.copyOf(sorted), pairs(roles));
    }

    /** Test frames served their purpose, and of a burst the sum is wanted. */
    private static boolean kept(Role role) {
        return role != Role.TEST && role != Role.BURST;
    }

    private List<CardShot> shots() {
        List<CardShot> shots = new ArrayList<>();
        for (int k = 0; k < frames.size(); k++) {
            CardFrame frame = frames.get(k);
            shots.add(new CardShot(
                    frame.seconds(),
                    frame.exposureSeconds().orElse(Double.NaN),
                    exposureOf(frame.facts()).map(Exposure::exposureValue100).orElse(Double.NaN),
                    levels.stops(k)));
        }
        return shots;
    }

    private static Optional<Exposure> exposureOf(FrameFacts facts) {
        return facts.exposureSeconds().isPresent()
                        && facts.fNumber().isPresent()
                        && facts.isoSpeed().isPresent()
                ? Optional.of(Exposure.fromFile(
                        facts.exposureSeconds().getAsDouble(),
                        facts.fNumber().getAsDouble(),
                        facts.isoSpeed().getAsDouble()))
                : Optional.empty();
    }

    private List<Measured> measured(Roles roles) {
        double middle = middleLevel(roles);
        SharpStanding sharp = new SharpStanding(frames, parts);
        double[] veils = levels.veils();
        double[] flow = new double[frames.size()];
        double roughest = ROUGH_LOG2;
        for (int k = 0; k < flow.length; k++) {
            Cells cells = frames.get(k).cells();
            flow[k] = ViewParts.median(cells.count(), i -> parts.flowing(i) && cells.known(i), cells::detail);
            roughest = flow[k] > roughest ? flow[k] : roughest;
        }
        List<Measured> measured = new ArrayList<>();
        for (int k = 0; k < flow.length; k++) {
            CardFrame frame = frames.get(k);
            SharpStanding.Found found = sharp.of(k);
            measured.add(new Measured(
                    found.sharpness(),
                    found.softness(),
                    found.softShare(),
                    1 - Math.pow(2, flow[k] - roughest),
                    frame.clippedFraction(),
                    levels.stops(k) - middle,
                    veils[k],
                    frame.clippedFraction() > MOST_CLIPPED ? Double.NaN : HorizonTilt.degrees(frame.cells()),
                    hot.count(frame),
                    hot.sure()));
        }
        return measured;
    }

    /** Median of the levels; a burst counts once, or it would rule. */
    private double middleLevel(Roles roles) {
        double[] counted = new double[frames.size()];
        int n = 0;
        for (int k = 0; k < counted.length; k++) {
            double stops = levels.stops(k);
            if (!Double.isNaN(stops) && (roles.role(k) != Role.BURST || roles.beginsBurst(k))) {
                counted[n++] = stops;
            }
        }
        return n == 0 ? 0 : Quantiles.median(counted, n);
    }

    private List<SortedCard.Pair> pairs(Roles roles) {
        List<SortedCard.Pair> pairs = new ArrayList<>();
        for (int k = 0; k < frames.size(); k++) {
            int clear = roles.clearFrameFor(k);
            if (clear >= 0) {
                pairs.add(new SortedCard.Pair(
                        frames.get(clear).file(), frames.get(k).file(), roles.filterStops(k)));
            }
        }
        return List.copyOf(pairs);
    }
}
