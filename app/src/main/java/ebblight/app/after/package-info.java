/**
 * After the outing: saved finishes read and written, prints, web pictures, the register of an edition, pages on paper.
 *
 * <p>Does not belong here: pixels (imaging) and options of the command line.
 */
@NullMarked
package ebblight.app.after;

import org.jspecify.annotations.NullMarked;
