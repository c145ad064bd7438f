/**
 * What the photographer wants each part of the picture to do, and the shutter times at which all of it holds.
 *
 * <p>Belongs here: words, their limits, windows and clashes. Does not belong here: how motion is measured (core.motion)
 * and how a time is reached (core.exposure).
 */
@NullMarked
package ebblight.core.wish;

import org.jspecify.annotations.NullMarked;
