/**
 * Drawings of a day: the strip of its hours, the view through the lens, the weave of days, and the printed sheet.
 *
 * <p>Belongs here: lines, words and where they go, for screens (SVG) and paper (PDF). Does not belong here: where sun and
 * water are.
 */
@NullMarked
package ebblight.app.draw;

import org.jspecify.annotations.NullMarked;
