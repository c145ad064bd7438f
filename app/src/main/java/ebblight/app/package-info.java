/**
 * The command line: options in, the engine asked, files read and written, answers printed.
 *
 * <p>Belongs here: the way in and out. Does not belong here: any computation of its own.
 */
@NullMarked
package ebblight.app;

import org.jspecify.annotations.NullMarked;
