/** Measurements of speed: JMH benchmarks of kernels and whole commands. Nothing depends on this. */
@NullMarked
package ebblight.benchmarks;

import org.jspecify.annotations.NullMarked;
