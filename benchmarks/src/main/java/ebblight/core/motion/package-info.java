/** Benchmarks of the kernels of core.motion, which are package-private. */
@NullMarked
package ebblight.core.motion;

import org.jspecify.annotations.NullMarked;
