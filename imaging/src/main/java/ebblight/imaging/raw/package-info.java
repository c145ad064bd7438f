/**
 * RAW files through LibRaw in a process of its own, so that a crash in native code costs one frame.
 *
 * <p>Belongs here: LibRaw, the worker that calls it, and how the two processes speak. Does not belong here: what is done
 * with the pixels.
 */
@NullMarked
package ebblight.imaging.raw;

import org.jspecify.annotations.NullMarked;
