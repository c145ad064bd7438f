@NullMarked
package ebblight.imaging.repair;

import org.jspecify.annotations.NullMarked;
