package ebblight.core.wish;

import java.util.Optional;

/**
 * Shutter times at which all wishes most likely hold.
 *
 * @param likely the times
 * @param sure the times within them at which they hold over the whole likely range; empty when there are none
 */
public record Window(Span likely, Optional<Span> sure) {}
