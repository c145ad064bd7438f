/**
 * The record beside every result: what it was made from and how, so that it can be made again to the same bytes.
 *
 * <p>Belongs here: the file {@code NAME.json} beside a result NAME, written and read. Does not belong here: the making.
 */
@NullMarked
package ebblight.app.made;

import org.jspecify.annotations.NullMarked;
