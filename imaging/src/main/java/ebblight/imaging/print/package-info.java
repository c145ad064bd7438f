/**
 * A picture on its way to paper or screen: another size, another profile, how a printer will show it.
 *
 * <p>Does not belong here: what is done to tones (finish), and files.
 */
@NullMarked
package ebblight.imaging.print;

import org.jspecify.annotations.NullMarked;
