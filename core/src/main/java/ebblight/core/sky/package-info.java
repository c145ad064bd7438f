/**
 * Where sun and moon stand: over a place, against the horizon, in the view of a lens; and when they rise, set and
 * pass.
 *
 * <p>Belongs here: positions, refraction, events, phases, projection into the picture. Does not belong here: how much
 * light they give ({@code light}) and which hour to choose ({@code outing}).
 */
@NullMarked
package ebblight.core.sky;

import org.jspecify.annotations.NullMarked;
