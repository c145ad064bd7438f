/**
 * What the command line and the local server share: asking the engine about frames, and writing pictures.
 *
 * <p>Belongs here: frames in, an answer or a file out. Does not belong here: how a person is spoken to.
 */
@NullMarked
package ebblight.app.ask;

import org.jspecify.annotations.NullMarked;
