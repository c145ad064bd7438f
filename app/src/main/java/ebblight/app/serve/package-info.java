/**
 * The local server behind the pages: it answers 127.0.0.1 alone, and only those who hold its token.
 *
 * <p>Belongs here: HTTP, jobs, pictures for the screen. Does not belong here: any computation of its own.
 */
@NullMarked
package ebblight.app.serve;

import org.jspecify.annotations.NullMarked;
