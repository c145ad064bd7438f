/**
 * Several shutter times in one picture: which frames each part is made of.
 *
 * <p>Belongs here: what a part is taken from, and whether the frames can give it. Does not belong here: pixels at full
 * size, and how parts are told apart ({@code core.motion}).
 */
@NullMarked
package ebblight.core.blend;

import org.jspecify.annotations.NullMarked;
