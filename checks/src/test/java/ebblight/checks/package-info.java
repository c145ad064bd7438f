/** Tests that cross modules: architecture, accuracy against known truth, real clips, written files. */
@NullMarked
package ebblight.checks;

import org.jspecify.annotations.NullMarked;
