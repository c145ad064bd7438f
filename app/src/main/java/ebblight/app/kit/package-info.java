/**
 * What the photographer owns, kept across outings: cameras, lenses, filters with their measured densities.
 *
 * <p>Belongs here: the database in the user's data folder. Does not belong here: what the kit can reach (core.exposure).
 */
@NullMarked
package ebblight.app.kit;

import org.jspecify.annotations.NullMarked;
