/**
 * How long the work takes: JMH benchmarks of kernels and whole questions, and the footage they and the side-by-side
 * runs work on. Never run as tests; {@code benchmarks/run} runs them all and writes the figures of docs/speed.md.
 */
@NullMarked
package ebblight.benchmarks;

import org.jspecify.annotations.NullMarked;
