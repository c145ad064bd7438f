/**
 * What the frames of a card are to each other, by their settings and what was measured of them: which filter each had,
 * test frame, filtered frame, burst, variant; the order inside a view with its reasons; the slate.
 *
 * <p>Belongs here: reasoning on numbers of frames. Does not belong here: pixels (imaging.card).
 */
@NullMarked
package ebblight.core.card;

import org.jspecify.annotations.NullMarked;
