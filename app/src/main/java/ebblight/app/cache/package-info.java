/**
 * What can be made again, kept on the disk by what it was made from.
 *
 * <p>Belongs here: the cache and what tells a file from what it was before. Does not belong here: what must not be lost.
 */
@NullMarked
package ebblight.app.cache;

import org.jspecify.annotations.NullMarked;
