/**
 * Pages and pictures that tell what was measured: the time axis as SVG, the seals and strokes it is drawn with, the report
 * of the demo, the picture of {@code measure --picture}.
 *
 * <p>Belongs here: how findings look. Does not belong here: the findings, which come as answers of the engine.
 */
@NullMarked
package ebblight.app.report;

import org.jspecify.annotations.NullMarked;
