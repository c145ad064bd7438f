/**
 * An outing on disk: a folder of plain files that outlives the program.
 *
 * <p>Belongs here: what may be read and written in the folder, and how. Does not belong here: pages and pixels.
 */
@NullMarked
package ebblight.app.outing;

import org.jspecify.annotations.NullMarked;
