/**
 * Finishing a picture at full size: level, crop, light, contrast, black and white, toning, grain, edges.
 *
 * <p>Each step says in which space it works: linear light, stops of light, or CIE L*a*b*. Does not belong here: files and
 * profiles, and reading what the photographer typed.
 */
@NullMarked
package ebblight.imaging.finish;

import org.jspecify.annotations.NullMarked;
