/**
 * What is remembered across outings: what was measured and predicted, what came out, which frames were kept.
 *
 * <p>Belongs here: the tables beside the kit's, what fills them, and what they add up to. Only what lies in an outing (a
 * folder with an {@code outing.json}, and what is below it) is remembered. Does not belong here: the kit itself
 * (app.kit).
 */
@NullMarked
package ebblight.app.memory;

import org.jspecify.annotations.NullMarked;
