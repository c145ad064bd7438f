/** Tests of reading, stacking and writing; {@link ebblight.imaging.OtherProgram} asks programs that are not ours. */
@NullMarked
package ebblight.imaging;

import org.jspecify.annotations.NullMarked;
