/**
 * How high the water stands: predicted from harmonic constants or read from a typed table; high and low water, springs
 * and neaps, and by when to be off the rock.
 *
 * <p>Belongs here: the astronomical tide and what follows from it. Does not belong here: weather, surge and waves,
 * except as a margin; stations as data.
 */
@NullMarked
package ebblight.core.tide;

import org.jspecify.annotations.NullMarked;
