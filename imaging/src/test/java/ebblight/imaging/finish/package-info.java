@NullMarked
package ebblight.imaging.finish;

import org.jspecify.annotations.NullMarked;
