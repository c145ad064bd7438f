/** The phone page: the engine compiled for the browser, and what packs it into one file. */
@NullMarked
package ebblight.pocket;

import org.jspecify.annotations.NullMarked;
