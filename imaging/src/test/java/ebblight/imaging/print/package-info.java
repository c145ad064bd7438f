@NullMarked
package ebblight.imaging.print;

import org.jspecify.annotations.NullMarked;
