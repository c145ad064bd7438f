/**
 * Java's {@code StrictMath} for the page. Browsers round sines, exponentials and logarithms each in its own way; these are
 * computed by additions, multiplications and divisions alone, which IEEE 754 rounds alike everywhere, so that the phone
 * says to the last bit what the desk says. Nothing else belongs here.
 */
@NullMarked
package ebblight.pocket.exact;

import org.jspecify.annotations.NullMarked;
