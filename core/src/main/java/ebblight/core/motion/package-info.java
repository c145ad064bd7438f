/**
 * What moves in front of a fixed camera, and what a shutter time makes of it: the camera's own movement, light drift
 * and noise, the kinds of regions, the texture left at any time, drift, and the preview at survey width.
 *
 * <p>Belongs here: statistics of a clip. Does not belong here: what the photographer wants of it (core.wish), pictures
 * at full size (imaging).
 */
@NullMarked
package ebblight.core.motion;

import org.jspecify.annotations.NullMarked;
