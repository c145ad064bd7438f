package ebblight.core.tide;

/** The ways in which the moon's node changes height and phase of a constituent; {@link NodeFactors} computes them. */
enum Node {
    /** Not at all: solar constituents. */
    NONE,
    MM,
    MF,
    O1,
    J1,
    OO1,
    M2,
    K1,
    K2,
    L2,
    M1,
    ETA2
}
