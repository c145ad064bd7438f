/**
 * The search for the hour: what is wished of sun, light, water and clock, the windows in which it all holds, and what
 * to pack for them.
 *
 * <p>Belongs here: wishes about the hour, windows, reasons, packing. Does not belong here: wishes about the shutter time
 * ({@code wish}) and how sun, light and tide are computed.
 */
@NullMarked
package ebblight.core.outing;

import org.jspecify.annotations.NullMarked;
