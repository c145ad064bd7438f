package ebblight.core.wish;

import ebblight.core.motion.FlowLines;
import ebblight.core.motion.Kind;
import ebblight.core.motion.Passing;
import ebblight.core.motion.RegionMap;
import ebblight.core.motion.RegionMotion;
import ebblight.core.motion.Remaining;
import ebblight.core.motion.Rhythm;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleFunction;

/**
 * Parts of a picture whose laws can be worked by hand. Of water R(T) = √(1/8 s / T) is left after an eighth of a second,
 * as of the mean of independent moments (MOTION: variance falls as 1/T); the likely range is a stop either way.
 */
final class Part {

    private final Kind kind;
    private final double speed;
    private final double swingPixelsPerSecond;
    private int number = 1;
    private double texture;
    private double standing;
    private boolean seen = true;
    private Rhythm rhythm = new Rhythm(0, List.of());
    private FlowLines lines = new FlowLines(0, 0, 0);
    private Passing passing = new Passing(0, 0);
    private double toldUpTo = 960;

    private Part(Kind kind, double texture, double speed, double swing) {
        this.kind = kind;
        this.texture = texture;
        this.speed = speed;
        swingPixelsPerSecond = swing;
    }

    /** 40 % of texture: 5 % is left after 8 s, 2 % after 50 s, 1 % after 200 s. */
    static Part water() {
        return new Part(Kind.FLOWING, 0.4, 0, 0);
    }

    static Part cloud(double pixelsPerSecond) {
        return new Part(Kind.DRIFTING, 0.1, pixelsPerSecond, 0);
    }

    static Part branch(double texture, double pixelsPerSecond) {
        return new Part(Kind.SWAYING, texture, 0, pixelsPerSecond);
    }

    static Part rock() {
        return new Part(Kind.FIXED, 0, 0, 0);
    }

    Part with(double ofTexture, double ofStanding) {
        texture = ofTexture;
        standing = ofStanding;
        return this;
    }

    Part unseen() {
        seen = false;
        return this;
    }

    Part numbered(int as) {
        number = as;
        return this;
    }

    Part with(FlowLines ofLines, double period) {
        lines = ofLines;
        rhythm = new Rhythm(period, List.of());
        return this;
    }

    Part passed(double share, double contrast) {
        passing = new Passing(share, contrast);
        return this;
    }

    Part toldUpTo(double seconds) {
        toldUpTo = seconds;
        return this;
    }

    RegionMotion motion() {
        DoubleFunction<Remaining> at = t -> {
            double ratio = Math.min(1, Math.sqrt(0.125 / t));
            Remaining.Basis basis = t > toldUpTo ? Remaining.Basis.TOO_FAR : Remaining.Basis.EXTRAPOLATED;
            return new Remaining(t, ratio, ratio / 2, Math.min(1, 2 * ratio), basis);
        };
        Optional<RegionMotion.Velocity> velocity = kind == Kind.DRIFTING
                ? Optional.of(new RegionMotion.Velocity(0.6 * speed, -0.8 * speed, 0.1))
                : Optional.empty();
        return new RegionMotion(
                new RegionMap.Part(kind.word() + "-" + number, kind, 0.25, 1),
                texture,
                standing,
                0.5,
                velocity,
                List.of(),
                new RegionMotion.Flags(seen, true, false, false, false),
                rhythm,
                lines,
                passing,
                at,
                t -> swingPixelsPerSecond * t);
    }
}
