/**
 * Light, time, aperture, sensitivity and filters, all in stops: what is typed and what it exactly means, and the
 * settings that reach a shutter time.
 *
 * <p>Belongs here: exposure arithmetic and the choice among settings. Does not belong here: how the scene moves.
 */
@NullMarked
package ebblight.core.exposure;

import org.jspecify.annotations.NullMarked;
