/**
 * Arithmetic that everything else stands on: powers and logarithms that agree on every machine, pictures as plain
 * arrays, and the little that long work needs to know about its caller.
 *
 * <p>Belongs here: code that knows nothing of photography. Does not belong here: anything with a unit.
 */
@NullMarked
package ebblight.core.numeric;

import org.jspecify.annotations.NullMarked;
