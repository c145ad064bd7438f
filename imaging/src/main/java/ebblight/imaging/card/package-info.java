/**
 * Frames of a card measured against each other: which show the same view, what of it stands and what flows, how sharp
 * and how smooth each is, hot pixels, dust, filters by pairs, slates.
 *
 * <p>Belongs here: what needs the pixels of several pictures of an outing. Does not belong here: reading files
 * (imaging), and what follows from the numbers alone (core.card).
 */
@NullMarked
package ebblight.imaging.card;

import org.jspecify.annotations.NullMarked;
