/**
 * What a lens draws: depth of field, diffraction, field of view.
 *
 * <p>Belongs here: geometry of lens and sensor. Does not belong here: light and time (core.exposure).
 */
@NullMarked
package ebblight.core.optics;

import org.jspecify.annotations.NullMarked;
