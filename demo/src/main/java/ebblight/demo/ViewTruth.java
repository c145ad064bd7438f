package ebblight.demo;

import ebblight.core.motion.Kind;

/**
 * What is true of every pixel of a view, row by row.
 *
 * @param kinds how it moves; rock that the waves ever wash over is water
 * @param inTurn whether rock and water take turns there: each shows for 1.5 % of the time and more
 */
public record ViewTruth(Kind[] kinds, boolean[] inTurn) {}
