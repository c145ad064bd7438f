/**
 * The files of the demo: what the photographer of the invented evening brings home, and what is true of it.
 *
 * <p>Belongs here: writing the scene of {@link ebblight.demo} as clips, pictures and JSON. Does not belong here: the scene
 * itself, and anything that measures.
 */
@NullMarked
package ebblight.app.demo;

import org.jspecify.annotations.NullMarked;
