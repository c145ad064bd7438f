/**
 * Frames and pixels at full size: reading clips and pictures, aligning, stacking, writing.
 *
 * <p>Belongs here: files, formats and full-size pixels. Does not belong here: what a photographer wants of them.
 */
@NullMarked
package ebblight.imaging;

import org.jspecify.annotations.NullMarked;
