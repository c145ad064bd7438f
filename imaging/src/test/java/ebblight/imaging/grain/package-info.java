@NullMarked
package ebblight.imaging.grain;

import org.jspecify.annotations.NullMarked;
