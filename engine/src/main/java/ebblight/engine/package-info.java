/**
 * The one place where questions become answers: a JSON request in, a JSON answer out, pictures beside them as named
 * byte arrays. The command line, the local server and the phone page all ask here.
 *
 * <p>Belongs here: reading requests, calling core, writing answers. Does not belong here: files, threads, clocks, and
 * any rule of the trade.
 */
@NullMarked
package ebblight.engine;

import org.jspecify.annotations.NullMarked;
