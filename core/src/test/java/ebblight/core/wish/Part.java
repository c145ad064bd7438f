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
record Part(
        Kind kind,
        int number,
        double texture,
        double standing,
        boolean seen,
        double speed,
        double swingPixelsPerSecond,
        Rhythm rhythm,
        FlowLines lines,
        Passing passing,
        double toldUpTo) {

    private static Part of(Kind kind, double texture, double speed, double swing) {
        return new Part(
                kind,
                1,
                texture,
                0,
                true,
                speed,
                swing,
                new Rhythm(0, List.of()),
                new FlowLines(0, 0, 0),
                new Passing(0, 0),
                960);
    }

    /** 40 % of texture: 5 % is left after 8 s, 2 % after 50 s, 1 % after 200 s. */
    static Part water() {
        return of(Kind.FLOWING, 0.4, 0, 0);
    }

    static Part cloud(double pixelsPerSecond) {
        return of(Kind.DRIFTING, 0.1, pixelsPerSecond, 0);
    }

    static Part branch(double texture, double pixelsPerSecond) {
        return of(Kind.SWAYING, texture, 0, pixelsPerSecond);
    }

    static Part rock() {
        return of(Kind.FIXED, 0, 0, 0);
    }

    Part with(double newTexture, double newStanding) {
        return new Part(
                kind,
                number,
                newTexture,
                newStanding,
                seen,
                speed,
                swingPixelsPerSecond,
                rhythm,
                lines,
                passing,
                toldUpTo);
    }

    Part unseen() {
        return new Part(
                kind, number, texture, standing, false, speed, swingPixelsPerSecond, rhythm, lines, passing, toldUpTo);
    }

    Part numbered(int newNumber) {
        return new Part(
                kind,
                newNumber,
                texture,
                standing,
                seen,
                speed,
                swingPixelsPerSecond,
                rhythm,
                lines,
                passing,
                toldUpTo);
    }

    Part with(FlowLines newLines, double period) {
        return new Part(
                kind,
                number,
                texture,
                standing,
                seen,
                speed,
                swingPixelsPerSecond,
                new Rhythm(period, List.of()),
                newLines,
                passing,
                toldUpTo);
    }

    Part passed(double share, double contrast) {
        return new Part(
                kind,
                number,
                texture,
                standing,
                seen,
                speed,
                swingPixelsPerSecond,
                rhythm,
                lines,
                new Passing(share, contrast),
                toldUpTo);
    }

    Part toldUpTo(double seconds) {
        return new Part(
                kind, number, texture, standing, seen, speed, swingPixelsPerSecond, rhythm, lines, passing, seconds);
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
