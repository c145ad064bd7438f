@NullMarked
package ebblight.imaging.raw;

import org.jspecify.annotations.NullMarked;
