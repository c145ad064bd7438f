/**
 * The card after an outing: what sorting it, checking filters by it and its slates answer, as documents.
 *
 * <p>Belongs here: documents of what imaging.card found. Does not belong here: measuring.
 */
@NullMarked
package ebblight.app.card;

import org.jspecify.annotations.NullMarked;
