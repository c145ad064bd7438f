/**
 * How much light sun, moon and night sky give, how fast it changes, and when it is right for an exposure.
 *
 * <p>Belongs here: illuminance, exposure values, their rates and their uncertainty. Does not belong here: where sun and
 * moon stand ({@code sky}) and which settings to choose ({@code exposure}).
 */
@NullMarked
package ebblight.core.light;

import org.jspecify.annotations.NullMarked;
