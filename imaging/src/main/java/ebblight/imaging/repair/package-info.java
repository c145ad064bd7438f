/**
 * What sensor, filter and eyepiece put into a picture, taken out again: hot pixels, glow, cast, leaked light, dark corners,
 * dust.
 *
 * <p>Belongs here: finding and repairing in linear light, with counts and a mask of what was changed. Does not belong here:
 * how a picture should look (finish). What is not sure is left alone and counted.
 */
@NullMarked
package ebblight.imaging.repair;

import org.jspecify.annotations.NullMarked;
