/** Packs the phone page: pages, engine and outing in one file that opens without a network. */
@NullMarked
package ebblight.app.pocket;

import org.jspecify.annotations.NullMarked;
