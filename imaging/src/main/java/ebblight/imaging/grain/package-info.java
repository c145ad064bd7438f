/**
 * Noise of pictures in linear light, measured on one picture or on the frames of a stack.
 *
 * <p>Does not belong here: taking it out (finish).
 */
@NullMarked
package ebblight.imaging.grain;

import org.jspecify.annotations.NullMarked;
