package ebblight.core.motion;

/** How a part of the picture moves. The order is that of the columns of the region model. */
public enum Kind {
    /** Stands still: rock, post, ground. */
    FIXED,
    /** Keeps its shape and travels: cloud. */
    DRIFTING,
    /** Renews its texture all the time: water. */
    FLOWING,
    /** Moves about a place of rest: branch, grass. */
    SWAYING
}
